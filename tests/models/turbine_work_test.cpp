#include "models/turbine_work.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

TEST(TurbineWork, EfficiencyPeaksAtTheBestVelocityRatioAndFallsToNothing) {
  EXPECT_DOUBLE_EQ(turbine_efficiency(0.68, 300 * best_velocity_ratio, 300), 0.68);
  EXPECT_EQ(turbine_efficiency(0.68, 0, 300), 0);
  EXPECT_EQ(turbine_efficiency(0.68, 500, 300), 0);  // beyond twice the best: never negative
  EXPECT_EQ(turbine_efficiency(0.68, 500, 0), 0);
}

TEST(TurbineWork, NothingIsToBeHadWithoutAPressureDrop) {
  const Gas gas = perfect_gas(1.33, 287);
  EXPECT_EQ(isentropic_drop(gas, {1e5, 1000, 1}, 1e5), 0);
  EXPECT_EQ(isentropic_drop(gas, {1e5, 1000, 1}, 2e5), 0);
  EXPECT_EQ(spouting_velocity(-1), 0);
}

TEST(TurbineWork, OneScrollAloneLosesFifteenHundredths) {
  EXPECT_DOUBLE_EQ(partial_admission(0.1, 0), 0.85);
  EXPECT_DOUBLE_EQ(partial_admission(0.1, -0.02), 0.85);
  EXPECT_DOUBLE_EQ(partial_admission(0.1, 0.1), 1);
  EXPECT_DOUBLE_EQ(partial_admission(0, 0), 1);
}

TEST(TurbineWork, TipSpeedFollowsTheCompressor) {
  EXPECT_DOUBLE_EQ(turbine_tip_speed(70000, 0.7, 1), std::sqrt(1e5));
  EXPECT_DOUBLE_EQ(turbine_tip_speed(70000, 0.7, 2), std::sqrt(1e5) / 2);
  EXPECT_EQ(turbine_tip_speed(0, 0.7, 1.05), 0);
  EXPECT_EQ(turbine_tip_speed(-5, 0.7, 1.05), 0);
}

}  // namespace
}  // namespace pulsewright
