// What `check` shows, as plain text.

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "models/describe.hpp"
#include "models/drawing_edit.hpp"
#include "models/firing_pairs.hpp"
#include "models/tube_advice.hpp"
#include "shared/text_table.hpp"
#include "shared/units.hpp"

namespace pulsewright {
namespace {

using Align = TextTable::Align;
constexpr double degree = std::numbers::pi / 180;

std::string mm(double metres) { return fmt::format("{:.4g} mm", metres * 1e3); }
std::string cm3(double volume) { return fmt::format("{:.4g} cm^3", volume * 1e6); }
std::string deg(double radians) { return fmt::format("{:.4g} deg", radians / degree); }

std::string bores(const DuctDrawing& drawing) {
  const double first = equal_area_bore(first_area(drawing)), last = equal_area_bore(last_area(drawing));
  return std::abs(first - last) < 1e-6 ? mm(first) : mm(first) + " to " + mm(last);
}

std::string duct_line(const ManifoldPlan& plan, const DuctPlan& duct) {
  const auto name = [&](const NodePort& end) { return plan.nodes[static_cast<std::size_t>(end.node)].name; };
  return fmt::format("  {} > {} ({}, bore {}) > {}\n", name(duct.start), duct.name, mm(duct.drawing.length()),
                     bores(duct.drawing), name(duct.finish));
}

/// Azimuth about the axis, 0 to 360 degrees, rounding taken off.
double clock_of(const Eigen::Vector3d& d) {
  constexpr double whole = 2 * std::numbers::pi, rounding = 1e-9;
  const double clock = std::atan2(d.z(), d.y());
  if (std::abs(clock) < rounding) return 0;
  return clock < 0 ? clock + whole : clock;
}

/// "primary 2 at 15 deg, clock 90 deg, bore 36.6 mm"
std::string meeting(const ManifoldPlan& plan, const NodePlan& node, const JointNode& joint, std::size_t port) {
  const PlanPort& end = node.ports[port];
  const DuctPlan& duct = plan.ducts[static_cast<std::size_t>(end.duct)];
  const double area = end.at_finish ? last_area(duct.drawing) : first_area(duct.drawing);
  const std::string bore = "bore " + mm(equal_area_bore(area));
  if (static_cast<int>(port) == joint.outlet) return fmt::format("    {} is the outlet, {}\n", duct.name, bore);
  const Eigen::Vector3d d = (end.at_finish ? -1.0 : 1.0) * joint.ports[port].n;
  const double angle = std::acos(std::clamp(d.x(), -1.0, 1.0));
  const std::string clock = std::sin(angle) < 1e-6 ? "" : ", clock " + deg(clock_of(d));
  return fmt::format("    {} {} at {}{}, {}\n", duct.name, end.at_finish ? "comes in" : "goes out", deg(angle), clock,
                     bore);
}

std::string joint_lines(const ManifoldPlan& plan, const NodePlan& node, const JointNode& joint) {
  const char* law = joint.law == JointLaw::momentum ? "" : ", constant pressure: no angle effect";
  std::string text = fmt::format("  joint {} ({}{})\n", node.name, cm3(joint.volume), law);
  for (std::size_t k = 0; k < node.ports.size(); ++k) text += meeting(plan, node, joint, k);
  return text;
}

std::string spring_line(const GatePlan& gate) {
  if (gate.cut_out) return {};
  if (!gate.spring) return "    " + no_spring_sentence(gate) + "\n";
  const auto pressure = [](double p) { return in_words(p, Dimension::pressure_gauge); };
  return fmt::format(
      "    spring cracks at {} and stands fully open at {} on its port{}; drive pressure alone lifts it at {} over "
      "what "
      "is behind\n",
      pressure(gate.spring->cracks), pressure(gate.spring->fully_open),
      gate.spring->controller ? ", which a controller keeps the boost off" : "",
      pressure(blowing_open_pressure(*gate.spring)));
}

std::string restriction_line(const NodePlan& node, const ThrottleNode& throttle) {
  return fmt::format("  restriction {} at {}: a jet of {:.4g} mm^2, {:.3g} % of the pipe\n", node.name, throttle.at,
                     1e6 * throttle.jet_area, 100 * throttle.jet_area / throttle.pipe_area);
}

std::string gate_line(const ManifoldPlan& plan, const GatePlan& gate) {
  const std::string to = gate.destination < 0 ? "air" : plan.nodes[static_cast<std::size_t>(gate.destination)].name;
  return fmt::format("  {} {} on {}, bore {}, {:.4g} % open, to {}\n", gate.cut_out ? "cut-out" : "gate", gate.name,
                     plan.nodes[static_cast<std::size_t>(gate.joint)].name, mm(gate.bore), 100 * gate.opening, to) +
         spring_line(gate);
}

std::string primaries_text(const EngineCase& engine) {
  TextTable table({{"primary"},
                   {"to"},
                   {"from flange", Align::right},
                   {"from valve", Align::right},
                   {"bore", Align::right},
                   {"bends", Align::right},
                   {"volume", Align::right}});
  for (const PrimaryLine& p : primary_lines(engine))
    table.add_row(
        {p.name, p.ends_at, mm(p.flange_to_end), mm(p.valve_to_end), mm(p.last_bore), deg(p.bends), cm3(p.volume)});
  return table.text();
}

std::string assumed_text(const std::vector<AssumedEntry>& assumed) {
  if (assumed.empty()) return "  nothing\n";
  std::string text;
  for (const AssumedEntry& e : assumed)
    text += fmt::format("  {} = {}{}\n      {}\n", e.key, e.value, e.range.empty() ? "" : " (" + e.range + ")", e.why);
  return text;
}

std::string engine_line(const EngineParts& e) {
  std::string order;
  for (const int cylinder : e.firing_order) order += (order.empty() ? "" : "-") + std::to_string(cylinder);
  return fmt::format(
      "{}{} cylinders, firing order {}, bore {} x stroke {}, {}, compression {:.3g}, redline {:.0f} rpm\n",
      e.arrangement.empty() ? "" : e.arrangement + ", ", e.cylinders(), order, mm(e.crank.bore), mm(e.crank.stroke),
      cm3(e.displacement()), e.crank.compression_ratio, e.redline);
}

std::string notes_text(const ManifoldPlan& plan) {
  std::string text;
  for (const std::string& note : plan.notes) text += "  " + note + "\n";
  return text;
}

}  // namespace

std::string network_text(const ManifoldPlan& plan) {
  std::string text;
  for (const DuctPlan& duct : plan.ducts) text += duct_line(plan, duct);
  for (const NodePlan& node : plan.nodes)
    if (const auto* joint = std::get_if<JointNode>(&node.kind)) text += joint_lines(plan, node, *joint);
  for (const NodePlan& node : plan.nodes)
    if (const auto* throttle = std::get_if<ThrottleNode>(&node.kind)) text += restriction_line(node, *throttle);
  for (const GatePlan& gate : plan.gates) text += gate_line(plan, gate);
  return text + notes_text(plan);
}

std::string describe(const EngineCase& engine) {
  std::string text = engine.title + "\n" + engine_line(engine.engine);
  text += "\nThe network\n" + network_text(engine.plan);
  text += "\nLengths and volumes\n" + primaries_text(engine);
  text += fmt::format("from the flanges to the turbine: {}\n", cm3(manifold_volume(engine)));
  text += "\nThe turbine\n" + turbines_text(engine);
  text += "\nThe compressor\n" + compressor_text(engine);
  text += "\nMetal\n" + metal_text(engine.plan);
  text += "\nWhose blowdown falls into whose overlap\n" + firing_pairs_text(engine);
  text += "\nStock tube to try for the primaries\n" + tube_advice_text(engine);
  return text + "\nAssumed, with the range it may lie in, and why\n" + assumed_text(engine.assumed);
}

std::string describe(const RigCase& rig) {
  const RigSetup& s = rig.setup;
  std::string text = rig.title + "\n";
  text += fmt::format("{} in time, cells of {}\n", in_words(s.duration, Dimension::time), mm(s.cell));
  text += "\nThe network\n" + network_text(s.plan);
  return text + "\nAssumed, with the range it may lie in, and why\n" + assumed_text(rig.assumed);
}

}  // namespace pulsewright
