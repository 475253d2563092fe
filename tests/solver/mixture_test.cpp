#include "solver/mixture.hpp"

#include <gtest/gtest.h>

#include "solver/composition.hpp"
#include "solver/gas.hpp"

namespace pulsewright {
namespace {

// Calls claim(gas, composition, Y) for fresh and burned gas of every fuel, rich to lean.
template <class Claim>
void for_pure_gases(Claim claim) {
  for (const Fuel& fuel : known_fuels())
    for (double lambda : {0.6, 0.7, 0.85, 1.0, 1.3, 2.0, 10.0}) {
      const Gas gas = mixture_gas(fuel, lambda);
      claim(gas, air(), 0.0);
      claim(gas, burned_composition(fuel, lambda), 1.0);
    }
}

// The bounds stated for the fits: cp 0.2 %, sound speed 0.1 % over 250 to 3000 K, against the NASA data themselves.
TEST(Mixture, HeatCapacityAndSoundSpeedStayWithinTheStatedErrorOfTheData) {
  for_pure_gases([](const Gas& gas, const Composition& c, double Y) {
    const double R = gas_constant(c);
    EXPECT_NEAR(gas_constant(gas, Y) / R, 1, 1e-13);  // rounding
    for (double T = 250; T <= 3000; T += 10) {
      const double exact = heat_capacity(c, T);
      ASSERT_NEAR(cp(gas, T, Y) / exact, 1, 2e-3) << "T " << T << " Y " << Y;
      ASSERT_NEAR(sound_speed(gas, T, Y) / std::sqrt(exact / (exact - R) * R * T), 1, 1e-3) << "T " << T;
    }
  });
}

// An enthalpy rise integrates cp, so it errs less than cp does: 0.1 %.
TEST(Mixture, EnthalpyRiseFollowsTheData) {
  for_pure_gases([](const Gas& gas, const Composition& c, double Y) {
    for (double T = 400; T <= 3000; T += 100) {
      const double rise = enthalpy(gas, T, Y) - enthalpy(gas, 298.15, Y);
      ASSERT_NEAR(rise / (enthalpy(c, T) - enthalpy(c, 298.15)), 1, 1e-3) << "T " << T << " Y " << Y;
    }
  });
}

// The stated error of the one correction from the fitted guess: 1e-8 over 100..5000 K.
TEST(Mixture, TemperatureFromEnergyIsRightEverywhere) {
  for (const Fuel& fuel : known_fuels())
    for (double lambda : {0.6, 0.85, 1.0, 3.0, 100.0}) {
      const Gas gas = mixture_gas(fuel, lambda);
      for (double T = 100; T <= 5000; T += 7.3)
        for (double Y = 0; Y <= 1; Y += 0.0625)
          ASSERT_NEAR(temperature_from_energy(gas, internal_energy(gas, T, Y), Y) / T, 1, 1e-8)
              << fuel.name << " lambda " << lambda << " T " << T << " Y " << Y;
    }
}

// The stated errors of the correction from a temperature nearby.
TEST(Mixture, TemperatureFromOneNearbyIsAsGoodAsStated) {
  const Gas gas = mixture_gas(known_fuels()[0], 0.85);
  for (double T = 250; T <= 3000; T += 50)
    for (double Y : {0.0, 0.5, 1.0})
      for (const auto& [away, error] : {std::pair{10.0, 2e-8}, {100.0, 1.1e-4}, {500.0, 0.03}})
        for (double side : {-1.0, 1.0})
          ASSERT_NEAR(thermal_state(gas, internal_energy(gas, T, Y), Y, T + side * away).T / T, 1, error)
              << T << " from " << away << " K away";
}

// A difference quotient at constant pressure and density; 1e-6: its own error.
TEST(Mixture, EnergyByBurnedFractionIsTheSlopeAtConstantPressure) {
  const Gas gas = mixture_gas(known_fuels()[0], 0.85);
  for (double T : {300.0, 700.0, 1300.0, 2200.0})
    for (double Y : {0.1, 0.5, 0.9}) {
      const auto e_at = [&](double y) {
        return internal_energy(gas, T * gas_constant(gas, Y) / gas_constant(gas, y), y);
      };
      const double slope = (e_at(Y + 1e-4) - e_at(Y - 1e-4)) / 2e-4;
      EXPECT_NEAR(energy_by_burned(gas.mixture, T, cv(gas, T, Y) / gas_constant(gas, Y)), slope, 1e-6 * e_at(Y))
          << T << " " << Y;
    }
}

TEST(Mixture, HeatCapacityIsConstantOutsideTheFit) {
  const Gas gas = mixture_gas(known_fuels()[0], 0.85);
  for (double Y : {0.0, 0.6, 1.0}) {
    EXPECT_EQ(cv(gas, 60, Y), cv(gas, mixture_fit::T_low, Y));
    EXPECT_EQ(cv(gas, 5000, Y), cv(gas, mixture_fit::T_high, Y));
  }
}

}  // namespace
}  // namespace pulsewright
