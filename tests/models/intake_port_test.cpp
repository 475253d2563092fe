#include "models/intake_port.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

const Gas gas = perfect_gas(1.35, 287);

Reservoir inside(double p, double T, double Y = 1) { return make_reservoir(gas, p, T, Y); }

// Choked by hand: p0 A sqrt(g/(R T0)) (2/(g+1))^((g+1)/(2(g-1))). 1e-12: the same form in another order.
TEST(IntakePort, ChokesAtTheClassicalFlow) {
  IntakePort port({2e5, 300});
  const double expected = 2e5 * 1e-4 * std::sqrt(1.35 / (287 * 300)) * std::pow(2 / 2.35, 2.35 / 0.7);
  EXPECT_NEAR(port.flow(inside(2e4, 300), {1e-4, 1}, 1e-3, gas).into_cylinder.mass / (1e-3 * expected), 1, 1e-12);
}

TEST(IntakePort, StandsStillAtEqualPressureAndWithAShutValve) {
  IntakePort port({2e5, 300});
  EXPECT_EQ(port.flow(inside(2e5, 1000), {1e-4, 1}, 1e-3, gas).into_cylinder.mass, 0);
  EXPECT_EQ(port.flow(inside(9e5, 1000), {0, 1}, 1e-3, gas).into_cylinder.mass, 0);
}

// A rigid half litre beside the plenum, 1 Pa apart, with a step far too long: the pressures approach, they do not
// swing.
TEST(IntakePort, NeverSwingsPastEqualPressure) {
  IntakePort port({2e5, 300});
  const double V = 5e-4;
  double p = 2e5 - 1;
  for (int i = 0; i < 20; ++i) {
    const Content in = port.flow(inside(p, 300, 0), {1e-3, V}, 1e-3, gas).into_cylinder;
    const double next = p + 0.35 * in.energy / V;
    EXPECT_GT(next, p);
    EXPECT_LT(next, 2e5);
    p = next;
  }
  EXPECT_NEAR(p, 2e5, 1e-4);
}

// What was pushed back goes in first, with its own enthalpy and burned gas, before any fresh charge. 1e-12: rounding.
TEST(IntakePort, GivesBackFirstWhatWasPushedIntoIt) {
  IntakePort port({2e5, 300});
  const Content back = port.flow(inside(3e5, 1100), {1e-4, 1}, 1e-3, gas).into_cylinder;
  ASSERT_LT(back.mass, 0);
  const Content first = port.flow(inside(1.5e5, 900), {1e-5, 1}, 1e-3, gas).into_cylinder;
  EXPECT_NEAR(first.burned / first.mass, 1, 1e-12);
  EXPECT_NEAR(first.energy / first.mass, enthalpy(gas, 1100, 1), 1e-6);
  const auto rest = port.flow(inside(1.5e5, 900), {1e-3, 1}, 1e-3, gas);
  EXPECT_GT(rest.from_plenum.mass, 0);
  EXPECT_EQ(port.held().mass, 0);
  EXPECT_NEAR(first.burned + rest.into_cylinder.burned, -back.burned, 1e-12 * std::abs(back.burned));
}

// 1e-15 kg and 1e-9 J: rounding of the sums over 2000 crossings of some 1e-5 kg and J.
TEST(IntakePort, LosesNothing) {
  IntakePort port({2e5, 300});
  Content into, from;
  for (int i = 0; i < 2000; ++i) {
    const auto crossed = port.flow(inside(2e5 * (1 + 0.4 * std::sin(0.05 * i)), 700, 0.6), {2e-4, 1}, 1e-5, gas);
    into += crossed.into_cylinder;
    from += crossed.from_plenum;
  }
  const Content defect = from - into - port.held();
  EXPECT_NEAR(defect.mass, 0, 1e-15);
  EXPECT_NEAR(defect.burned, 0, 1e-15);
  EXPECT_NEAR(defect.energy, 0, 1e-9);
}

}  // namespace
}  // namespace pulsewright
