#include "models/valve_lift.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

CamCard exhaust_card(double stated_at) {
  return {CrankAngle::from_degrees(126), CrankAngle::from_degrees(378), stated_at, 0.009, 2};
}
CamCard intake_card() { return {CrankAngle::from_degrees(346), CrankAngle::from_degrees(590), 1e-4, 0.0095, 2}; }

// 1e-12: the solution is closed; rounding only.
TEST(LiftCurve, PassesThroughTheCardAtAnyStatedLift) {
  for (double stated_at : {1e-4, 1e-3, 1.27e-3})
    for (double exponent : {1.6, 2.0, 2.4}) {
      CamCard card = exhaust_card(stated_at);
      card.exponent = exponent;
      const LiftCurve lift(card);
      EXPECT_NEAR(lift(card.opens), stated_at, 1e-12);
      EXPECT_NEAR(lift(card.closes), stated_at, 1e-12);
      EXPECT_NEAR(lift(lift.centre()), 0.009, 1e-12);
      EXPECT_NEAR(lift(lift.opens()), open_lift, 1e-12);
      EXPECT_NEAR(lift(lift.closes()), open_lift, 1e-12);
    }
}

TEST(LiftCurve, IsExactlyShutOutsideItsDuration) {
  const LiftCurve lift(exhaust_card(1e-4));
  EXPECT_EQ(lift(lift.leaves_seat() - CrankAngle{1e-9}), 0);
  EXPECT_EQ(lift(lift.seats() + CrankAngle{1e-9}), 0);
  EXPECT_EQ(lift(CrankAngle::from_degrees(0)), 0);
}

TEST(LiftCurve, RepeatsEveryCycle) {
  const LiftCurve lift(intake_card());
  EXPECT_NEAR(lift(CrankAngle::from_degrees(-150)), lift(CrankAngle::from_degrees(570)), 1e-12);
  EXPECT_GT(lift(CrankAngle::from_degrees(-150)), 1e-3);
}

TEST(LiftCurve, RefusesAnImpossibleCam) {
  CamCard backwards = intake_card(), flat = intake_card(), endless = intake_card();
  backwards.closes = CrankAngle::from_degrees(300);
  flat.lift = 5e-5;
  endless.closes = CrankAngle::from_degrees(346 + 719);
  EXPECT_THROW(LiftCurve{backwards}, Error);
  EXPECT_THROW(LiftCurve{flat}, Error);
  EXPECT_THROW(LiftCurve{endless}, Error);
}

// 1e-9 degrees: rounding. Card at 0.1 mm: 346 to 378 degrees are 32 degrees of overlap.
TEST(Overlap, IsWhatTheCardsSayWhenStatedAtATenthOfAMillimetre) {
  const LiftCurve exhaust(exhaust_card(1e-4)), intake(intake_card());
  const Overlap both = overlap(exhaust, intake);
  EXPECT_NEAR(both.from.degrees(), 346, 1e-9);
  EXPECT_NEAR(both.to.degrees(), 378, 1e-9);
  EXPECT_NEAR(CrankAngle{both.duration()}.degrees(), 32, 1e-9);
}

TEST(Overlap, IsZeroForACamWithout) {
  CamCard late = intake_card();
  late.opens = CrankAngle::from_degrees(385);
  EXPECT_EQ(overlap(LiftCurve(exhaust_card(1e-4)), LiftCurve(late)).duration(), 0);
}

// Hand calculation for two 29 mm valves: curtain pi d L with 0.70, 0.65, 0.60 at L/d 0.05, 0.15, 0.25. 1e-12: rounding.
TEST(FlowArea, IsTheCurtainTimesTheCoefficient) {
  const ValveShape valves{2, 0.029};
  const double curtain = 2 * std::numbers::pi * 0.029 * 0.029;
  EXPECT_NEAR(flow_area(valves, 0.05 * 0.029), 0.70 * 0.05 * curtain, 1e-12);
  EXPECT_NEAR(flow_area(valves, 0.15 * 0.029), 0.65 * 0.15 * curtain, 1e-12);
  EXPECT_NEAR(flow_area(valves, 0.25 * 0.029), 0.60 * 0.25 * curtain, 1e-12);
}

TEST(FlowArea, NeverExceedsTheThroatAndNeverFallsWithLift) {
  const ValveShape valves{2, 0.029};
  double before = 0;
  for (int step = 0; step <= 200; ++step) {
    const double area = flow_area(valves, 1e-4 * step);
    EXPECT_GE(area, before);
    EXPECT_LE(area, throat_area(valves));
    before = area;
  }
  EXPECT_EQ(before, throat_area(valves));
}

}  // namespace
}  // namespace pulsewright
