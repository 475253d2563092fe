#include "models/friction.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

// 0.4 + 0.005 * 60 + 0.09 * 10 + 0.0009 * 100 = 1.69 bar, by hand; 1e-6 Pa is rounding.
TEST(Friction, AddsConstantPeakAndSpeedTerms) { EXPECT_NEAR(friction_mean_pressure({}, 60e5, 10), 1.69e5, 1e-6); }

// Work per cycle p V over 4 pi: 10 bar on 2 litres are 159.15 Nm.
TEST(Torque, IsMeanPressureTimesDisplacementOverTwoTurns) { EXPECT_NEAR(torque(10e5, 2e-3), 159.1549, 1e-4); }

}  // namespace
}  // namespace pulsewright
