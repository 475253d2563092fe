#include "models/describe.hpp"

#include <algorithm>

#include "models/drawing_edit.hpp"
#include "models/plan_ways.hpp"

namespace pulsewright {
namespace {

const NodePlan& node(const ManifoldPlan& plan, int index) { return plan.nodes[static_cast<std::size_t>(index)]; }
const DuctPlan& duct(const ManifoldPlan& plan, int index) { return plan.ducts[static_cast<std::size_t>(index)]; }

/// The part of a duct that a name stands for.
DuctDrawing drawing_of(const ManifoldPlan& plan, const NamedStretch& s) {
  constexpr double rounding = 1e-9;  // m
  const double length = s.name_to - s.name_from;
  const double from = s.reversed ? s.duct_at_from - length : s.duct_at_from;
  DuctDrawing part = duct(plan, s.duct).drawing;
  if (from + length < part.length() - rounding) part = parted(part, from + length).first;
  if (from > rounding) part = parted(part, from).second;
  return part;
}

/// The name of the primary of a cylinder: what follows its port, in its duct or behind the step at the flange.
std::string primary_name(const ManifoldPlan& plan, int cylinder) {
  const std::string port = "port " + std::to_string(cylinder + 1);
  const NamedStretch port_stretch = stretches(plan, port).front();
  for (std::size_t k = 0; k + 1 < plan.names.size(); ++k)
    if (plan.names[k].name == port && plan.names[k + 1].duct == port_stretch.duct) return plan.names[k + 1].name;
  const int flange = duct(plan, port_stretch.duct).finish.node;
  for (const NamedStretch& s : plan.names)
    if (duct(plan, s.duct).start.node == flange && s.name_from == 0) return s.name;
  return port;
}

/// Where a named duct ends: the node at its finish, or the name that goes on in the same duct.
std::string end_of(const ManifoldPlan& plan, const NamedStretch& last) {
  for (std::size_t k = 0; k + 1 < plan.names.size(); ++k)
    if (plan.names[k].name == last.name && plan.names[k].name_to == last.name_to && plan.names[k + 1].duct == last.duct)
      return plan.names[k + 1].name;
  return node(plan, duct(plan, last.duct).finish.node).name;
}

PrimaryLine primary_line(const ManifoldPlan& plan, int cylinder) {
  PrimaryLine line{};
  line.cylinder = cylinder + 1;
  line.name = primary_name(plan, cylinder);
  const auto pieces = stretches(plan, line.name);
  line.ends_at = end_of(plan, pieces.back());
  line.flange_to_end = pieces.back().name_to;
  line.valve_to_end = line.flange_to_end + stretches(plan, "port " + std::to_string(cylinder + 1)).back().name_to;
  line.first_bore = equal_area_bore(first_area(drawing_of(plan, pieces.front())));
  line.last_bore = equal_area_bore(last_area(drawing_of(plan, pieces.back())));
  for (const NamedStretch& s : pieces) {
    const DuctDrawing part = drawing_of(plan, s);
    line.volume += drawn_volume(part);
    for (const DuctSection& section : part.sections) line.bends += section.bend_angle;
  }
  return line;
}

}  // namespace

std::vector<PrimaryLine> primary_lines(const EngineCase& engine) {
  std::vector<PrimaryLine> lines;
  for (int c = 0; c < engine.engine.cylinders(); ++c) lines.push_back(primary_line(engine.plan, c));
  return lines;
}

double manifold_volume(const EngineCase& engine) {
  const ManifoldPlan& plan = engine.plan;
  std::vector<bool> inside(plan.nodes.size(), false);
  for (int c = 0; c < engine.engine.cylinders(); ++c)
    for (const int reached : before_turbine(plan, valve_node(plan, c)))
      inside[static_cast<std::size_t>(reached)] = true;
  double volume = 0;
  for (std::size_t k = 0; k < plan.nodes.size(); ++k)
    if (const auto* joint = std::get_if<JointNode>(&plan.nodes[k].kind); joint && inside[k]) volume += joint->volume;
  for (const NamedStretch& s : plan.names) {
    const bool counts = inside[static_cast<std::size_t>(duct(plan, s.duct).start.node)] ||
                        inside[static_cast<std::size_t>(duct(plan, s.duct).finish.node)];
    if (counts && !s.name.starts_with("port ")) volume += drawn_volume(drawing_of(plan, s));
  }
  return volume;
}

}  // namespace pulsewright
