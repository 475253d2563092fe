#include <gtest/gtest.h>

#include <cmath>

#include "solver/composition.hpp"
#include "solver/gas.hpp"

namespace pulsewright {
namespace {

Composition mixed(const Composition& fresh, const Composition& burned, double Y) {
  const double n_fresh = (1 - Y) / molar_mass(fresh), n_burned = Y / molar_mass(burned);
  Composition c;
  for (std::size_t i = 0; i < species_count; ++i)
    c.mole_fraction[i] = (n_fresh * fresh.mole_fraction[i] + n_burned * burned.mole_fraction[i]) / (n_fresh + n_burned);
  return c;
}

// Pure gases 0.4 %: what six terms leave of the CEA data, whose own spread is several times that. Half and half 0.6 %:
// a straight line in Y stands for Wilke's rule there (worst: methanol's wet products).
TEST(Transport, FitsFollowTheDataForEveryBurnedFraction) {
  for (const Fuel& fuel : known_fuels())
    for (double lambda : {0.85, 1.0, 1.5}) {
      const Gas gas = mixture_gas(fuel, lambda);
      const Composition burned = burned_composition(fuel, lambda);
      for (double Y : {0.0, 0.5, 1.0})
        for (double T = 250; T <= 3000; T += 50) {
          const Composition c = mixed(air(), burned, Y);
          const double bound = Y == 0.5 ? 6e-3 : 4e-3;
          EXPECT_NEAR(viscosity(gas, T, Y) / viscosity(c, T), 1, bound) << fuel.name << " T " << T << " Y " << Y;
          EXPECT_NEAR(conductivity(gas, T, Y) / conductivity(c, T), 1, bound) << fuel.name << " T " << T << " Y " << Y;
        }
    }
}

TEST(Transport, StaysPositiveAndFiniteFarOutside) {
  for (const Gas& gas : {perfect_gas(1.4, 287), mixture_gas(known_fuels()[0], 0.85)})
    for (double T : {-50.0, 1.0, 100.0, 4000.0, 1e5}) {
      EXPECT_GT(viscosity(gas, T, 0.5), 1e-6);
      EXPECT_LT(viscosity(gas, T, 0.5), 2e-4);
      EXPECT_GT(conductivity(gas, T, 0.5), 1e-3);
      EXPECT_LT(conductivity(gas, T, 0.5), 1);
    }
}

TEST(Transport, PerfectGasHasThoseOfAir) {
  const Gas perfect = perfect_gas(1.33, 290), mixture = mixture_gas(known_fuels()[0], 0.85);
  EXPECT_DOUBLE_EQ(viscosity(perfect, 700, 0.9), viscosity(mixture, 700, 0));
}

}  // namespace
}  // namespace pulsewright
