#include "solver/composition.hpp"

#include <fmt/format.h>

#include <cmath>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

constexpr double carbon_mass = 12.011e-3, hydrogen_mass = 1.008e-3, oxygen_mass = 15.9994e-3;  // kg/mol
constexpr double water_gas_constant = 3.5;

// O2 that one CHxOy needs: 1 + x/4 - y/2, mol per mol.
double oxygen_demand(const Fuel& f) { return 1 + f.hydrogen_per_carbon / 4 - f.oxygen_per_carbon / 2; }

double fuel_molar_mass(const Fuel& f) {
  return carbon_mass + f.hydrogen_per_carbon * hydrogen_mass + f.oxygen_per_carbon * oxygen_mass;
}

template <class Property>
double mole_mean(const Composition& c, Property property) {
  double sum = 0;
  for (std::size_t i = 0; i < species_count; ++i) sum += c.mole_fraction[i] * property(static_cast<Species>(i));
  return sum;
}

void make_fractions(Composition& moles) {
  const double total = mole_mean(moles, [](Species) { return 1.0; });
  for (double& x : moles.mole_fraction) x /= total;
}

// Equation   CO + H2 = D (what oxygen lacks), CO H2O = K CO2 H2: a quadratic for CO, its root between 0 and D
// Source     J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, chapter 4, K = 3.5 (from memory)
// Symbols    moles per mole of fuel: carbon, water_if_lean = all H as H2O, D = shortage
// Valid for  0 <= D < carbon + water_if_lean; K taken as frozen at this value for all temperatures
// Tested by  tests/solver/composition_test.cpp, tests/verification/gas_checks.cpp
double carbon_monoxide(double carbon, double water_if_lean, double shortage) {
  const double K = water_gas_constant;
  const double b = water_if_lean - shortage + K * (carbon + shortage);
  const double product = K * carbon * shortage;
  return 2 * product / (b + std::sqrt(b * b - 4 * (K - 1) * product));
}

}  // namespace

Composition air() {
  Composition c;  // NASA/TP-2002-211556, entry "Air"
  c[Species::N2] = 0.78084;
  c[Species::O2] = 0.209476;
  c[Species::Ar] = 0.009365;
  c[Species::CO2] = 0.000319;
  return c;
}

// Equation   balance of C, H, O, N and Ar between CHxOy + lambda (1 + x/4 - y/2)/x_O2 air and the products
// Source     conservation of atoms; rich: carbon_monoxide above
// Symbols    moles per mole of fuel
// Valid for  lambda 0.6..100, below 2000 K or so (no dissociation)
// Tested by  tests/solver/composition_test.cpp, tests/verification/gas_checks.cpp
Composition burned_composition(const Fuel& fuel, double lambda) {
  if (!(lambda >= 0.6 && lambda <= 100))
    throw Error(ErrorKind::internal, fmt::format("lambda must be between 0.6 and 100, not {}", lambda));
  const Composition fresh = air();
  const double air_moles = lambda * oxygen_demand(fuel) / fresh[Species::O2];
  const double carbon = 1 + air_moles * fresh[Species::CO2];
  const double water = fuel.hydrogen_per_carbon / 2;
  const double shortage = std::max(0.0, 2 * (1 - lambda) * oxygen_demand(fuel));
  const double co = carbon_monoxide(carbon, water, shortage);

  Composition c;
  c[Species::N2] = air_moles * fresh[Species::N2];
  c[Species::O2] = std::max(0.0, (lambda - 1) * oxygen_demand(fuel));
  c[Species::Ar] = air_moles * fresh[Species::Ar];
  c[Species::CO2] = carbon - co;
  c[Species::H2O] = water - (shortage - co);
  c[Species::CO] = co;
  c[Species::H2] = shortage - co;
  make_fractions(c);
  return c;
}

double stoichiometric_air_fuel_ratio(const Fuel& fuel) {
  return oxygen_demand(fuel) / air()[Species::O2] * molar_mass(air()) / fuel_molar_mass(fuel);
}

// Equation   share = 1 - n (x_CO dH_CO + x_H2 dH_H2)/(M_f LHV), dH of burning each to CO2 or H2O at 298.15 K
// Source     first law with the products' own composition: burned_composition above
// Symbols    n moles of products per mole of fuel, from the carbon; x mole fractions; M_f kg/mol; dH J/mol; LHV J/kg
// Valid for  lambda 0.6..100; nothing but CO and H2 is left over (no soot, no unburned fuel)
// Tested by  tests/solver/composition_test.cpp
double heat_set_free(const Fuel& fuel, double lambda) {
  constexpr double datum = 298.15;
  const Composition c = burned_composition(fuel, lambda), fresh = air();
  const double air_moles = lambda * oxygen_demand(fuel) / fresh[Species::O2];
  const double moles = (1 + air_moles * fresh[Species::CO2]) / (c[Species::CO2] + c[Species::CO]);
  const auto heat = [](Species from, Species to) {
    return molar_enthalpy(from, datum) + molar_enthalpy(Species::O2, datum) / 2 - molar_enthalpy(to, datum);
  };
  const double left =
      c[Species::CO] * heat(Species::CO, Species::CO2) + c[Species::H2] * heat(Species::H2, Species::H2O);
  return 1 - moles * left / (fuel_molar_mass(fuel) * fuel.lower_heating_value);
}

double molar_mass(const Composition& c) {
  return mole_mean(c, [](Species s) { return species_data(s).molar_mass; });
}
double gas_constant(const Composition& c) { return molar_gas_constant / molar_mass(c); }
double heat_capacity(const Composition& c, double T) {
  return mole_mean(c, [T](Species s) { return molar_heat_capacity(s, T); }) / molar_mass(c);
}
double enthalpy(const Composition& c, double T) {
  return mole_mean(c, [T](Species s) { return molar_enthalpy(s, T); }) / molar_mass(c);
}
double entropy(const Composition& c, double T) {
  return mole_mean(c, [T](Species s) { return molar_entropy(s, T); }) / molar_mass(c);
}

}  // namespace pulsewright
