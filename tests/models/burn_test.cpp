#include "models/burn.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

BurnTiming timing() { return {CrankAngle::from_degrees(20), CrankAngle::from_degrees(25)}; }

// 1e-12: closed inverse, rounding only.
TEST(BurnCurve, HasItsHalfAtTheCentreAndItsDurationBetween10And90Percent) {
  for (double m : {1.0, 2.0, 3.0})
    for (double a : {5.0, 6.908}) {
      BurnTiming t = timing();
      t.wiebe_a = a;
      t.wiebe_m = m;
      const BurnCurve burn(t);
      EXPECT_NEAR(burn.fraction(t.centre), 0.5, 1e-12);
      double low = burn.start().radians, high = t.centre.radians;
      for (int i = 0; i < 60; ++i) (burn.fraction({(low + high) / 2}) < 0.1 ? low : high) = (low + high) / 2;
      EXPECT_NEAR(burn.fraction(CrankAngle{low} + t.duration), 0.9, 1e-12);
    }
}

TEST(BurnCurve, BurnsEverythingAndNothingBefore) {
  const BurnCurve burn(timing());
  EXPECT_EQ(burn.fraction(burn.end()), 1);
  EXPECT_EQ(burn.fraction(CrankAngle::from_degrees(180)), 1);
  EXPECT_EQ(burn.fraction(burn.start()), 0);
}

TEST(BurnCurve, RefusesADurationOfNothing) {
  BurnTiming t = timing();
  t.duration = {0};
  EXPECT_THROW(BurnCurve{t}, Error);
}

// 1e-6: central difference of width 1e-4.
TEST(Wiebe, SlopeIsTheDerivative) {
  for (double y : {0.1, 0.4, 0.9})
    EXPECT_NEAR(wiebe_slope(6.908, 2, y) / ((wiebe(6.908, 2, y + 1e-4) - wiebe(6.908, 2, y - 1e-4)) / 2e-4), 1, 1e-6);
}

}  // namespace
}  // namespace pulsewright
