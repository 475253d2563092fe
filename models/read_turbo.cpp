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

double assumed_charge_temperature(const CaseTable& root, const AmbientCase& ambient, const ChargeCase& charge,
                                  AssumedList& assumed) {
  const double effectiveness =
      assumed.given_or(root.table("cooler").number("effectiveness", between(0, 1)), "cooler.effectiveness");
  const double ratio = (ambient.pressure + charge.boost_gauge + charge.cooler_drop) / ambient.pressure;
  return charge_temperature(ambient, ratio, charge.compressor_efficiency, effectiveness);
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
  charge.compressor_efficiency =
      assumed.given_or(compressor.number("efficiency", above(0.2, 1)), "compressor.efficiency");
  charge.work_coefficient =
      assumed.given_or(compressor.number("work_coefficient", between(0.3, 1)), "compressor.work_coefficient");
  charge.cooler_drop = assumed.given_or(
      root.table("cooler").quantity("pressure_drop", Dimension::pressure_difference, between(0, 2e5)),
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
