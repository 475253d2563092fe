#include "models/valve_lift.hpp"

#include <gtest/gtest.h>

#include <numbers>

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

// Cards of one cam, stated at 0.1 mm, 1 mm and 0.050 in, are one curve: all its events and its whole lift. 1e-9: rounding.
TEST(LiftCurve, IsTheSameFromEveryCardOfOneCam) {
  const LiftCurve cam(exhaust_card(1e-4));
  for (const double stated_at : {1e-3, 1.27e-3}) {
    CamCard other = exhaust_card(stated_at);
    double shut = cam.leaves_seat().radians, open = cam.centre().radians;
    for (int i = 0; i < 100; ++i) (cam({(shut + open) / 2}) > stated_at ? open : shut) = (shut + open) / 2;
    other.opens = {open};
    other.closes = {2 * cam.centre().radians - open};
    const LiftCurve same(other);
    EXPECT_NEAR(same.opens().degrees(), cam.opens().degrees(), 1e-9);
    EXPECT_NEAR(same.closes().degrees(), cam.closes().degrees(), 1e-9);
    EXPECT_NEAR(same.leaves_seat().degrees(), cam.leaves_seat().degrees(), 1e-9);
    for (double deg = 100; deg < 400; deg += 7)
      EXPECT_NEAR(same(CrankAngle::from_degrees(deg)), cam(CrankAngle::from_degrees(deg)), 1e-12);
  }
}

// Events at 0.1 mm lie outside those of the same card read at 1 mm: the later the stated lift, the longer the cam.
TEST(LiftCurve, OpensEarlierTheHigherTheStatedLift) {
  EXPECT_LT(LiftCurve(exhaust_card(1e-3)).opens().degrees(), 126);
  EXPECT_LT(LiftCurve(exhaust_card(1.27e-3)).opens(), LiftCurve(exhaust_card(1e-3)).opens());
}

std::vector<LiftPoint> measured(const LiftCurve& curve, double step_deg) {
  std::vector<LiftPoint> table;
  for (double deg = 90; deg <= 420; deg += step_deg)
    table.push_back({CrankAngle::from_degrees(deg), curve(CrankAngle::from_degrees(deg))});
  return table;
}

CamCard card_of(std::vector<LiftPoint> table) {
  CamCard card;
  card.table = std::move(table);
  return card;
}

TEST(LiftTable, CurvePassesEveryPointAndMakesNoPeakOfItsOwn) {
  const auto table = measured(LiftCurve(exhaust_card(1e-4)), 10);
  const LiftCurve curve(card_of(table));
  for (std::size_t i = 0; i < table.size(); ++i) {
    EXPECT_NEAR(curve(table[i].angle), table[i].lift, 1e-12);
    for (int part = 1; i > 0 && part < 10; ++part) {
      const double share = part / 10.0, a = table[i - 1].lift, b = table[i].lift;
      const double lift = curve({table[i - 1].angle.radians * (1 - share) + table[i].angle.radians * share});
      EXPECT_GE(lift, std::min(a, b) - 1e-12);
      EXPECT_LE(lift, std::max(a, b) + 1e-12);
    }
  }
}

// Measured every 2 degrees the table gives the cam back: a cubic errs by 5 um there at most, its events by 0.1 degrees.
TEST(LiftTable, GivesBackTheCamThatWasMeasured) {
  const LiftCurve cam(exhaust_card(1e-4)), curve(card_of(measured(cam, 2)));
  for (double deg = 95; deg < 415; deg += 1.3)
    EXPECT_NEAR(curve(CrankAngle::from_degrees(deg)), cam(CrankAngle::from_degrees(deg)), 5e-6) << deg;
  EXPECT_NEAR(curve.opens().degrees(), 126, 0.1);
  EXPECT_NEAR(curve.closes().degrees(), 378, 0.1);
  EXPECT_NEAR(curve.centre().degrees(), 252, 1e-9);
  EXPECT_EQ(curve(CrankAngle::from_degrees(80)), 0);
  EXPECT_NEAR(curve(CrankAngle::from_degrees(200 - 720)), curve(CrankAngle::from_degrees(200)), 1e-12);
}

TEST(LiftTable, IsReadFromAFile) {
  const auto table =
      parse_lift_table("# turned by hand\ncrank_deg,lift_mm\n-220,0\n-150,4\n-100,9\n-50,4\n20,0.05\n", "cam.csv");
  ASSERT_EQ(table.size(), 5U);
  EXPECT_NEAR(table[2].angle.degrees(), -100, 1e-12);
  EXPECT_NEAR(table[2].lift, 0.009, 1e-15);
}

TEST(LiftTable, RefusesWhatIsNoLift) {
  const std::string head = "crank_deg,lift_mm\n";
  for (const char* rows :
       {"", "0,0\n1,1\n2,0\n", "0,0\n10,1\n5,2\n20,1\n30,0\n", "0,0\n10,-1\n15,2\n20,1\n30,0\n",
        "0,3\n10,4\n15,5\n20,4\n30,0\n", "0,0\n10,4\n15,5\n20,4\n730,0\n", "0,0\n10,x\n15,5\n20,4\n30,0\n",
        "0,0\n10\n15,5\n20,4\n30,0\n", "0,0\n10,0\n15,0\n20,0\n30,0\n", "0,0\n10,60\n15,5\n20,4\n30,0\n"})
    EXPECT_THROW(parse_lift_table(head + rows, "cam.csv"), Error) << rows;
  EXPECT_THROW(parse_lift_table("deg,mm\n0,0\n", "cam.csv"), Error);
}

// Linear between two benched lifts, constant outside. 1e-12: rounding.
TEST(FlowArea, TakesAFlowBenchTable) {
  ValveShape valves{2, 0.029};
  valves.coefficients = {{1e-3, 0.7}, {3e-3, 0.6}};
  const double around = 2 * std::numbers::pi * 0.029;
  EXPECT_NEAR(flow_area(valves, 0.5e-3), 0.7 * 0.5e-3 * around, 1e-12);
  EXPECT_NEAR(flow_area(valves, 2e-3), 0.65 * 2e-3 * around, 1e-12);
  EXPECT_NEAR(flow_area(valves, 4e-3), 0.6 * 4e-3 * around, 1e-12);
}

}  // namespace
}  // namespace pulsewright
