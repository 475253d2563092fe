#include "models/read_engine.hpp"

#include <cmath>
#include <numbers>

#include "models/read_duct.hpp"
#include "shared/words.hpp"
#include "solver/composition.hpp"

namespace pulsewright {
namespace {

constexpr double degree = std::numbers::pi / 180;

Fuel read_fuel(const CaseTable& t) { return t.parsed("fuel", parse_fuel).value_or(*find_fuel("petrol")); }

void read_sizes(const CaseTable& t, EngineParts& e, AssumedList& assumed) {
  EngineFacts& facts = assumed.facts();
  facts.bore = e.crank.bore = t.need_quantity("bore", Dimension::length, between(0.02, 0.5));
  facts.stroke = e.crank.stroke = t.need_quantity("stroke", Dimension::length, between(0.02, 0.6));
  facts.redline = e.redline = t.need_number("redline", between(500, 25000));
  facts.diesel = e.diesel = e.fuel.name == "diesel";
  e.crank.rod = assumed.given_or(t.quantity("rod", Dimension::length, above(0, 2)), "engine.rod");
  if (e.crank.rod <= 0.6 * e.crank.stroke) {
    t.fault("rod",
            "a rod of " + in_words(e.crank.rod, Dimension::length) + " is too short for a stroke of " +
                in_words(e.crank.stroke, Dimension::length),
            "it is measured between the centres of its eyes");
    e.crank.rod = 1.7 * e.crank.stroke;
  }
  e.crank.compression_ratio =
      assumed.given_or(t.number("compression_ratio", between(4, 30)), "engine.compression_ratio");
  facts.displacement = e.displacement();
}

/// "20 deg after tdc".
std::optional<double> read_burn_centre(const CaseTable& t) {
  const auto angle = t.cam_angle("centre");
  if (!angle) return std::nullopt;
  if (angle->dead == DeadCentre::top && angle->after > -30 * degree && angle->after < 90 * degree) return angle->after;
  t.fault("centre", "half the charge burns between 30 deg before and 90 deg after tdc", "such as \"20 deg after tdc\"");
  return std::nullopt;
}

void read_burn(const CaseTable& t, EngineParts& e, AssumedList& assumed) {
  const auto centre = read_burn_centre(t);
  e.burn.centre = {assumed.given_or(centre, "engine.burn.centre")};
  e.burn_later = centre || e.diesel ? 0 : assumed_burn_later;
  e.burn.duration = {assumed.given_or(t.quantity("duration", Dimension::angle, between(5 * degree, 120 * degree)),
                                      "engine.burn.duration")};
  e.burn.wiebe_a = assumed.given_or(t.number("wiebe_a", between(0.5, 20)), "engine.burn.wiebe_a");
  e.burn.wiebe_m = assumed.given_or(t.number("wiebe_m", between(0, 10)), "engine.burn.wiebe_m");
  e.burn_efficiency = assumed.given_or(t.number("efficiency", above(0, 1)), "engine.burn.efficiency");
}

/// A mean pressure that holds at every speed, or a plain number as a factor on the assumed law.
void read_friction(const CaseTable& t, EngineParts& e, AssumedList& assumed) {
  constexpr std::string_view key = "friction_mean_pressure";
  if (t.kind(key) == CaseKind::text) {
    e.friction = {t.quantity(key, Dimension::pressure_difference, between(0, 20e5)).value_or(0), 0, 0, 0};
    return;
  }
  const double factor = assumed.given_or(t.number(key, between(0, 5)), "engine.friction_mean_pressure");
  e.friction.constant *= factor;
  e.friction.of_peak *= factor;
  e.friction.of_speed *= factor;
  e.friction.of_speed_squared *= factor;
}

void read_walls(const CaseTable& t, EngineParts& e, AssumedList& assumed) {
  const auto read = [&](std::string_view key) {
    return assumed.given_or(t.quantity(key, Dimension::temperature, between(250, 1200)), "engine." + std::string(key));
  };
  e.piston_temperature = read("piston_temperature");
  e.head_temperature = read("head_temperature");
  e.liner_temperature = read("liner_temperature");
}

PortCase read_port(const CaseTable& t, AssumedList& assumed) {
  PortCase port;
  port.exit = t.parsed("exit", parse_cross_section);
  port.length = assumed.given_or(t.quantity("length", Dimension::length, above(0, 1)), "exhaust_port.length");
  port.wall_temperature = assumed.given_or(t.quantity("wall_temperature", Dimension::temperature, wall_range()),
                                           "exhaust_port.wall_temperature");
  port.roughness = assumed.given_or(t.quantity("roughness", Dimension::length, between(0, 5e-3)), "roughness");
  return port;
}

}  // namespace

EngineParts read_engine(const CaseTable& root, AssumedList& assumed) {
  const CaseTable t = root.table("engine");
  if (!t.exists()) root.fault_here("no [engine]", "a case has an [engine] with its manifold, or a [rig]");
  EngineParts e{};
  e.fuel = read_fuel(t);
  if (t.exists()) read_firing(t, e);
  if (e.firing_at.empty()) e.firing_at.resize(4);
  read_sizes(t, e, assumed);
  const auto boost = root.table("charge").quantity("boost_gauge", Dimension::pressure_gauge, between(-0.8e5, 10e5));
  assumed.facts().boost_gauge = boost.value_or(0);
  assumed.facts().lambda = e.lambda = assumed.given_or(t.number("lambda", between(0.6, 10)), "engine.lambda");
  assumed.facts().heat_set_free = heat_set_free(e.fuel, e.lambda);
  e.port_injection = t.choice("fuel_enters", {"direct", "port"}).value_or("direct") == "port";
  read_burn(t.table("burn"), e, assumed);
  read_friction(t, e, assumed);
  read_walls(t, e, assumed);
  e.exhaust = read_exhaust_valve(t.table("exhaust_valve"), assumed);
  e.intake = read_intake_valve(t.table("intake_valve"), assumed);
  e.port = read_port(t.table("exhaust_port"), assumed);
  return e;
}

}  // namespace pulsewright
