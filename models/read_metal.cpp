#include "models/read_metal.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double first_temperature = 1050;  // K: where the computed temperature begins; forgotten by the settled state

// Common practice, no source: what is sold for tubes, as laid on, at some 600 degC.
constexpr std::array<NamedWrap, 3> wraps{{
    {"glass wrap", 3e-3, 0.15},        // woven glass or basalt tape, half overlapped
    {"ceramic coating", 0.3e-3, 0.9},  // sprayed
    {"blanket", 12e-3, 0.12},          // moulded fibre under foil
}};

struct MetalRows {
  std::string_view wall, alloy;  // rows of the table of assumed values
};

std::optional<double> read_thickness(const Layered& table, std::optional<double> tube_wall) {
  const CaseTable& t = table.with("wall");
  const auto said = t.quantity("wall", Dimension::length, above(0, 0.05));
  if (said && tube_wall)
    t.fault("wall", "the wall is said twice: the tube has " + in_words(*tube_wall, Dimension::length),
            "leave wall out, or give bore instead of tube");
  return said ? said : tube_wall;
}

const Alloy& read_alloy(const CaseTable& t, std::string_view row, AssumedList& assumed) {
  const auto said = t.parsed("alloy", [](std::string_view text) { return &find_alloy(text); });
  if (said) return **said;
  if (t.has("alloy")) return alloys().front();
  return alloys()[static_cast<std::size_t>(assumed.take(row))];
}

TubeWrap named_wrap(const CaseTable& t, AssumedList& assumed) {
  std::vector<std::string> names{"none"};
  for (const NamedWrap& w : wraps) names.emplace_back(w.name);
  const std::string said = t.choice("wrap", names).value_or("none");
  const auto wrap = std::ranges::find(wraps, said, &NamedWrap::name);
  if (wrap == wraps.end()) return {};
  return {said, assumed.take_scaled("wrap.thickness", wrap->thickness, said),
          assumed.take_scaled("wrap.conductivity", wrap->conductivity, said)};
}

/// "none", a named one, or { thickness, conductivity }.
TubeWrap read_wrap(const CaseTable& t, AssumedList& assumed) {
  if (!t.has("wrap")) return {};
  if (t.kind("wrap") == CaseKind::text) return named_wrap(t, assumed);
  const CaseTable w = t.table("wrap");
  TubeWrap wrap;
  wrap.thickness = w.need_quantity("thickness", Dimension::length, between(0, 0.1));
  wrap.conductivity = w.need_quantity("conductivity", Dimension::conductivity, between(0.005, 500));
  return wrap;
}

/// A temperature that is given leaves nothing to compute: the keys that would say how are a fault in the same table.
void refuse_metal(const CaseTable& t) {
  for (const char* key : {"alloy", "wall", "emissivity", "wrap"})
    if (t.has(key))
      t.fault(key, std::string(key) + " changes nothing where wall_temperature is given",
              "leave one of them out; without wall_temperature the metal's temperature is computed");
}

DuctWall read_any_wall(const Layered& t, std::optional<double> tube_wall, const MetalRows& rows, AssumedList& assumed) {
  DuctWall wall{};
  wall.roughness =
      assumed.given_or(t.with("roughness").quantity("roughness", Dimension::length, between(0, 5e-3)), "roughness");
  for (const char* key : {"alloy", "wall", "emissivity", "wrap"})
    t.with(key);  // known even where a temperature is given
  const CaseTable& said = t.with("wall_temperature");
  if (said.has("wall_temperature")) {
    refuse_metal(said);
    wall.temperature =
        said.quantity("wall_temperature", Dimension::temperature, wall_range()).value_or(first_temperature);
    return wall;
  }
  wall.temperature = first_temperature;
  wall.metal.emplace();
  wall.metal->thickness = assumed.given_or(read_thickness(t, tube_wall), rows.wall);
  wall.metal->alloy = &read_alloy(t.with("alloy"), rows.alloy, assumed);
  wall.metal->emissivity = assumed.given_or(t.with("emissivity").number("emissivity", between(0, 1)), "emissivity");
  wall.metal->wrap = read_wrap(t.with("wrap"), assumed);
  return wall;
}

bool any_metal(const ManifoldPlan& plan) {
  for (const DuctPlan& duct : plan.ducts)
    for (const DuctSection& s : duct.drawing.sections)
      if (s.metal) return true;
  return false;
}

}  // namespace

std::span<const NamedWrap> named_wraps() { return wraps; }

DuctWall read_tube_wall(const Layered& table, std::optional<double> tube_wall, AssumedList& assumed) {
  return read_any_wall(table, tube_wall, {"wall", "alloy"}, assumed);
}

DuctWall read_housing_wall(const CaseTable& turbine, AssumedList& assumed) {
  DuctWall wall = read_any_wall(Layered(turbine), std::nullopt, {"turbine.wall", "turbine.alloy"}, assumed);
  if (wall.metal) wall.metal->housing = true;
  return wall;
}

EngineBay read_bay(const CaseTable& root, const ManifoldPlan& plan, double pressure, AssumedList& assumed) {
  const CaseTable t = root.table("ambient");
  const auto temperature = t.quantity("surroundings", Dimension::temperature, between(220, 600));
  const auto speed = t.quantity("air_speed", Dimension::velocity, between(0, 100));
  if (!any_metal(plan)) return {temperature.value_or(330), speed.value_or(0), pressure};
  return {assumed.given_or(temperature, "ambient.surroundings"), assumed.given_or(speed, "ambient.air_speed"),
          pressure};
}

}  // namespace pulsewright
