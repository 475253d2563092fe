#include "models/nozzle_pair.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "shared/error.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {
namespace {

constexpr double gamma = 1.33;

// 1e-6: the pressure is found to 1e-12, and the flow goes with the root of what it differs by.
TEST(NozzlePair, BothNozzlesPassOneFlow) {
  for (double ratio : {0.9999, 0.95, 0.7, 0.5, 0.3, 0.01, 0.0})
    for (double k : {0.1, 0.7, 1.0, 1.4, 20.0}) {
      const PairFlow pair = pair_flow(ratio, k, gamma);
      EXPECT_NEAR(pair.flow / (k * pair.middle * flow_function(ratio / pair.middle, gamma)), 1, 1e-6)
          << ratio << ' ' << k;
      EXPECT_GE(pair.middle, ratio);
      EXPECT_LE(pair.middle, 1);
    }
}

TEST(NozzlePair, NothingFlowsAgainstEqualPressure) { EXPECT_EQ(pair_flow(1, 1, gamma).flow, 0); }

// 1e-4: a second nozzle of 100 areas costs (1/100)^2 of the head.
TEST(NozzlePair, AWideSecondNozzleCostsNothing) {
  EXPECT_NEAR(pair_flow(0.8, 100, gamma).flow / flow_function(0.8, gamma), 1, 1e-4);
}

// 1e-9: the corrected flow is put back into the pair that was made from it.
TEST(NozzlePair, TheAreasOfACapacityPointPassIt) {
  const Gas gas = perfect_gas(gamma, 287);
  const CapacityPoint point{0.16, 2, 288.15, 101325};
  for (double share : {0.7, 1.0, 1.4})
    for (int scrolls : {1, 2}) {
      const TurbineAreas areas = areas_from_capacity(point, share, scrolls, gas);
      EXPECT_NEAR(areas.rotor / (scrolls * areas.scroll_throat), share, 1e-12);
      const double p0 = 2.3e5, T0 = 1150;  // any state at that ratio passes the corrected flow
      const double flow = scrolls * areas.scroll_throat * p0 / std::sqrt(287 * T0) * pair_flow(0.5, share, gamma).flow;
      EXPECT_NEAR(flow * std::sqrt(T0 / 288.15) / (p0 / 101325), 0.16, 1e-9);
    }
}

TEST(NozzlePair, RefusesAPointThatIsNone) {
  const Gas gas = perfect_gas(gamma, 287);
  EXPECT_THROW(areas_from_capacity({0.16, 1, 288, 1e5}, 1, 1, gas), Error);
  EXPECT_THROW(areas_from_capacity({-1, 2, 288, 1e5}, 1, 1, gas), Error);
  EXPECT_THROW(areas_from_capacity({0.16, std::numeric_limits<double>::quiet_NaN(), 288, 1e5}, 1, 1, gas), Error);
}

}  // namespace
}  // namespace pulsewright
