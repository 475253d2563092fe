#include "solver/gas.hpp"

#include <gtest/gtest.h>

#include "shared/error.hpp"
#include "tests/solver/every_gas.hpp"

namespace pulsewright {
namespace {

// A central difference of width 2h errs by h^2/6 of the third derivative over the first, here below 1e-8, and by
// rounding of 1e-16 value/(slope h), here below 1e-10 for h = 0.1 K: 1e-7 is ten times their sum.
constexpr double by_difference = 1e-7, h = 0.1;

TEST(Gas, CpLessCvIsR) {
  for_every_state([](const NamedGas& g, double T, double Y) {
    EXPECT_NEAR((cp(g.gas, T, Y) - cv(g.gas, T, Y)) / gas_constant(g.gas, Y), 1, 1e-14) << g.name;  // rounding
  });
}

TEST(Gas, CvIsTheSlopeOfEnergyAndCpOfEnthalpy) {
  for_every_state([](const NamedGas& g, double T, double Y) {
    const double de = internal_energy(g.gas, T + h, Y) - internal_energy(g.gas, T - h, Y);
    const double dh = enthalpy(g.gas, T + h, Y) - enthalpy(g.gas, T - h, Y);
    EXPECT_NEAR(de / (2 * h) / cv(g.gas, T, Y), 1, by_difference) << g.name << " T " << T << " Y " << Y;
    EXPECT_NEAR(dh / (2 * h) / cp(g.gas, T, Y), 1, by_difference) << g.name << " T " << T << " Y " << Y;
  });
}

// p = rho R T along an isentrope, by differences of relative width 1e-4.
TEST(Gas, SoundSpeedSquaredIsTheSlopeOfPressureOverDensityAtConstantEntropy) {
  for_every_state([](const NamedGas& g, double T, double Y) {
    const double R = gas_constant(g.gas, Y), p = 1.2e5, up = 1.0001, down = 0.9999;
    const double rho_up = p * up / (R * isentropic_temperature(g.gas, T, Y, up));
    const double rho_down = p * down / (R * isentropic_temperature(g.gas, T, Y, down));
    const double c = sound_speed(g.gas, T, Y);
    EXPECT_NEAR(p * (up - down) / (rho_up - rho_down) / (c * c), 1, by_difference)
        << g.name << " T " << T << " Y " << Y;
  });
}

TEST(Gas, EnergyIsZeroAtZeroKelvin) {
  for (const NamedGas& g : every_gas())  // 1e-9 of the energy at 300 K: the polynomial's constant is rounded
    for (double Y : {0.0, 0.5, 1.0}) EXPECT_NEAR(internal_energy(g.gas, 0, Y), 0, 1e-9 * 2e5) << g.name;
}

TEST(Gas, TemperatureComesBackFromEnergyAndEnthalpy) {
  for_every_state([](const NamedGas& g, double T, double Y) {  // 1e-8: the stated error of the inverse
    EXPECT_NEAR(temperature_from_energy(g.gas, internal_energy(g.gas, T, Y), Y) / T, 1, 1e-8) << g.name << " " << T;
    EXPECT_NEAR(temperature_from_enthalpy(g.gas, enthalpy(g.gas, T, Y), Y) / T, 1, 1e-8) << g.name << " " << T;
  });
}

TEST(Gas, ThermalStateSaysTheSameAsItsParts) {
  for_every_state([](const NamedGas& g, double T, double Y) {
    const double e = internal_energy(g.gas, T, Y);
    const ThermalState s = thermal_state(g.gas, e, Y, T + 2);  // 1e-8: the stated error from 2 K away
    EXPECT_NEAR(s.T / temperature_from_energy(g.gas, e, Y), 1, 1e-8);
    EXPECT_NEAR(s.heat_ratio / heat_ratio(g.gas, T, Y), 1, 1e-8) << g.name << " T " << T << " Y " << Y;
  });
}

TEST(Gas, BurnedFractionMixesEnergyInAStraightLine) {
  for_every_state([](const NamedGas& g, double T, double Y) {
    const double straight = (1 - Y) * internal_energy(g.gas, T, 0) + Y * internal_energy(g.gas, T, 1);
    EXPECT_NEAR(internal_energy(g.gas, T, Y) / straight, 1, 1e-12) << g.name;  // rounding
  });
}

TEST(Gas, IsentropicChangeKeepsEntropy) {
  for_every_state([](const NamedGas& g, double T, double Y) {  // 1e-11: Newton's last turn leaves 1e-13
    for (double ratio : {0.05, 0.5, 0.99, 1.7, 12.0}) {
      const double there = isentropic_temperature(g.gas, T, Y, ratio);
      EXPECT_NEAR(isentropic_pressure_ratio(g.gas, T, there, Y) / ratio, 1, 1e-11) << g.name;
      EXPECT_NEAR(isentropic_temperature(g.gas, there, Y, 1 / ratio) / T, 1, 1e-11) << g.name;
    }
  });
}

// The pressure ratio by Simpson's rule over cp dT/T: 400 strips of a smooth function err by less than 1e-9.
TEST(Gas, IsentropicPressureRatioIsTheIntegralOfCpOverT) {
  for_every_state([](const NamedGas& g, double T, double Y) {
    const double from = std::log(T), to = std::log(1.6 * T), strip = (to - from) / 400;
    double sum = 0;
    for (int i = 0; i <= 400; ++i)
      sum += (i == 0 || i == 400 ? 1 : i % 2 == 1 ? 4 : 2) * cp(g.gas, std::exp(from + strip * i), Y);
    const double expected = sum * strip / 3 / gas_constant(g.gas, Y);
    // 1e-6: where 200 K or 3500 K lie within, cp has a kink there and Simpson's rule errs by more.
    EXPECT_NEAR(std::log(isentropic_pressure_ratio(g.gas, T, 1.6 * T, Y)) / expected, 1, 1e-6) << g.name << " " << T;
  });
}

TEST(Gas, PerfectGasFollowsItsClosedForms) {
  const Gas g = perfect_gas(1.4, 287);
  EXPECT_DOUBLE_EQ(internal_energy(g, 300, 0), 287 / 0.4 * 300);
  EXPECT_DOUBLE_EQ(sound_speed(g, 300, 0.4), std::sqrt(1.4 * 287 * 300));
  EXPECT_NEAR(isentropic_temperature(g, 300, 0, 2), 300 * std::pow(2, 0.4 / 1.4), 1e-10);
}

// Energies no real gas reaches still give a finite temperature that rises with them: a bad state is found, not hidden.
TEST(Gas, TemperatureRisesWithEnergyFarOutsideTheFit) {
  for (const NamedGas& g : every_gas())
    for (double Y : {0.0, 0.5, 1.0}) {
      double before = -1e300;
      for (double e = -2e6; e < 3e7; e += 1e4) {
        const double T = temperature_from_energy(g.gas, e, Y);
        ASSERT_TRUE(std::isfinite(T) && T > before) << g.name << " e " << e << " Y " << Y;
        before = T;
      }
    }
}

TEST(Gas, RefusesWhatIsNoGas) {
  EXPECT_THROW(perfect_gas(1, 287), Error);
  EXPECT_THROW(perfect_gas(1.4, 0), Error);
  EXPECT_THROW(perfect_gas(std::nan(""), 287), Error);
  EXPECT_THROW(mixture_gas(known_fuels()[0], 0.3), Error);
  EXPECT_THROW(mixture_gas(known_fuels()[0], std::nan("")), Error);
}

}  // namespace
}  // namespace pulsewright
