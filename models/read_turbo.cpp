#include "models/read_turbo.hpp"

#include <cmath>

#include "models/read_duct.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double air_gamma = 1.4;

// Equation   T2 = T1 (1 + (ratio^((g-1)/g) - 1)/eta), then cooled to T2 - e (T2 - T1)
// Source     standard textbook relations of a compressor of isentropic efficiency eta and a cooler of effectiveness e
// Symbols    T1 ambient K, ratio of pressures over the compressor, g = 1.4 for air
// Valid for  steady boost above 0; without boost the charge comes at ambient temperature
// Tested by  tests/models/engine_case_test.cpp (EngineCase.WarmsTheChargeByCompressorAndCooler)
double charge_temperature(const AmbientCase& ambient, double ratio, double efficiency, double effectiveness) {
  const double rise = ambient.temperature * (std::pow(ratio, (air_gamma - 1) / air_gamma) - 1) / efficiency;
  return ambient.temperature + std::max(0.0, rise) * (1 - effectiveness);
}

double assumed_charge_temperature(const CaseTable& root, const AmbientCase& ambient, ChargeCase& charge,
                                  AssumedList& assumed) {
  const double effectiveness =
      assumed.given_or(root.table("cooler").number("effectiveness", between(0, 1)), "cooler.effectiveness");
  charge.cooler_effectiveness = effectiveness;
  const double ratio = (ambient.pressure + charge.boost_gauge + charge.cooler_drop) / ambient.pressure;
  return charge_temperature(ambient, ratio, charge.compressor_efficiency, effectiveness);
}

/// The map's lines; the exducer is known where they go by the shaft's speed. Nothing after a fault.
std::shared_ptr<const CompressorMap> read_compressor_map(const CaseTable& t) {
  const MapFault fault = [&](std::string message, std::string hint) {
    t.fault("map", std::move(message), std::move(hint));
  };
  for (const char* key : {"efficiency", "work_coefficient"})
    if (t.has(key)) t.fault(key, "the map already says it", "take one of them out");
  const auto exducer = t.quantity("exducer", Dimension::length, between(0.01, 0.3));
  const auto text = t.parsed("map", [&](std::string_view name) { return t.read_beside(name, most_map_bytes); });
  const std::string name = printable(t.text("map").value_or("map"));
  const auto file = text ? parse_map_file(*text, name, compressor_map_columns, fault) : std::nullopt;
  const auto table = file ? compressor_map_table(*file, fault) : std::nullopt;
  if (!table) return nullptr;
  if (!table->tip_speeds && !exducer)
    fault("the map goes by the shaft's speed, and the compressor's exducer is missing",
          "exducer = \"60 mm\" under [compressor], or a map by the tip's speed");
  return std::make_shared<const CompressorMap>(*table, exducer.value_or(0.06));
}

void read_compressor(const CaseTable& t, const AmbientCase& ambient, ChargeCase& charge, AssumedList& assumed) {
  charge.inlet = {ambient.temperature, ambient.pressure};
  if (t.has("map")) {
    charge.map = read_compressor_map(t);
    charge.compressor_efficiency = charge.map ? charge.map->best_efficiency() : 0.7;  // until the flow is known
    return;
  }
  charge.compressor_efficiency = assumed.given_or(t.number("efficiency", above(0.2, 1)), "compressor.efficiency");
  charge.work_coefficient =
      assumed.given_or(t.number("work_coefficient", between(0.3, 1)), "compressor.work_coefficient");
}

}  // namespace

AmbientCase read_ambient(const CaseTable& root, AssumedList& assumed) {
  const CaseTable t = root.table("ambient");
  if (t.has("altitude") && (t.has("pressure") || t.has("temperature")))
    t.fault("altitude", "altitude sets pressure and temperature, and one of these is given too",
            "give altitude alone, or pressure and temperature");
  assumed.facts().altitude = t.quantity("altitude", Dimension::length, between(-430, 6000)).value_or(0);
  const auto pressure = t.quantity("pressure", Dimension::pressure_absolute, between(0.3e5, 1.2e5));
  const auto temperature = t.quantity("temperature", Dimension::temperature, between(220, 335));
  return {assumed.given_or(pressure, "ambient.pressure"), assumed.given_or(temperature, "ambient.temperature")};
}

ChargeCase read_charge(const CaseTable& root, const AmbientCase& ambient, AssumedList& assumed) {
  const CaseTable t = root.table("charge"), compressor = root.table("compressor");
  ChargeCase charge{};
  charge.boost_gauge = t.need_quantity("boost_gauge", Dimension::pressure_gauge, between(-0.8e5, 10e5));
  read_compressor(compressor, ambient, charge, assumed);
  charge.cooler_drop =
      assumed.given_or(root.table("cooler").quantity("pressure_drop", Dimension::pressure_difference, between(0, 2e5)),
                       "cooler.pressure_drop");
  const auto temperature = t.quantity("temperature", Dimension::temperature, between(220, 500));
  charge.temperature = temperature ? *temperature : assumed_charge_temperature(root, ambient, charge, assumed);
  return charge;
}

SilencerCase read_silencer(const CaseTable& root, AssumedList& assumed) {
  const Range range = between(0, 2e5);
  if (root.kind("silencer") == CaseKind::text && root.text("silencer") == "none") return {false, 0};
  if (root.kind("silencer") == CaseKind::text)
    return {true, root.quantity("silencer", Dimension::pressure_difference, range).value_or(0)};
  const auto drop = root.table("silencer").quantity("pressure_drop", Dimension::pressure_difference, range);
  return {true, assumed.given_or(drop, "silencer")};
}

}  // namespace pulsewright
