#include "solver/composition.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

// Atoms per mole of gas.
struct Atoms {
  double C, H, O, N;
};

Atoms atoms(const Composition& c) {
  return {c[Species::CO2] + c[Species::CO], 2 * (c[Species::H2O] + c[Species::H2]),
          2 * (c[Species::O2] + c[Species::CO2]) + c[Species::CO] + c[Species::H2O], 2 * c[Species::N2]};
}

// Tolerances of 1e-12: sums of a few terms of order one.
TEST(Composition, BurningKeepsEveryAtom) {
  for (const Fuel& f : known_fuels())
    for (double lambda : {0.6, 0.8, 0.99, 1.0, 1.3, 7.0}) {
      const Atoms burned = atoms(burned_composition(f, lambda)), fresh = atoms(air());
      const double air_moles = lambda * (1 + f.hydrogen_per_carbon / 4 - f.oxygen_per_carbon / 2) / air()[Species::O2];
      const double moles = air_moles * fresh.N / burned.N;  // of products, per mole of fuel
      EXPECT_NEAR(moles * burned.C, 1 + air_moles * fresh.C, 1e-12 * moles);
      EXPECT_NEAR(moles * burned.H, f.hydrogen_per_carbon, 1e-12 * moles);
      EXPECT_NEAR(moles * burned.O, f.oxygen_per_carbon + air_moles * fresh.O, 1e-12 * moles);
    }
}

TEST(Composition, RichGasIsInWaterGasEquilibriumAndHasNoOxygen) {
  for (const Fuel& f : known_fuels())
    for (double lambda : {0.6, 0.75, 0.9, 0.99}) {
      const Composition c = burned_composition(f, lambda);
      EXPECT_NEAR(c[Species::CO] * c[Species::H2O] / (c[Species::CO2] * c[Species::H2]), 3.5, 1e-9);
      EXPECT_EQ(c[Species::O2], 0);
      for (double x : c.mole_fraction) EXPECT_GE(x, 0);
    }
}

TEST(Composition, FractionsSumToOne) {
  for (double lambda : {0.6, 1.0, 3.0}) {
    double sum = 0;
    for (double x : burned_composition(known_fuels()[0], lambda).mole_fraction) sum += x;
    EXPECT_NEAR(sum, 1, 1e-14);
  }
}

// Lean all is set free. Rich, what is missing is what the oxygen that lacks would have burned: between the heats of carbon
// monoxide (283.0 kJ per half mole of O2) and of hydrogen (241.8), handbook values; 0.1 kJ for their rounding.
TEST(HeatSetFree, IsWhatTheOxygenAllows) {
  for (const Fuel& f : known_fuels()) {
    for (const double lambda : {1.0, 1.4}) EXPECT_NEAR(heat_set_free(f, lambda), 1, 1e-12);
    for (const double lambda : {0.7, 0.85, 0.95}) {
      const double demand = 1 + f.hydrogen_per_carbon / 4 - f.oxygen_per_carbon / 2;
      const double mass = 12.011 + 1.008 * f.hydrogen_per_carbon + 15.9994 * f.oxygen_per_carbon;  // kg/kmol
      const double half_moles = 2 * (1 - lambda) * demand;
      const double missing = (1 - heat_set_free(f, lambda)) * f.lower_heating_value * mass * 1e-6;  // kJ/mol
      EXPECT_LT(missing, 283.1 * half_moles) << f.name << lambda;
      EXPECT_GT(missing, 241.7 * half_moles) << f.name << lambda;
    }
  }
}

// Textbook ratios, whole-number formulas: 9.0 and 6.5 (rounded there to two digits).
TEST(Composition, AlcoholsNeedTheAirThatTextbooksSay) {
  EXPECT_NEAR(stoichiometric_air_fuel_ratio(*find_fuel("ethanol")), 9.0, 0.05);
  EXPECT_NEAR(stoichiometric_air_fuel_ratio(*find_fuel("methanol")), 6.5, 0.05);
}

// The fitted data join two ranges at 1000 K. 2e-5: the printed coefficients leave small steps there; differences err by
// 1e-8.
TEST(Nasa9, EnthalpyAndEntropyAreIntegralsOfHeatCapacity) {
  for (std::size_t i = 0; i < species_count; ++i)
    for (double T : {250.0, 600.0, 999.99, 1000.01, 1800.0, 3400.0}) {
      const Species s = static_cast<Species>(i);
      const double step = T < 1000 ? -1e-3 * T : 1e-3 * T;  // away from the join
      const double middle = T + step / 2, cp = molar_heat_capacity(s, middle);
      EXPECT_NEAR((molar_enthalpy(s, T + step) - molar_enthalpy(s, T)) / step / cp, 1, 1e-6);
      EXPECT_NEAR((molar_entropy(s, T + step) - molar_entropy(s, T)) / std::log((T + step) / T) / cp, 1, 1e-6);
    }
}

TEST(Nasa9, RangesMeetAtThousandKelvin) {
  for (std::size_t i = 0; i < species_count; ++i) {
    const Species s = static_cast<Species>(i);
    const double below = std::nextafter(1000.0, 0.0);
    EXPECT_NEAR(molar_heat_capacity(s, below) / molar_heat_capacity(s, 1000), 1, 1e-4);
    EXPECT_NEAR(molar_enthalpy(s, below), molar_enthalpy(s, 1000), 1.0);  // J/mol, of some 20 000
    EXPECT_NEAR(molar_entropy(s, below), molar_entropy(s, 1000), 1e-3);
  }
}

}  // namespace
}  // namespace pulsewright
