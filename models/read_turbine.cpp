#include "models/read_turbine.hpp"

#include <algorithm>

#include "models/read_metal.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double inch = 0.0254;
constexpr double usual_ratio = 2;  // at which a turbine's flow is stated where the case does not

/// One turbine's table with what its reading needs from around it.
struct Reading {
  const CaseTable& table;
  const Gas& gas;
  AssumedList& assumed;
  std::string owner;  // named in the list of assumed values where there are several turbines
  int turbines;
  std::optional<double> compressor_exducer, wheel_ratio;  // of [compressor]

  double given_or(std::optional<double> given, std::string_view key) const {
    return assumed.given_or(given, key, owner);
  }
};

CapacityPoint read_point(const CaseTable& t) {
  CapacityPoint point{};
  point.flow = t.need_quantity("flow", Dimension::mass_flow, between(1e-3, 10));
  point.ratio = t.need_number("ratio", between(1.05, 10));
  point.temperature = t.need_quantity("temperature", Dimension::temperature, between(200, 1500));
  point.pressure = t.need_quantity("pressure", Dimension::pressure_absolute, between(1e4, 1e7));
  return point;
}

/// The whole engine's flow, shared by its turbines.
CapacityPoint assumed_point(const Reading& r) {
  const double whole = assumed_row("turbine.capacity").base(r.assumed.facts());
  return {r.assumed.take_scaled("turbine.capacity", whole / r.turbines, r.owner), usual_ratio, 288.15, 101325};
}

/// A length; a bare number means inches, as it is cast on the housing.
std::optional<double> read_a_over_r(const CaseTable& t) {
  const Range range = between(0.1 * inch, 5 * inch);
  const CaseKind kind = t.kind("a_over_r");
  if (kind != CaseKind::integer && kind != CaseKind::number) return t.quantity("a_over_r", Dimension::length, range);
  const auto inches = t.number("a_over_r", between(0.1, 5));
  return inches ? std::optional(*inches * inch) : std::nullopt;
}

void demand_the_wheel(const Reading& r) {
  for (const char* key : {"inducer", "exducer"})
    if (!r.table.has(key))
      r.table.fault(
          "a_over_r", std::string("a_over_r alone does not tell the flow: ") + key + " is missing",
          "measure the turbine wheel: inducer = \"64 mm\" (where gas enters), exducer = \"55 mm\" (where it leaves)");
}

void refuse_housing_keys(const CaseTable& t) {
  for (const char* key : {"rotor_exit_angle", "centroid_radius"})
    if (t.has(key))
      t.fault(key, std::string(key) + " belongs to a housing given by a_over_r", "give a_over_r, or take it out");
}

std::optional<TurbineHousing> read_housing(const Reading& r, const TurbineCase& turbine) {
  const CaseTable& t = r.table;
  if (!t.has("a_over_r")) {
    refuse_housing_keys(t);
    return std::nullopt;
  }
  demand_the_wheel(r);
  const auto a_over_r = read_a_over_r(t);
  const auto radius = t.quantity("centroid_radius", Dimension::length, between(0.005, 0.3));
  const auto angle = t.quantity("rotor_exit_angle", Dimension::angle, between(0.1, 1.4));
  if (t.has("rotor_over_throat"))
    t.fault("rotor_over_throat", "a_over_r and the wheel's sizes already tell rotor from throat",
            "take one of them out");
  if (!a_over_r || !turbine.inducer || !turbine.exducer) return std::nullopt;
  return TurbineHousing{*a_over_r, r.given_or(radius, "turbine.centroid_radius"), *turbine.inducer, *turbine.exducer,
                        r.given_or(angle, "turbine.rotor_exit_angle")};
}

void read_wheel(const Reading& r, TurbineCase& turbine) {
  turbine.inducer = r.table.quantity("inducer", Dimension::length, between(0.01, 0.3));
  turbine.exducer = r.table.quantity("exducer", Dimension::length, between(0.01, 0.3));
  if (turbine.inducer) r.assumed.facts().turbine_inducer = *turbine.inducer;
  if (turbine.exducer) r.assumed.facts().turbine_exducer = *turbine.exducer;
  if (turbine.inducer && turbine.exducer && *turbine.exducer > *turbine.inducer)
    r.table.fault("exducer", "the exducer is wider than the inducer",
                  "gas enters a turbine wheel at the inducer, its largest diameter");
}

/// Compressor exducer over turbine inducer.
double read_wheel_ratio(const Reading& r, const TurbineCase& turbine) {
  if (r.wheel_ratio || !turbine.inducer) return r.given_or(r.wheel_ratio, "compressor.exducer_over_inducer");
  return r.given_or(r.compressor_exducer, "compressor.exducer") / *turbine.inducer;
}

/// Rotor over all throats: by the housing, or said, or assumed.
double read_pair(const Reading& r, const TurbineCase& turbine) {
  if (turbine.housing) {
    const TurbineAreas drawn = housing_areas(*turbine.housing, turbine.scrolls);
    return drawn.rotor / (turbine.scrolls * drawn.scroll_throat);
  }
  return r.given_or(r.table.number("rotor_over_throat", between(0.3, 3)), "turbine.rotor_over_throat");
}

void read_point_or_housing(const Reading& r, TurbineCase& turbine) {
  const bool point = r.table.has("capacity");
  if (point) turbine.capacity = read_point(r.table.table("capacity"));
  if (turbine.housing && !point) {
    turbine.source = TurbineSource::housing;
    turbine.areas = housing_areas(*turbine.housing, turbine.scrolls);
    turbine.capacity = capacity_of(turbine.areas, turbine.scrolls, usual_ratio, r.gas);
    return;
  }
  turbine.source = turbine.housing ? TurbineSource::housing_and_point
                   : point         ? TurbineSource::point
                                   : TurbineSource::assumed_point;
  if (!point) turbine.capacity = assumed_point(r);
  turbine.areas = areas_from_capacity(turbine.capacity, read_pair(r, turbine), turbine.scrolls, r.gas);
}

/// The map's table; faults where the case says too much or too little beside it.
std::optional<TurbineMapTable> read_map_table(const Reading& r, const TurbineCase& turbine) {
  const CaseTable& t = r.table;
  const auto fault = [&](std::string message, std::string hint) {
    t.fault("map", std::move(message), std::move(hint));
  };
  if (t.has("capacity")) t.fault("capacity", "the map already says what the turbine passes", "take one of them out");
  const auto text = t.parsed("map", [&](std::string_view name) { return t.read_beside(name, most_map_bytes); });
  const std::string name = printable(t.text("map").value_or("map"));
  const auto file = text ? parse_map_file(*text, name, turbine_map_columns, fault) : std::nullopt;
  const auto table = file ? turbine_map_table(*file, fault) : std::nullopt;
  if (!table) return std::nullopt;
  if (table->has_speed && !turbine.inducer)
    fault("the map goes by the wheel's speed, and the wheel's size is missing",
          "inducer = \"64 mm\": the wheel's largest diameter, where gas enters");
  if (table->has_efficiency && t.has("peak_efficiency"))
    t.fault("peak_efficiency", "the map already says the efficiency", "take one of them out");
  return table->has_speed && !turbine.inducer ? std::nullopt : table;
}

void read_peak_efficiency(const Reading& r, TurbineCase& turbine) {
  turbine.peak_efficiency = r.given_or(r.table.number("peak_efficiency", above(0, 0.95)), "turbine.peak_efficiency");
}

void read_map(const Reading& r, TurbineCase& turbine) {
  turbine.source = TurbineSource::map;
  turbine.capacity = {0.1, usual_ratio, 288.15, 101325};  // harmless where the map is at fault
  const double pair = read_pair(r, turbine);
  turbine.areas = areas_from_capacity(turbine.capacity, pair, turbine.scrolls, r.gas);
  const auto table = read_map_table(r, turbine);
  if (!table) return;
  if (table->has_efficiency)
    turbine.peak_efficiency = std::ranges::max(table->points, {}, &TurbineMapPoint::efficiency).efficiency;
  else
    read_peak_efficiency(r, turbine);
  turbine.map = std::make_shared<const TurbineMap>(*table, pair, turbine.scrolls, turbine.inducer.value_or(0),
                                                   turbine.peak_efficiency, r.gas);
  turbine.areas = turbine.map->areas();
  turbine.capacity = capacity_of(turbine.areas, turbine.scrolls, usual_ratio, r.gas);
}

void read_flow(const Reading& r, TurbineCase& turbine) {
  turbine.housing = read_housing(r, turbine);
  if (r.table.has("map")) return read_map(r, turbine);
  read_point_or_housing(r, turbine);
  read_peak_efficiency(r, turbine);
}

void read_shaft(const Reading& r, TurbineCase& turbine) {
  const CaseTable& t = r.table;
  turbine.mechanical_efficiency =
      r.given_or(t.number("mechanical_efficiency", above(0, 1)), "turbine.mechanical_efficiency");
  turbine.wheel_ratio = read_wheel_ratio(r, turbine);
  turbine.inertia = t.quantity("inertia", Dimension::inertia, above(0, 1));
  if (!turbine.inertia && turbine.exducer) turbine.inertia = r.given_or({}, "turbine.inertia");
}

TurbineCase read_turbine(const Reading& r) {
  const CaseTable& t = r.table;
  TurbineCase turbine{};
  turbine.name = t.text("name").value_or("turbine");
  turbine.place = t.place();
  t.choice("charge", {"shared"});
  turbine.scrolls = t.count("scrolls", 1, 2).value_or(1);
  read_wheel(r, turbine);
  read_flow(r, turbine);
  turbine.volute_length =
      r.given_or(t.quantity("volute_length", Dimension::length, between(0.02, 1)), "turbine.volute_length");
  const DuctWall wall = read_housing_wall(t, r.assumed);
  turbine.roughness = wall.roughness;
  turbine.wall_temperature = wall.temperature;
  turbine.metal = wall.metal;
  const auto leak = t.number("tongue_leak", between(0, 0.5));
  turbine.tongue_leak = turbine.scrolls > 1 ? r.given_or(leak, "turbine.tongue_leak") : 0;
  read_shaft(r, turbine);
  return turbine;
}

void demand_names(const std::vector<CaseTable>& tables) {
  if (tables.size() < 2) return;
  for (const CaseTable& t : tables)
    if (!t.has("name"))
      t.fault_here("several turbines, and this one has no name",
                   "name = \"front\", and gas goes to it by that name: to = \"front\"");
}

}  // namespace

std::vector<TurbineCase> read_turbines(const CaseTable& root, const Gas& gas, AssumedList& assumed) {
  const std::vector<CaseTable> tables = root.tables("turbine");
  const CaseTable compressor = root.table("compressor");
  const auto exducer = compressor.quantity("exducer", Dimension::length, between(0.01, 0.3));
  const auto ratio = compressor.number("exducer_over_inducer", between(0.5, 2));
  if (exducer && ratio) compressor.fault("exducer_over_inducer", "the exducer is given too", "take one of them out");
  if (tables.empty())
    root.fault_here("no turbine: what does the manifold blow into?",
                    "give a table [turbine]; all its keys may be left out");
  demand_names(tables);
  std::vector<TurbineCase> turbines;
  for (const CaseTable& t : tables) {
    const std::string owner = tables.size() > 1 ? t.text("name").value_or("") : "";
    turbines.push_back(read_turbine({t, gas, assumed, owner, static_cast<int>(tables.size()), exducer, ratio}));
  }
  return turbines;
}

}  // namespace pulsewright
