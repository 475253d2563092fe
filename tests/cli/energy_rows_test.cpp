// The energy account of a comparison: shares that add up, and a reason for the torque that adds up too.

#include "cli/energy_rows.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

/// 1000 J of fuel: 300 at the crank, the rest told apart.
SpeedResult sample(double torque, double pumping = -20) {
  SpeedResult s{};
  s.rpm = 5000, s.torque = torque;
  EnergyAccount& e = s.energy;
  e.fuel = 1000, e.gross_work = 360, e.pumping_work = pumping, e.friction_work = 40;
  e.cylinder_wall_heat = 150, e.duct_wall_heat = 50, e.turbine_work = 60, e.unburned = 20;
  e.exhaust_heat = 1000 - (360 + pumping) - 150 - 50 - 60 - 20;
  return s;
}

std::vector<Layout> pair_of(const SpeedResult& a, const SpeedResult& b) {
  std::vector<Layout> pair(2);
  pair[0].letter = "A", pair[1].letter = "B";
  pair[0].result.speeds = {a}, pair[1].result.speeds = {b};
  return pair;
}

TEST(EnergyRows, AllButTheLastAddUpToTheFuelsHeat) {
  double sum = 0;
  const SpeedResult s = sample(300);
  for (const FigureRow& row : energy_rows())
    if (&row != &energy_rows().back()) sum += row.value(s, 1e5).value();
  EXPECT_NEAR(sum, 100, 1e-9);  // rounding of eight numbers
}

TEST(EnergyRows, AreNoneWithoutFuel) {
  for (const FigureRow& row : energy_rows()) EXPECT_FALSE(row.value(SpeedResult{}, 1e5)) << row.label;
}

TEST(Why, TellsTheWorkLostInChangingTheGasAndWhereItGoes) {
  const auto lines = why_sentences(pair_of(sample(300), sample(280, -40)));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_EQ(lines[0],
            "B makes 6.7 % less torque at 5000 rpm: it burns as much fuel and turns 28.0 instead of 30.0 % of its heat "
            "into work (points: changing the gas -2.0); of the rest: exhaust gas +2.0");
}

TEST(Why, SaysNothingWhereTorqueIsAlike) { EXPECT_TRUE(why_sentences(pair_of(sample(300), sample(299))).empty()); }

}  // namespace
}  // namespace pulsewright
