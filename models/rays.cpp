#include "models/rays.hpp"

#include <algorithm>
#include <cmath>
#include <deque>

namespace pulsewright {
namespace {

constexpr int most_joints = 6;
constexpr double march_deg = 0.1;  // step of a ray; assumed fine enough: a tenth of a degree is some 5 mm

double end_area(const ManifoldPlan& plan, const PlanPort& port) {
  const DuctDrawing& d = plan.ducts[static_cast<std::size_t>(port.duct)].drawing;
  return area_at(d, port.at_finish ? d.length() : 0);
}

double joint_area(const ManifoldPlan& plan, int node) {
  double sum = 0;
  for (const PlanPort& port : plan.nodes[static_cast<std::size_t>(node)].ports) sum += end_area(plan, port);
  return sum;
}

/// One sample of a field between cells and instants.
double look(const std::vector<float>& field, const DuctRecord& duct, double x, double deg) {
  const double cell = std::clamp(x / duct.dx - 0.5, 0.0, static_cast<double>(duct.cells - 1));
  const auto i = std::min(static_cast<std::size_t>(cell), duct.cells - 2);
  const double turns = deg / (record_step_deg * record_samples);
  const double sample = (turns - std::floor(turns)) * record_samples;
  const auto k = std::min(static_cast<std::size_t>(sample), record_samples - 1);
  const auto at = [&](std::size_t s, std::size_t j) {
    return static_cast<double>(field[(s % record_samples) * duct.cells + j]);
  };
  const double fx = cell - static_cast<double>(i), ft = sample - static_cast<double>(k);
  const double now = at(k, i) + fx * (at(k, i + 1) - at(k, i)),
               next = at(k + 1, i) + fx * (at(k + 1, i + 1) - at(k + 1, i));
  return now + ft * (next - now);
}

struct Front {
  int duct;
  bool forward;
};

}  // namespace

RayPath shortest_path(const ManifoldPlan& plan, RayTarget from, bool forward, RayTarget to) {
  struct Reached {
    Front front;
    std::size_t parent;
    int through;
  };
  const auto length = [&](int duct) { return plan.ducts[static_cast<std::size_t>(duct)].drawing.length(); };
  std::vector<Reached> reached{{{from.duct, forward}, 0, -1}};
  std::vector<bool> seen(plan.nodes.size(), false);
  for (std::size_t i = 0; i < reached.size(); ++i) {
    const auto [duct, ahead] = reached[i].front;
    const bool inside =
        i == 0 && duct == to.duct && (ahead ? to.distance > from.distance : to.distance < from.distance);
    if (inside || (i > 0 && duct == to.duct)) {
      RayPath path{{}, {}, 1};
      for (std::size_t k = i;; k = reached[k].parent) {
        const Front f = reached[k].front;
        const double start = k == 0 ? from.distance : (f.forward ? 0 : length(f.duct));
        const double stop = k == i ? to.distance : (f.forward ? length(f.duct) : 0);
        path.legs.insert(path.legs.begin(), {f.duct, f.forward, std::abs(stop - start)});
        if (k == 0) break;
        path.joints.insert(path.joints.begin(), reached[k].through);
        const Front before = reached[reached[k].parent].front;
        path.share *= 2 * end_area(plan, {before.duct, before.forward}) / joint_area(plan, reached[k].through);
      }
      if (static_cast<int>(path.joints.size()) <= most_joints) return path;
    }
    const DuctPlan& d = plan.ducts[static_cast<std::size_t>(duct)];
    const int node = ahead ? d.finish.node : d.start.node;
    if (node < 0 || seen[static_cast<std::size_t>(node)]) continue;
    const NodeKind& kind = plan.nodes[static_cast<std::size_t>(node)].kind;
    if (!std::holds_alternative<JointNode>(kind) && !std::holds_alternative<ThrottleNode>(kind)) continue;
    seen[static_cast<std::size_t>(node)] = true;
    for (const PlanPort& port : plan.nodes[static_cast<std::size_t>(node)].ports)
      if (port.duct != duct || port.at_finish != ahead) reached.push_back({{port.duct, !port.at_finish}, i, node});
  }
  return {{}, {}, 0};
}

// Equation   dx/dt = c + u along the ray's direction; a joint delays by V/(c sum A)
// Source     method of characteristics; the joint's delay is the filling time of its volume, our own estimate
// Symbols    u velocity along the ray m/s, c sound speed m/s of the settled record; V m3, A m2
// Valid for  the front of a pulse; a shock runs faster
// Tested by  tests/models/rays_test.cpp
double arrival_degree(const ManifoldPlan& plan, const CycleRecord& record, const RayPath& path, RayTarget from,
                      double deg) {
  const double deg_per_second = 6 * record.rpm;
  for (std::size_t k = 0; k < path.legs.size(); ++k) {
    const RayLeg& leg = path.legs[k];
    const DuctRecord& duct = record.ducts[static_cast<std::size_t>(leg.duct)];
    const double sign = leg.forward ? 1 : -1, whole = duct.dx * static_cast<double>(duct.cells);
    const double start = k == 0 ? from.distance : (leg.forward ? 0 : whole);
    double run = 0, c = 0;
    while (run < leg.length) {
      const double x = start + sign * run;
      c = look(duct.c, duct, x, deg);
      const double speed =
          std::max(c + sign * look(duct.u, duct, x, deg), 0.02 * c);  // a ray held up by sonic flow crawls
      const double step = std::min(march_deg, (leg.length - run) / speed * deg_per_second + 1e-9);
      run += speed * step / deg_per_second;
      deg += step;
    }
    if (k < path.joints.size()) {
      const auto* joint = std::get_if<JointNode>(&plan.nodes[static_cast<std::size_t>(path.joints[k])].kind);
      const double volume = joint ? joint->volume : 0;  // a restriction has none
      deg += volume / (std::max(c, 1.0) * joint_area(plan, path.joints[k])) * deg_per_second;
    }
  }
  return deg;
}

}  // namespace pulsewright
