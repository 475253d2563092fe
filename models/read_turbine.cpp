#include "models/read_turbine.hpp"

#include "models/read_duct.hpp"

namespace pulsewright {
namespace {

void not_yet(const CaseTable& t, std::string_view key, const std::string& instead) {
  if (t.has(key)) t.fault(key, std::string(key) + " is not possible yet", instead);
}

CapacityPoint read_capacity(const CaseTable& turbine, AssumedList& assumed) {
  CapacityPoint point{0, 2.0, 288.15, 101325};
  if (!turbine.has("capacity")) {
    point.flow = assumed.take("turbine.capacity");
    return point;
  }
  const CaseTable t = turbine.table("capacity");
  point.flow = t.need_quantity("flow", Dimension::mass_flow, between(1e-3, 10));
  point.ratio = t.need_number("ratio", between(1.05, 10));
  point.temperature = t.need_quantity("temperature", Dimension::temperature, between(200, 1500));
  point.pressure = t.need_quantity("pressure", Dimension::pressure_absolute, between(1e4, 1e7));
  return point;
}

/// Inertia by the wheel's size; without it none, and the modes that need it ask for it.
std::optional<double> read_inertia(const CaseTable& t, AssumedList& assumed) {
  const auto given = t.quantity("inertia", Dimension::inertia, above(0, 1));
  const auto exducer = t.quantity("exducer", Dimension::length, between(0.01, 0.3));
  if (given || !exducer) return given;
  assumed.facts().turbine_exducer = *exducer;
  return assumed.take("turbine.inertia");
}

void refuse_what_comes_later(const CaseTable& t) {
  for (const char* key : {"a_over_r", "map"})
    not_yet(t, key,
            "give one point of its flow: capacity = { flow = \"0.16 kg/s\", ratio = 2.0, temperature = \"288.15 K\", "
            "pressure = \"1.01325 bar\" }");
  for (const char* key : {"rotor_exit_angle", "centroid_radius"})
    not_yet(t, key, "it belongs to a housing given by A/R");
}

TurbineCase read_turbine(const CaseTable& t, const Gas& gas, AssumedList& assumed) {
  TurbineCase turbine{};
  turbine.name = t.text("name").value_or("turbine");
  turbine.place = t.place();
  refuse_what_comes_later(t);
  turbine.capacity = read_capacity(t, assumed);
  turbine.scrolls = t.count("scrolls", 1, 2).value_or(1);
  const double pair = assumed.given_or(t.number("rotor_over_throat", between(0.3, 3)), "turbine.rotor_over_throat");
  turbine.areas = areas_from_capacity(turbine.capacity, pair, turbine.scrolls, gas);
  turbine.peak_efficiency = assumed.given_or(t.number("peak_efficiency", above(0, 0.95)), "turbine.peak_efficiency");
  turbine.mechanical_efficiency =
      assumed.given_or(t.number("mechanical_efficiency", above(0, 1)), "turbine.mechanical_efficiency");
  turbine.volute_length =
      assumed.given_or(t.quantity("volute_length", Dimension::length, between(0.02, 1)), "turbine.volute_length");
  const DuctWall wall = read_wall(Layered(t), assumed);
  turbine.roughness = wall.roughness;
  turbine.wall_temperature = wall.temperature;
  const auto leak = t.number("tongue_leak", between(0, 0.5));
  turbine.tongue_leak = turbine.scrolls > 1 ? assumed.given_or(leak, "turbine.tongue_leak") : 0;
  turbine.inertia = read_inertia(t, assumed);
  return turbine;
}

}  // namespace

std::vector<TurbineCase> read_turbines(const CaseTable& root, const Gas& gas, AssumedList& assumed) {
  std::vector<TurbineCase> turbines;
  for (const CaseTable& t : root.tables("turbine")) turbines.push_back(read_turbine(t, gas, assumed));
  if (turbines.empty())
    root.fault_here("no turbine: what does the manifold blow into?",
                    "give a table [turbine]; all its keys may be left out");
  if (turbines.size() > 1)
    root.fault("turbine", "two turbines are not possible yet", "give one [turbine]; a divided one has scrolls = 2");
  return turbines;
}

}  // namespace pulsewright
