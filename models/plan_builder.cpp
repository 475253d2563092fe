#include "models/plan_builder.hpp"

#include <algorithm>

#include "models/drawing_edit.hpp"
#include "models/plan_draft.hpp"

namespace pulsewright {
namespace {

using Numbers = std::vector<int>;  // of a draft's list -> of the plan's; -1: gone

template <class List>
Numbers numbers_of(const List& list) {
  Numbers numbers;
  int next = 0;
  for (const auto& item : list) numbers.push_back(item.gone ? -1 : next++);
  return numbers;
}

int number(const Numbers& numbers, int index) { return index < 0 ? -1 : numbers[static_cast<std::size_t>(index)]; }

std::string name_of(const DraftRun& run) {
  std::string name;
  for (const NamedStretch& stretch : run.names)
    if (!name.ends_with(stretch.name)) name += (name.empty() ? "" : " + ") + stretch.name;
  return name;
}

/// The names along a run, each with the distance along the run at which it begins.
void add_names(ManifoldPlan& plan, const DraftRun& run, int duct) {
  double from = 0;
  for (NamedStretch stretch : run.names) {
    const double length = stretch.name_to - stretch.name_from;
    stretch.duct = duct;
    stretch.duct_at_from = stretch.reversed ? from + length : from;
    from += length;
    plan.names.push_back(stretch);
  }
}

void add_ducts(const Draft& draft, const Numbers& nodes, ManifoldPlan& plan) {
  for (const DraftRun& run : draft.runs) {
    if (run.gone) continue;
    add_names(plan, run, static_cast<int>(plan.ducts.size()));
    DuctPlan duct{name_of(run), run.drawing, run.initial, {}, {}};
    duct.start.node = number(nodes, run.ends[at_start].node);
    duct.finish.node = number(nodes, run.ends[at_finish].node);
    plan.ducts.push_back(std::move(duct));
  }
}

void set_turbine_ports(const Draft& draft, TurbineNode& turbine, const std::vector<DraftPort>& ports) {
  for (const DraftPort port : ports) {
    const DraftEnd& end = draft.runs[static_cast<std::size_t>(port.run)].ends[static_cast<std::size_t>(port.end)];
    if (end.scroll < 0) turbine.outlet = static_cast<int>(turbine.scroll.size());
    turbine.scroll.push_back(end.scroll);
  }
}

void add_nodes(const Draft& draft, const Numbers& runs, ManifoldPlan& plan) {
  for (std::size_t k = 0; k < draft.nodes.size(); ++k) {
    if (draft.nodes[k].gone) continue;
    NodePlan node{draft.nodes[k].name, draft.nodes[k].kind, {}};
    const auto ports = ports_at(draft, static_cast<int>(k));
    for (const DraftPort port : ports) {
      const int duct = number(runs, port.run);
      DuctPlan& d = plan.ducts[static_cast<std::size_t>(duct)];
      (port.end == at_start ? d.start : d.finish).port = static_cast<int>(node.ports.size());
      node.ports.push_back({duct, port.end == at_finish});
    }
    if (auto* turbine = std::get_if<TurbineNode>(&node.kind)) set_turbine_ports(draft, *turbine, ports);
    plan.nodes.push_back(std::move(node));
  }
}

void add_gates(const Draft& draft, const Numbers& nodes, ManifoldPlan& plan) {
  for (const DraftGate& gate : draft.gates) {
    const GateSketch& sketch = draft.sketch.gates[static_cast<std::size_t>(gate.sketch)];
    plan.gates.push_back({sketch.name, number(nodes, gate.from), gate.n, sketch.bore, sketch.full_lift,
                          sketch.flow_coefficient, sketch.opening, number(nodes, gate.to), sketch.holds});
    plan.gates.back().spring = sketch.spring;
    plan.gates.back().no_spring = sketch.no_spring;
    plan.gates.back().cut_out = sketch.cut_out;
  }
}

/// From every turbine's outlet down: the air that is met there lies behind the silencer.
void mark_silencers(ManifoldPlan& plan) {
  std::vector<bool> behind(plan.nodes.size(), false);
  for (std::size_t turn = 0; turn < plan.nodes.size(); ++turn)
    for (const DuctPlan& duct : plan.ducts) {
      const auto a = static_cast<std::size_t>(duct.start.node), b = static_cast<std::size_t>(duct.finish.node);
      const auto spreads = [&](std::size_t from, int port, std::size_t to) {
        const auto* turbine = std::get_if<TurbineNode>(&plan.nodes[from].kind);
        if (turbine ? turbine->outlet == port : behind[from])
          behind[to] = !std::holds_alternative<TurbineNode>(plan.nodes[to].kind);
      };
      spreads(a, duct.start.port, b);
      spreads(b, duct.finish.port, a);
    }
  for (std::size_t k = 0; k < plan.nodes.size(); ++k)
    if (auto* air = std::get_if<AirNode>(&plan.nodes[k].kind)) air->silencer = air->silencer && behind[k];
}

ManifoldPlan finished(const Draft& draft) {
  ManifoldPlan plan;
  const Numbers runs = numbers_of(draft.runs), nodes = numbers_of(draft.nodes);
  add_ducts(draft, nodes, plan);
  add_nodes(draft, runs, plan);
  add_gates(draft, nodes, plan);
  if (draft.sketch.engine()) mark_silencers(plan);
  plan.air = draft.sketch.air;
  plan.notes = draft.notes;
  return plan;
}

using Phase = void (*)(Draft&);

/// Runs the phases in order; false where something is wrong after them.
bool run_phases(Draft& draft, std::initializer_list<Phase> phases) {
  for (const Phase phase : phases) phase(draft);
  return draft.sound;
}

}  // namespace

std::vector<DraftPort> ports_at(const Draft& draft, int node) {
  std::vector<DraftPort> ports;
  for (std::size_t k = 0; k < draft.runs.size(); ++k) {
    if (draft.runs[k].gone) continue;
    for (const int end : {at_start, at_finish})
      if (draft.runs[k].ends[static_cast<std::size_t>(end)].node == node) ports.push_back({static_cast<int>(k), end});
  }
  return ports;
}

double area_of(const Draft& draft, DraftPort port) {
  const DuctDrawing& drawing = draft.runs[static_cast<std::size_t>(port.run)].drawing;
  return port.end == at_start ? first_area(drawing) : last_area(drawing);
}

ManifoldPlan build_plan(const Sketch& sketch, AssumedList& assumed, CaseFaults& faults) {
  Draft draft{sketch, assumed, faults};
  const bool drawn =
      run_phases(draft, {gather_names, check_primaries, cut_at_taps, make_nodes, attach_outlets, attach_ends,
                         attach_gates, attach_restrictions}) &&
      run_phases(draft, {check_network}) && run_phases(draft, {shape_mouths, grow_together, resolve_directions}) &&
      run_phases(draft, {absorb_short_runs}) && run_phases(draft, {resolve_joints, resolve_restrictions});
  return drawn ? finished(draft) : ManifoldPlan{};
}

}  // namespace pulsewright
