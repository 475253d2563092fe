#include "models/closed_period.hpp"

#include <gtest/gtest.h>

#include <array>

#include "models/burn.hpp"
#include "tests/models/engine_fixture.hpp"

namespace pulsewright {
namespace {

using test::deg;

const SliderCrank crank({0.086, 0.086, 0.145, 9});
const Gas gas = perfect_gas(1.35, 287);

BurnProgress burn_at(double centre) {
  const BurnCurve curve({deg(centre), deg(25)});
  return {curve.start(), curve.end(), [curve](CrankAngle a) { return curve.fraction(a); }};
}

Content filled(double p, double T, double Y, CrankAngle at, const Gas& g = gas) {
  const double mass = p * crank.volume(at) / (gas_constant(g, Y) * T);
  return {mass, mass * internal_energy(g, T, Y), mass * Y};
}

double pressure(const ClosedPeriod& period, CrankAngle at) {
  const Content c = period.content(period.at(at));
  return 0.35 * c.energy / crank.volume(at);
}

// Isentropic p V^gamma, closed form. 1e-6: cubic look-up between steps of 0.05 rad or less (the integration itself is
// 1e-9).
TEST(ClosedPeriod, CompressesIsentropicallyWithoutHeatAndFuel) {
  const CylinderWalls walls{.law = WallHeatLaw::none};
  const BurnProgress burn = burn_at(15);
  const ClosedPeriod period({gas, crank, walls, burn, 400}, {filled(2e5, 330, 0, deg(-130))}, deg(-130), deg(120));
  for (double at : {-90.0, -31.0, 0.0, 14.0, 77.0, 120.0}) {
    const double expected = 2e5 * std::pow(crank.volume(deg(-130)) / crank.volume(deg(at)), 1.35);
    EXPECT_NEAR(pressure(period, deg(at)) / expected, 1, 1e-6) << at;
  }
  EXPECT_NEAR(period.max_pressure_angle().degrees(), 0, 0.05);
  EXPECT_NEAR(period.max_pressure() / (2e5 * std::pow(crank.volume(deg(-130)) / crank.clearance(), 1.35)), 1, 1e-6);
}

// The same period in pressure form, dp = ((g-1)(dheat - dQ) - g p dV)/V, by fixed-step Runge-Kutta 4 at 0.02 degrees; a
// Hohenberg wall. 1e-6: both errors are below 1e-7 of the pressure, which the look-up adds to.
TEST(ClosedPeriod, AgreesWithThePressureFormOfTheFirstLaw) {
  CylinderWalls walls;
  walls.law = WallHeatLaw::hohenberg;
  const BurnProgress burn = burn_at(15);
  const double speed = 400, piston_speed = crank.mean_piston_speed(speed);
  const Charge charge = make_charge({12.4, 43.5e6, 0.82}, filled(2e5, 350, 0.05, deg(-130)), gas);
  const ClosedPeriod period({gas, crank, walls, burn, speed}, charge, deg(-130), deg(120));

  const auto slope = [&](double a, double p) {
    const double V = crank.volume({a}), T = p * V / (charge.content.mass * 287);
    const double rate = (burn.fraction({a + 1e-5}) - burn.fraction({a - 1e-5})) / 2e-5;
    const double q = wall_heat_flow(walls, {crank.bore_area(), crank.head_area(), crank.liner_area(V)},
                                    hohenberg(p, T, V, piston_speed), T) /
                     speed;
    return (0.35 * (charge.heat() * rate - q) - 1.35 * p * crank.volume_slope({a})) / V;
  };
  double p = pressure(period, deg(-130)), a = deg(-130).radians;
  const double h = deg(0.02).radians;
  for (int i = 1; i <= 12500; ++i, a += h) {
    if (i % 1250 == 0) {
      EXPECT_NEAR(p / pressure(period, {a}), 1, 1e-6) << CrankAngle{a}.degrees();
    }
    const double k1 = slope(a, p), k2 = slope(a + h / 2, p + h / 2 * k1), k3 = slope(a + h / 2, p + h / 2 * k2);
    p += h / 6 * (k1 + 2 * k2 + 2 * k3 + slope(a + h, p + h * k3));
  }
}

TEST(ClosedPeriod, BurnsAllThatIsFreshAndOnlyThat) {
  const CylinderWalls walls;
  const BurnProgress burn = burn_at(15);
  const Charge charge = make_charge({12.4, 43.5e6, 0.82}, filled(2e5, 350, 0.08, deg(-130)), gas);
  const ClosedPeriod period({gas, crank, walls, burn, 400}, charge, deg(-130), deg(120));
  const Content before = period.content(period.at(deg(-60))), end = period.content(period.at(deg(120)));
  EXPECT_EQ(before.burned, charge.content.burned);
  EXPECT_NEAR(end.burned / end.mass, 1, 1e-12);
  EXPECT_EQ(end.mass, charge.content.mass);
}

TEST(MakeCharge, HoldsTheLambdaOfTheTrappedAir) {
  const Content content = filled(2e5, 350, 0.08, deg(-130));
  const double fresh = content.mass - content.burned;
  const Charge direct = make_charge({12.4, 43.5e6, 0.82}, content, gas);
  EXPECT_NEAR(fresh / direct.fuel, 12.4, 1e-12);
  EXPECT_NEAR(direct.content.mass, content.mass + direct.fuel, 1e-15);
  const Charge port = make_charge({12.4, 43.5e6, 0.82, true}, content, gas);
  EXPECT_NEAR((fresh - port.fuel) / port.fuel, 12.4, 1e-12);
  EXPECT_EQ(port.content.mass, content.mass);
  EXPECT_NEAR(port.fuel_heat / port.fuel, 0.82 * 43.5e6, 1e-3);
}

// Everything at 298.15 K before and after: what the burn gives off at constant pressure is the heating value, whatever
// the two gases' sensible enthalpies. 1e-12: the same sums in another order.
TEST(MakeCharge, GivesTheHeatingValueBetween298And298Kelvin) {
  const Gas petrol = mixture_gas(*find_fuel("petrol"), 0.85);
  const Content content = filled(2e5, 298.15, 0.08, deg(-130), petrol);
  const double h_fresh = enthalpy(petrol, 298.15, 0), h_burned = enthalpy(petrol, 298.15, 1);
  for (bool port : {false, true}) {
    const Charge charge = make_charge({12.4, 43.5e6, 0.82, port}, content, petrol);
    const double before = (content.mass - content.burned) * h_fresh + content.burned * h_burned +
                          (charge.content.energy - content.energy);
    const double after = charge.content.mass * h_burned;
    EXPECT_NEAR((before + charge.heat() - after) / charge.fuel_heat, 1, 1e-12);
    EXPECT_NEAR(charge.fuel_heat, charge.fuel * 0.82 * 43.5e6, 1e-9);
  }
}

// Real gas, nothing burns, adiabatic: the entropy of air and burned gas at one composition stays. 1e-4: the fits of c_v
// and of its integral are made apart.
TEST(ClosedPeriod, CompressesRealGasIsentropically) {
  const Gas petrol = mixture_gas(*find_fuel("petrol"), 0.85);
  const CylinderWalls walls{.law = WallHeatLaw::none};
  const BurnProgress burn = burn_at(15);
  const Content content = filled(2e5, 330, 0.05, deg(-130), petrol);
  const ClosedPeriod period({petrol, crank, walls, burn, 400}, {content}, deg(-130), deg(120));
  const Content top = period.content(period.at({0}));
  const double T = temperature_from_energy(petrol, top.energy / top.mass, 0.05);
  const double ratio = T / 330 * crank.volume(deg(-130)) / crank.clearance();
  EXPECT_NEAR(T / isentropic_temperature(petrol, 330, 0.05, ratio), 1, 1e-4);
}

}  // namespace
}  // namespace pulsewright
