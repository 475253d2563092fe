// What a comparison holds equal, and what of it the cases do not: each thing is said in one of the two lists.

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "cli/layout.hpp"

namespace pulsewright {
namespace {

constexpr double bar = 1e5;

/// A thing that decides more than the pipes do. It counts as equal where all its values are, to rounding.
struct HeldThing {
  std::string name, text;
  std::vector<double> values;
};

HeldThing engine_thing(const EngineCase& c) {
  const double litres = 1e3 * c.engine.displacement(), compression = c.engine.crank.compression_ratio;
  return {
      "engine",
      fmt::format("engine of {:.2f} l, {} cylinders, compression {:.1f}", litres, c.engine.cylinders(), compression),
      {litres, static_cast<double>(c.engine.cylinders()), compression}};
}

HeldThing fuel_thing(const EngineCase& c) {
  return {"fuel",
          fmt::format("fuel {}, lambda {:.2f}", c.engine.fuel.name, c.engine.lambda),
          {c.engine.fuel.hydrogen_per_carbon, c.engine.fuel.oxygen_per_carbon, c.engine.fuel.lower_heating_value,
           c.engine.lambda}};
}

std::string mode_in_words(BoostMode mode) {
  switch (mode) {
    case BoostMode::given:
      return "given at every speed";
    case BoostMode::hold:
      return "held by the gates";
    case BoostMode::balanced:
      return "as the turbo makes it";
    case BoostMode::step:
      return "after a load step";
  }
  return {};
}

HeldThing boost_thing(const EngineCase& c) {
  const double gauge = c.charge.boost_gauge, outside = c.ambient.pressure;
  return {
      "boost target and air",
      fmt::format("boost {:.2f} bar gauge, {:.2f} bar absolute at the intake, {:.0f} degC, {}; air outside {:.2f} bar",
                  gauge / bar, (gauge + outside) / bar, c.charge.temperature - 273.15, mode_in_words(c.run.boost),
                  outside / bar),
      {gauge, outside, c.charge.temperature, c.ambient.temperature, static_cast<double>(c.run.boost)}};
}

HeldThing turbine_thing(const EngineCase& c) {
  HeldThing thing{"turbine", {}, {static_cast<double>(c.turbines.size())}};
  for (const TurbineCase& t : c.turbines) {
    thing.text += fmt::format("{}{} passing {:.3f} kg/s (corrected) at a pressure ratio of {:.2f}",
                              thing.text.empty() ? "" : ", ", t.name, t.capacity.flow, t.capacity.ratio);
    thing.values.insert(thing.values.end(), {t.capacity.flow, t.capacity.ratio, t.peak_efficiency});
  }
  return thing;
}

HeldThing silencer_thing(const EngineCase& c) {
  const SilencerCase& s = c.silencer;
  if (!s.fitted) return {"silencer", "no silencer", {0}};
  return {"silencer",
          fmt::format("silencer of {:.2f} bar at {:.3f} kg/s", s.pressure_drop / bar, s.mass_flow),
          {s.pressure_drop, s.mass_flow}};
}

HeldThing speed_thing(const EngineCase& c) {
  return {"speeds", fmt::format("speeds {} rpm", fmt::join(c.run.rpm, ", ")), c.run.rpm};
}

HeldThing cell_thing(const EngineCase& c) {
  return {"cells of the pipes",
          fmt::format("pipes computed in pieces, cell {:.1f} mm", 1e3 * c.run.cell),
          {c.run.cell, c.run.wall_heat_factor}};
}

using MakeThing = HeldThing (*)(const EngineCase&);
const std::vector<MakeThing> things = {engine_thing,   fuel_thing,  boost_thing, turbine_thing,
                                       silencer_thing, speed_thing, cell_thing};

bool same(const std::vector<double>& a, const std::vector<double>& b) {
  return std::ranges::equal(a, b, [](double x, double y) { return std::abs(x - y) <= 1e-9 * std::abs(x); });
}

bool same_in_all(const std::vector<Layout>& layouts, MakeThing make) {
  const HeldThing first = make(layouts.front().engine());
  return std::ranges::all_of(layouts, [&](const Layout& l) { return same(first.values, make(l.engine()).values); });
}

/// "NOT held equal: cells. A, B: cell 5.0 mm; C: cell 10.0 mm"
std::string said_apart(const std::vector<Layout>& layouts, MakeThing make) {
  std::vector<std::pair<HeldThing, std::string>> groups;  // and the letters of the layouts that share it
  for (const Layout& l : layouts) {
    HeldThing thing = make(l.engine());
    const auto known = std::ranges::find_if(groups, [&](const auto& g) { return same(g.first.values, thing.values); });
    if (known == groups.end())
      groups.emplace_back(std::move(thing), l.letter);
    else
      known->second += ", " + l.letter;
  }
  std::vector<std::string> parts;
  for (const auto& [thing, letters] : groups) parts.push_back(letters + ": " + thing.text);
  return fmt::format("NOT held equal: {}. {}", groups.front().first.name, fmt::join(parts, "; "));
}

}  // namespace

std::vector<std::string> held_equal(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const MakeThing make : things)
    if (same_in_all(layouts, make)) lines.push_back(make(layouts.front().engine()).text);
  return lines;
}

std::vector<std::string> not_equal(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const MakeThing make : things)
    if (!same_in_all(layouts, make)) lines.push_back(said_apart(layouts, make));
  return lines;
}

}  // namespace pulsewright
