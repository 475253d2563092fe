// Joints in a plan: which way everything points, which mouths are smooth, how much gas they hold.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/drawing_edit.hpp"
#include "models/plan_draft.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double turn = 2 * std::numbers::pi;
constexpr double step_share = 0.1;      // volume of a tap or a step, of a collector's; assumed
constexpr double step_loss = 0.5;       // kc at a step: Borda's contraction, K = 0.5 (1 - a)
constexpr double collector_loss = 0.1;  // kc of a smooth mouth
constexpr double same_bore = 1e-3;      // of the area

bool live_joint(const DraftNode& node) { return !node.gone && std::holds_alternative<JointNode>(node.kind); }

JointLaw law_of(const DraftNode& node) { return node.joint ? node.joint->law : JointLaw::momentum; }

DraftEnd& end_of(Draft& draft, DraftPort port) { return draft.run(port.run).ends[static_cast<std::size_t>(port.end)]; }

bool same(DraftPort a, DraftPort b) { return a.run == b.run && a.end == b.end; }

/// Where no outlet is said: the first duct that starts here, or else the last one.
DraftPort chosen_outlet(const std::vector<DraftPort>& ports) {
  const auto start = std::ranges::find(ports, static_cast<int>(at_start), &DraftPort::end);
  return start == ports.end() ? ports.back() : *start;
}

bool set_outlet(Draft& draft, DraftNode& node, const std::vector<DraftPort>& ports) {
  if (node.outlet) return true;
  if (ports.size() > 2 && law_of(node) == JointLaw::momentum) {
    draft.fault("joint " + in_quotes(node.name) + " of " + std::to_string(ports.size()) +
                    " ducts has no outlet: it sets the axis",
                node.place, "outlet = the duct (or the turbine) that the others lead to");
    return false;
  }
  node.outlet = chosen_outlet(ports);
  return true;
}

void demand_an_angle(Draft& draft, const DraftNode& node, const std::vector<DraftPort>& others) {
  const bool any = std::ranges::any_of(others, [&](DraftPort p) { return end_of(draft, p).meeting.stated(); });
  if (any || others.size() < 2 || law_of(node) != JointLaw::momentum) return;
  draft.fault(
      "joint " + in_quotes(node.name) + " joins " + std::to_string(others.size() + 1) +
          " ducts, and none says its angle",
      node.place,
      "angle on a primary, to_angle or from_angle on a duct, such as \"15 deg\"; or law = \"constant-pressure\"");
}

bool clock_matters(const MeetingSketch& meeting) {
  return !meeting.direction && std::abs(std::sin(meeting.angle.value_or(0))) > 1e-9;
}

void resolve_direction(Draft& draft, DraftPort port, double default_clock, const std::string& joint) {
  DraftEnd& end = end_of(draft, port);
  if (end.meeting.direction && !(end.meeting.direction->norm() > 1e-9))
    return draft.fault("direction = [0, 0, 0] points nowhere", end.place);
  if (clock_matters(end.meeting) && !end.meeting.clock) draft.assumed.take("joint.clock", joint);
  end.meeting.direction = meeting_direction(end.meeting, default_clock);
}

void resolve_node(Draft& draft, int index) {
  DraftNode& node = draft.node(index);
  const auto ports = ports_at(draft, index);
  if (ports.empty() || !set_outlet(draft, node, ports)) return;
  std::vector<DraftPort> others;
  for (const DraftPort port : ports)
    if (!same(port, *node.outlet)) others.push_back(port);
  demand_an_angle(draft, node, others);
  for (std::size_t k = 0; k < others.size(); ++k)
    resolve_direction(draft, others[k], turn * static_cast<double>(k) / static_cast<double>(others.size()), node.name);
  end_of(draft, *node.outlet).meeting.direction =
      (node.outlet->end == at_start ? 1.0 : -1.0) * Eigen::Vector3d::UnitX();
}

double azimuth(const Eigen::Vector3d& n, double otherwise) {
  return std::hypot(n.y(), n.z()) > 1e-9 ? std::atan2(n.z(), n.y()) : otherwise;
}

/// Midway between the first two ducts round the axis.
double gate_clock(const Draft& draft, int node) {
  std::vector<double> clocks;
  const auto& outlet = draft.nodes[static_cast<std::size_t>(node)].outlet;
  for (const DraftPort port : ports_at(draft, node))
    if (!same(port, *outlet)) clocks.push_back(azimuth(-port_normal(draft, port), 0));
  if (clocks.size() < 2) return 0;
  return clocks[0] + std::remainder(clocks[1] - clocks[0] - 1e-9, turn) / 2;
}

void resolve_gate(Draft& draft, DraftGate& gate) {
  const GateSketch& sketch = draft.sketch.gates[static_cast<std::size_t>(gate.sketch)];
  MeetingSketch meeting = sketch.meeting;
  if (!meeting.stated()) meeting.angle = draft.assumed.take("wastegate.angle", sketch.name);
  if (clock_matters(meeting) && !meeting.clock && ports_at(draft, gate.from).size() > 2)
    draft.assumed.take("wastegate.clock", sketch.name);
  gate.n = meeting_direction(meeting, gate_clock(draft, gate.from));
}

bool in_line_with_outlet(const Draft& draft, DraftPort port) { return port_normal(draft, port).x() < -1 + 1e-9; }

double default_volume(const Draft& draft, const std::vector<DraftPort>& ports) {
  double sum = 0, largest = 0;
  for (const DraftPort port : ports) {
    sum += area_of(draft, port);
    largest = std::max(largest, area_of(draft, port));
  }
  return sum / static_cast<double>(ports.size()) * equal_area_bore(largest) / 2;
}

/// Two ducts of one line: a step in bore, or a tap for a gate.
bool is_step(const Draft& draft, const DraftNode& node, const std::vector<DraftPort>& ports) {
  return ports.size() == 2 && std::ranges::all_of(ports, [&](DraftPort p) {
           return same(p, *node.outlet) || in_line_with_outlet(draft, p);
         });
}

void resolve_joint(Draft& draft, int index) {
  DraftNode& node = draft.node(index);
  const auto ports = ports_at(draft, index);
  const double mouth = area_of(draft, *node.outlet);
  JointNode joint;
  joint.law = law_of(node);
  const bool step = is_step(draft, node, ports);
  joint.contraction_loss = step ? step_loss : collector_loss;
  for (const DraftPort port : ports) {
    const bool outlet = same(port, *node.outlet);
    if (outlet) joint.outlet = static_cast<int>(joint.ports.size());
    const bool equal = std::abs(area_of(draft, port) - mouth) < same_bore * mouth;
    joint.ports.push_back({port_normal(draft, port), outlet || step || (equal && in_line_with_outlet(draft, port))});
  }
  joint.volume = joint_volume(draft, index);
  if (joint.law == JointLaw::momentum)
    joint.angle_factor =
        draft.assumed.given_or(node.joint ? node.joint->angle_factor : std::nullopt, "joint.angle_factor");
  node.kind = joint;
}

}  // namespace

Eigen::Vector3d meeting_direction(const MeetingSketch& meeting, double default_clock) {
  if (meeting.direction) return meeting.direction->normalized();
  const double angle = meeting.angle.value_or(0), clock = meeting.clock.value_or(default_clock);
  return {std::cos(angle), std::sin(angle) * std::cos(clock), std::sin(angle) * std::sin(clock)};
}

Eigen::Vector3d port_normal(const Draft& draft, DraftPort port) {
  const DraftEnd& end = draft.runs[static_cast<std::size_t>(port.run)].ends[static_cast<std::size_t>(port.end)];
  return (port.end == at_start ? 1.0 : -1.0) * *end.meeting.direction;
}

double joint_volume(Draft& draft, int index) {
  const DraftNode& node = draft.node(index);
  if (node.volume) return *node.volume;
  if (node.joint && node.joint->volume) {
    if (draft.sketch.engine() && !(*node.joint->volume > 0))
      draft.fault("joint " + in_quotes(node.name) + ": in an engine a joint holds some gas, its volume must be above 0",
                  node.place);
    return *node.joint->volume;
  }
  const auto ports = ports_at(draft, index);
  const double share = node.tap || node.flange || is_step(draft, node, ports) ? step_share : 1;
  return draft.assumed.take_scaled("joint.volume", share * default_volume(draft, ports), node.name);
}

void resolve_directions(Draft& draft) {
  for (std::size_t k = 0; k < draft.nodes.size(); ++k)
    if (live_joint(draft.nodes[k])) resolve_node(draft, static_cast<int>(k));
  if (!draft.sound) return;
  for (DraftGate& gate : draft.gates) resolve_gate(draft, gate);
}

void resolve_joints(Draft& draft) {
  for (std::size_t k = 0; k < draft.nodes.size(); ++k)
    if (live_joint(draft.nodes[k])) resolve_joint(draft, static_cast<int>(k));
}

}  // namespace pulsewright
