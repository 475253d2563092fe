// What a finished network must be: every joint joins something, all of it hangs together, every cylinder has one way
// out and a turbine at its end.

#include <algorithm>
#include <numeric>

#include "models/plan_draft.hpp"
#include "shared/words.hpp"
#include "solver/joint.hpp"

namespace pulsewright {
namespace {

/// Which nodes hang together: each node points to another of its group, the last to itself.
class Groups {
 public:
  explicit Groups(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), 0); }
  int of(int node) const {
    while (parent_[static_cast<std::size_t>(node)] != node) node = parent_[static_cast<std::size_t>(node)];
    return node;
  }
  void join(int a, int b) {
    if (a >= 0 && b >= 0) parent_[static_cast<std::size_t>(of(a))] = of(b);
  }

 private:
  std::vector<int> parent_;
};

Groups groups_of(const Draft& draft) {
  Groups groups(draft.nodes.size());
  for (const DraftRun& run : draft.runs)
    if (!run.gone) groups.join(run.ends[at_start].node, run.ends[at_finish].node);
  for (const DraftGate& gate : draft.gates) groups.join(gate.from, gate.to);
  return groups;
}

template <class Kind>
bool is(const DraftNode& node) {
  return std::holds_alternative<Kind>(node.kind);
}

void check_joint(Draft& draft, const DraftNode& node, std::size_t ports) {
  if (ports == 1 && !node.flange)
    draft.fault("joint " + in_quotes(node.name) + " has one duct only", node.place,
                draft.sketch.engine() ? "a joint needs two ducts or more"
                                      : "close the duct with an [[end]] of kind \"closed\"");
  if (ports == 0 && !node.flange)
    draft.fault("nothing leads to " + in_quotes(node.name), node.place,
                "let a duct start or end there, or take it out");
}

constexpr auto most_ports = Joint::max_ports;

void check_crowd(Draft& draft, const DraftNode& node, std::size_t ports) {
  if (ports <= most_ports) return;
  draft.fault(std::to_string(ports) + " ducts meet in joint " + in_quotes(node.name) + ", and at most " +
                  std::to_string(most_ports) + " can",
              node.place, "let some of them meet in a joint of their own, with a short duct between");
}

void check_turbine(Draft& draft, int index) {
  const DraftNode& node = draft.node(index);
  const TurbineSketch& turbine =
      draft.sketch.turbines[static_cast<std::size_t>(std::get<TurbineNode>(node.kind).turbine)];
  int outlets = 0, entries = 0;
  for (const DraftPort port : ports_at(draft, index)) ++(port.end == at_start ? outlets : entries);
  if (outlets > 1)
    draft.fault("two ducts start at " + in_quotes(turbine.name + ".out"), node.place, "let them part in a [[joint]]");
  if (entries < turbine.scrolls)
    draft.fault("turbine " + in_quotes(turbine.name) + " has " + std::to_string(turbine.scrolls) + " entries, and " +
                    std::to_string(entries) + " are fed",
                node.place, "every scroll needs a duct or a joint that leads to it");
}

void check_nodes(Draft& draft) {
  for (std::size_t k = 0; k < draft.nodes.size(); ++k) {
    const DraftNode& node = draft.nodes[k];
    const std::size_t ports = ports_at(draft, static_cast<int>(k)).size();
    if (is<JointNode>(node)) {
      check_joint(draft, node, ports);
      check_crowd(draft, node, ports);
    } else if (is<TurbineNode>(node)) {
      check_turbine(draft, static_cast<int>(k));
    } else if (ports == 0) {
      draft.fault("no duct leads to the end " + in_quotes(node.name), node.place);
    }
  }
}

/// Reported at the first duct of every further group. Groups with cylinders hang together by the engine.
void check_one_piece(Draft& draft, const Groups& groups) {
  std::vector<int> seen;
  for (std::size_t k = 0; k < draft.nodes.size(); ++k)
    if (is<CylinderNode>(draft.nodes[k])) seen.push_back(groups.of(static_cast<int>(k)));
  for (const DraftRun& run : draft.runs) {
    const int group = groups.of(run.ends[at_start].node);
    if (std::ranges::find(seen, group) != seen.end()) continue;
    if (!seen.empty())
      draft.fault("duct " + in_quotes(run.names.front().name) + " hangs together with nothing else of the case",
                  run.place, "a case is one network; what is apart belongs in a case of its own");
    seen.push_back(group);
  }
}

/// Two turbines feed one plenum side by side; one behind the other would be two stages.
void check_not_in_series(Draft& draft, const Groups& groups) {
  for (const DraftRun& run : draft.runs) {
    const DraftNode& first = draft.node(run.ends[at_start].node);
    if (!is<TurbineNode>(first)) continue;
    for (const int second : draft.turbine_node)
      if (groups.of(second) == groups.of(run.ends[at_finish].node))
        draft.fault("the gas behind turbine " + in_quotes(first.name) + " runs into turbine " +
                        in_quotes(draft.node(second).name),
                    run.place, "turbines one behind the other are not computed: let each lead to the air");
  }
}

/// Gas from a cylinder that finds no turbine: through the turbine does not count.
void check_ways_out(Draft& draft) {
  Groups groups(draft.nodes.size());
  for (const DraftRun& run : draft.runs)
    if (!is<TurbineNode>(draft.node(run.ends[at_start].node)))
      groups.join(run.ends[at_start].node, run.ends[at_finish].node);
  check_not_in_series(draft, groups);
  for (const DraftNode& node : draft.nodes) {
    if (!is<CylinderNode>(node)) continue;
    const int group = groups.of(static_cast<int>(&node - draft.nodes.data()));
    const bool turbine = std::ranges::any_of(draft.turbine_node, [&](int t) { return groups.of(t) == group; });
    if (!turbine) draft.fault("the gas of " + node.name + " finds no way to a turbine", Place{});
  }
}

}  // namespace

void check_primaries(Draft& draft) {
  for (std::size_t c = 0; c < draft.sketch.ports.size(); ++c) {
    const DuctSketch* first = nullptr;
    for (const DuctSketch& duct : draft.sketch.ducts) {
      if (duct.cylinder != static_cast<int>(c)) continue;
      if (first)
        draft.fault("cylinder " + std::to_string(c + 1) +
                        " has two primaries (the other: " + draft.faults.line_of(first->place) + ")",
                    duct.place);
      first = &duct;
    }
    if (!first)
      draft.fault("cylinder " + std::to_string(c + 1) + " has no primary", Place{},
                  "[[primary]] cylinder = " + std::to_string(c + 1));
  }
}

void check_network(Draft& draft) {
  check_nodes(draft);
  const Groups groups = groups_of(draft);
  check_one_piece(draft, groups);
  if (draft.sketch.engine()) check_ways_out(draft);
}

}  // namespace pulsewright
