#include "models/wall_heat.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

// 1e-12: powers evaluated two ways.
TEST(WallHeat, FollowsItsPowers) {
  EXPECT_NEAR(woschni(4e6, 1500, 0.086, 20) / woschni(2e6, 1500, 0.086, 20), std::pow(2, 0.8), 1e-12);
  EXPECT_NEAR(woschni(2e6, 3000, 0.086, 20) / woschni(2e6, 1500, 0.086, 20), std::pow(2, -0.53), 1e-12);
  EXPECT_NEAR(hohenberg(2e6, 1500, 2e-4, 10) / hohenberg(2e6, 1500, 1e-4, 10), std::pow(2, -0.06), 1e-12);
}

TEST(WallHeat, CombustionAddsNoGasSpeedBelowTheMotoredPressure) {
  EXPECT_EQ(woschni_speed_burning(5e-4, 0.3, -1e5), 0);
  EXPECT_GT(woschni_speed_burning(5e-4, 0.3, 1e5), 0);
}

TEST(WallHeat, RunsTheOtherWayFromHotWallsToColdGas) {
  const CylinderWalls walls;
  const WallAreas areas{0.006, 0.006, 0.02};
  EXPECT_LT(wall_heat_flow(walls, areas, 300, 330), 0);
  EXPECT_NEAR(wall_heat_flow(walls, areas, 300, 1550), 300 * (0.012 * 1000 + 0.02 * 1130), 1e-9);
}

}  // namespace
}  // namespace pulsewright
