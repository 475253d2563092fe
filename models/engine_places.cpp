// Where an engine's ports and turbine entries lie in its ducts.

#include <algorithm>

#include "models/engine_figures.hpp"

namespace pulsewright {

std::vector<TurbineEntry> turbine_entries(const EngineCase& engine) {
  std::vector<TurbineEntry> entries;
  std::size_t turbine = 0;
  for (const NodePlan& node : engine.plan.nodes) {
    const auto* t = std::get_if<TurbineNode>(&node.kind);
    if (!t) continue;
    for (std::size_t i = 0; i < node.ports.size(); ++i) {
      if (static_cast<int>(i) == t->outlet) continue;
      const PlanPort port = node.ports[i];
      const double length = engine.plan.ducts[static_cast<std::size_t>(port.duct)].drawing.length(),
                   volute = engine.turbines[static_cast<std::size_t>(t->turbine)].volute_length;
      const auto scrolls = node.ports.size() - (t->outlet >= 0 ? 1 : 0);
      const auto scroll = static_cast<std::size_t>(t->scroll[i]);
      const std::string name = scrolls == 1 ? node.name : node.name + "." + static_cast<char>('a' + t->scroll[i]);
      entries.push_back({name,
                         turbine,
                         scroll,
                         {port.duct, port.at_finish ? std::max(0.0, length - volute) : std::min(length, volute)},
                         port.at_finish});
    }
    ++turbine;
  }
  return entries;
}

std::vector<PortPlace> port_places(const EngineModel& model) {
  const EngineCase& engine = model.engine_case();
  std::vector<PortPlace> ports;
  for (const NodePlan& node : engine.plan.nodes) {
    const auto* c = std::get_if<CylinderNode>(&node.kind);
    if (!c) continue;
    const PlanPort port = node.ports.front();
    const auto i = static_cast<std::size_t>(c->cylinder);
    const double opens = engine.engine.firing_at[i].degrees() + model.cylinders()[i]->exhaust_lift().opens().degrees();
    ports.push_back(
        {c->cylinder,
         {port.duct, port.at_finish ? engine.plan.ducts[static_cast<std::size_t>(port.duct)].drawing.length() : 0},
         !port.at_finish,
         wrapped_degrees(opens)});
  }
  std::ranges::sort(ports, {}, &PortPlace::cylinder);
  return ports;
}

}  // namespace pulsewright
