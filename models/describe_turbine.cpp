// What `check` says of the turbines: throat and volute of every scroll, what the pair passes, and where the figures come
// from.

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "models/describe.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {
namespace {

constexpr double hot = 1200;  // K, of the gas before a turbine at redline; for this estimate only

std::string mm2(double area) { return fmt::format("{:.0f} mm^2", area * 1e6); }

std::string source_text(const TurbineCase& t) {
  switch (t.source) {
    case TurbineSource::assumed_point:
      return "its flow is assumed";
    case TurbineSource::point:
      return "from one point of its flow";
    case TurbineSource::housing:
      return "from A/R and the wheel";
    case TurbineSource::housing_and_point:
      return "from A/R and the wheel, both scaled to pass the point of its flow";
    case TurbineSource::map:
      return "where its map passes most";
  }
  return {};
}

std::string housing_text(const TurbineHousing& h) {
  return fmt::format(
      "    A/R {:.3g} in ({:.2f} mm; a bare number means inches) of the whole housing, wheel {:.4g} mm in, {:.4g} mm "
      "out\n",
      h.a_over_r / 0.0254, h.a_over_r * 1e3, h.inducer * 1e3, h.exducer * 1e3);
}

std::string scaled_text(const TurbineCase& t) {
  if (t.source != TurbineSource::housing_and_point) return {};
  const double share = t.areas.rotor / housing_areas(*t.housing, t.scrolls).rotor;
  std::string text = fmt::format("    the point passes {:.0f} % of what the drawn areas would\n", 100 * share);
  if (std::abs(std::log(share)) > std::log(1.3))
    text +=
        "    THEY DISAGREE by more than 30 %: is A/R in inches, is the wheel measured at its tips, is the flow "
        "corrected?\n";
  return text;
}

/// Entries of a turbine: the volute is as wide at its start as the throat that the case gives it.
std::string scroll_text(const EngineCase& engine, const NodePlan& node, const TurbineNode& turbine) {
  const TurbineCase& t = engine.turbines[static_cast<std::size_t>(turbine.turbine)];
  std::string text;
  for (std::size_t k = 0; k < node.ports.size(); ++k) {
    if (turbine.scroll[k] < 0) continue;
    const DuctPlan& duct = engine.plan.ducts[static_cast<std::size_t>(node.ports[k].duct)];
    const double length = duct.drawing.length(), start = node.ports[k].at_finish
                                                             ? std::max(0.0, length - t.volute_length)
                                                             : std::min(length, t.volute_length);
    const std::string name =
        t.scrolls == 1 ? "scroll" : fmt::format("scroll {}", static_cast<char>('a' + turbine.scroll[k]));
    text += fmt::format("    {}: volute from {} down to a throat of {}\n", name, mm2(area_at(duct.drawing, start)),
                        mm2(t.areas.scroll_throat));
  }
  return text;
}

/// Pressure before the throats that drives a steady flow through so many scrolls at once.
struct SteadyDrive {
  double pressure;
  bool choked;  // in the throats
};

SteadyDrive steady_drive(const EngineCase& engine, const TurbineCase& t, int scrolls_open, double flow,
                         const Gas& gas) {
  const double throat = scrolls_open * t.areas.scroll_throat, g = heat_ratio(gas, hot, 1);
  const double behind = engine.ambient.pressure + (engine.silencer.fitted ? engine.silencer.pressure_drop : 0);
  const auto pair = [&](double p) { return pair_flow(behind / p, t.areas.rotor / throat, g); };
  double low = behind, high = 100 * behind;
  for (int turn = 0; turn < 60; ++turn) {
    const double p = 0.5 * (low + high);
    (throat * p / std::sqrt(gas_constant(gas, 1) * hot) * pair(p).flow < flow ? low : high) = p;
  }
  return {high, pair(high).middle <= critical_pressure_ratio(g) * (1 + 1e-6)};
}

/// Is the housing the restriction: what redline's flow takes, through all scrolls and through one at a time.
std::string steady_text(const EngineCase& engine, const TurbineCase& t) {
  const Gas gas = mixture_gas(engine.engine.fuel, engine.engine.lambda);
  const double flow = engine.silencer.mass_flow / static_cast<double>(engine.turbines.size());
  std::string text = fmt::format(
      "    the flow of redline, {:.3f} kg/s at {:.0f} K, steady and all of it through the wheel", flow, hot);
  for (int open = t.scrolls; open > 0; --open) {
    const SteadyDrive drive = steady_drive(engine, t, open, flow, gas);
    text += fmt::format("{} {:.2f} bar absolute{}",
                        open == t.scrolls ? ", takes" : "; through one scroll at a time, as pulses come,",
                        drive.pressure / 1e5, drive.choked ? " and CHOKES THE THROAT" : "");
  }
  return text + "\n";
}

std::string turbine_text(const EngineCase& engine, const NodePlan& node, const TurbineNode& turbine) {
  const TurbineCase& t = engine.turbines[static_cast<std::size_t>(turbine.turbine)];
  std::string text = fmt::format(
      "  {}: passes {:.3f} kg/s (corrected to {:.4g} K, {:.4g} bar) at a pressure ratio of {:.3g}, {}\n", t.name,
      t.capacity.flow, t.capacity.temperature, t.capacity.pressure / 1e5, t.capacity.ratio, source_text(t));
  if (t.housing) text += housing_text(*t.housing) + scaled_text(t);
  text += scroll_text(engine, node, turbine);
  text += fmt::format("    rotor {}, {:.2f} times the throat{}\n", mm2(t.areas.rotor),
                      t.areas.rotor / (t.scrolls * t.areas.scroll_throat), t.scrolls > 1 ? "s together" : "");
  if (t.scrolls > 1)
    text += fmt::format("    the tongue leaks through {} between the scrolls\n",
                        mm2(t.tongue_leak * t.areas.scroll_throat));
  text += steady_text(engine, t);
  return text;
}

}  // namespace

std::string turbines_text(const EngineCase& engine) {
  std::string text;
  for (const NodePlan& node : engine.plan.nodes)
    if (const auto* turbine = std::get_if<TurbineNode>(&node.kind)) text += turbine_text(engine, node, *turbine);
  return text;
}

}  // namespace pulsewright
