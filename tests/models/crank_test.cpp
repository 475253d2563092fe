#include "models/crank.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

const SliderCrank crank({0.086, 0.086, 0.1455, 10});

// 1e-12: rounding of sums of a few millimetres.
TEST(SliderCrank, TravelsTheStrokeAndKeepsTheCompressionRatio) {
  EXPECT_NEAR(crank.piston_travel(CrankAngle::from_degrees(180)), 0.086, 1e-12);
  EXPECT_NEAR(crank.volume(CrankAngle::from_degrees(180)) / crank.volume({0}), 10, 1e-12);
}

// 1e-8: central difference of width 1e-4 rad errs by its square times V'''/V'.
TEST(SliderCrank, SlopeIsTheDerivativeOfTheVolume) {
  for (double degrees : {-150.0, -20.0, 5.0, 77.0, 160.0, 300.0}) {
    const CrankAngle t = CrankAngle::from_degrees(degrees), h{1e-4};
    const double difference = (crank.volume(t + h) - crank.volume(t - h)) / 2e-4;
    EXPECT_NEAR(crank.volume_slope(t) / difference, 1, 1e-8) << degrees;
  }
}

TEST(SliderCrank, LinerIsBareByTheTravel) {
  const CrankAngle t = CrankAngle::from_degrees(65);
  EXPECT_NEAR(crank.liner_area(crank.volume(t)), std::numbers::pi * 0.086 * crank.piston_travel(t), 1e-12);
}

// The gas is a disc of the bore's width: its surface at any angle follows from its volume alone. 1e-12: rounding.
TEST(SliderCrank, WallsAreTheSurfaceOfTheDiscThatHoldsTheGas) {
  for (const double degrees : {0.0, 20.0, 90.0, 180.0}) {
    const double V = crank.volume(CrankAngle::from_degrees(degrees));
    EXPECT_NEAR(crank.bore_area() + crank.head_area() + crank.liner_area(V), 2 * crank.bore_area() + 4 * V / 0.086,
                1e-12);
  }
}

TEST(SliderCrank, RefusesACrankThatCannotTurn) {
  EXPECT_THROW(SliderCrank({0.086, 0.086, 0.04, 10}), Error);
  EXPECT_THROW(SliderCrank({0.086, 0.086, 0.145, 1}), Error);
  EXPECT_THROW(SliderCrank({0, 0.086, 0.145, 9}), Error);
  EXPECT_THROW(SliderCrank({0.086, NAN, 0.145, 9}), Error);
}

TEST(CrankAngle, WrapsIntoTheCycleThatStartsWhereAsked) {
  const CrankAngle bottom = CrankAngle::from_degrees(-180);
  EXPECT_NEAR(wrapped(CrankAngle::from_degrees(590), bottom).degrees(), -130, 1e-9);
  EXPECT_NEAR(wrapped(CrankAngle::from_degrees(-190), bottom).degrees(), 530, 1e-9);
  EXPECT_NEAR(wrapped(CrankAngle::from_degrees(126), bottom).degrees(), 126, 1e-9);
}

}  // namespace
}  // namespace pulsewright
