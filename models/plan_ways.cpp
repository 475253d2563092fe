#include "models/plan_ways.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace pulsewright {
namespace {

constexpr int far_away = 1 << 20;  // more ducts than a plan has

const NodePlan& node(const ManifoldPlan& plan, int index) { return plan.nodes[static_cast<std::size_t>(index)]; }

const TurbineNode* turbine_at(const ManifoldPlan& plan, int index) {
  return std::get_if<TurbineNode>(&node(plan, index).kind);
}

/// The ends of a duct, once each way.
std::array<std::pair<int, int>, 2> both_ways(const DuctPlan& d) {
  return {{{d.start.node, d.finish.node}, {d.finish.node, d.start.node}}};
}

/// From each node reached back to the one it was reached from: the shortest way between two of them. -1: not reached.
std::vector<int> reached_from(const ManifoldPlan& plan, int start) {
  std::vector<int> from(plan.nodes.size(), -1);
  std::vector<int> reached{start};
  from[static_cast<std::size_t>(start)] = start;
  for (std::size_t k = 0; k < reached.size(); ++k)
    for (const DuctPlan& d : plan.ducts)
      for (const auto& [here, there] : both_ways(d)) {
        int& back = from[static_cast<std::size_t>(there)];
        if (here != reached[k] || turbine_at(plan, there) || back >= 0) continue;
        back = here;
        reached.push_back(there);
      }
  return from;
}

/// How many ducts lie between each node and the scroll of a turbine.
std::vector<int> ducts_to_turbine(const ManifoldPlan& plan) {
  std::vector<int> count(plan.nodes.size(), far_away);
  for (std::size_t round = 0; round < plan.ducts.size(); ++round)
    for (const DuctPlan& d : plan.ducts)
      for (const auto& [here, there] : both_ways(d)) {
        const bool outlet = turbine_at(plan, d.start.node) != nullptr;  // a downpipe leads away from it
        const int beyond = turbine_at(plan, there) ? (outlet ? far_away : 0) : count[static_cast<std::size_t>(there)];
        int& own = count[static_cast<std::size_t>(here)];
        own = std::min(own, beyond + 1);
      }
  return count;
}

}  // namespace

int valve_node(const ManifoldPlan& plan, int cylinder) {
  const std::string name = "cylinder " + std::to_string(cylinder + 1);
  return static_cast<int>(std::ranges::find(plan.nodes, name, &NodePlan::name) - plan.nodes.begin());
}

std::vector<int> before_turbine(const ManifoldPlan& plan, int start) {
  const std::vector<int> from = reached_from(plan, start);
  std::vector<int> reached{start};
  for (std::size_t k = 0; k < from.size(); ++k)
    if (from[k] >= 0 && static_cast<int>(k) != start) reached.push_back(static_cast<int>(k));
  return reached;
}

std::vector<std::string> entries_of(const ManifoldPlan& plan, const std::vector<int>& nodes) {
  std::vector<std::string> names;
  for (std::size_t t = 0; t < plan.nodes.size(); ++t) {
    const TurbineNode* turbine = turbine_at(plan, static_cast<int>(t));
    if (!turbine) continue;
    const int scrolls = 1 + *std::ranges::max_element(turbine->scroll);
    for (const DuctPlan& d : plan.ducts) {
      if (d.finish.node != static_cast<int>(t) || std::ranges::find(nodes, d.start.node) == nodes.end()) continue;
      const int scroll = turbine->scroll[static_cast<std::size_t>(d.finish.port)];
      const std::string name =
          plan.nodes[t].name + (scrolls > 1 ? std::string(".") + static_cast<char>('a' + scroll) : "");
      if (std::ranges::find(names, name) == names.end()) names.push_back(name);
    }
  }
  return names;
}

std::string meeting_place(const ManifoldPlan& plan, int one, int other) {
  const std::vector<int> from = reached_from(plan, one), count = ducts_to_turbine(plan);
  if (from[static_cast<std::size_t>(other)] < 0) return {};
  int best = other;
  for (int at = other; at != one; at = from[static_cast<std::size_t>(at)])
    if (count[static_cast<std::size_t>(at)] < count[static_cast<std::size_t>(best)]) best = at;
  return node(plan, best).name;
}

}  // namespace pulsewright
