// An external gate's valve between boost, spring and drive pressure.

#include "models/gate_spring.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_fault;
using test::engine_text;
using test::read_engine;
using test::says;
using test::with;

constexpr double bar = 1e5;
constexpr double rounding = 1e-12;  // shares from a handful of products

/// 0.7 bar on 20 cm2: 140 N of preload; 5 cm2 of valve; another 0.3 bar, 60 N, to full lift.
const GateSpring spring{0.7 * bar, 1.0 * bar, 20e-4, 5e-4};

// By hand: 2.8 bar on 5 cm2 are the 140 N of the preload.
TEST(GateSpring, CracksWhereTheForcesBalance) {
  EXPECT_EQ(forced_opening(spring, 0, 2.79 * bar), 0);
  EXPECT_GT(forced_opening(spring, 0, 2.81 * bar), 0);
  EXPECT_NEAR(blowing_open_pressure(spring), 2.8 * bar, 1e-7);  // rounding, Pa
  // With 1.2 bar on the valve, 60 N, the diaphragm has to give 80 N: 0.4 bar.
  EXPECT_NEAR(cracking_boost(spring, 1.2 * bar), 0.4 * bar, 1e-7);
  EXPECT_EQ(forced_opening(spring, 0.399 * bar, 1.2 * bar), 0);
  EXPECT_GT(forced_opening(spring, 0.401 * bar, 1.2 * bar), 0);
  EXPECT_EQ(cracking_boost(spring, 5 * bar), 0);
}

// 0.5 bar on 20 cm2 and 1.4 bar on 5 cm2: 170 N, 30 of the 60 to full lift.
TEST(GateSpring, LiftGrowsWithTheForceLeftOver) {
  EXPECT_NEAR(forced_opening(spring, 0.5 * bar, 1.4 * bar), 0.5, rounding);
  EXPECT_EQ(forced_opening(spring, 1.0 * bar, 2.0 * bar), 1);
}

TEST(GateSpring, BoostAloneCracksItAtTheSpringAndOpensItFullyWhereSaid) {
  EXPECT_EQ(opening_by_boost(spring, 0.7 * bar), 0);
  EXPECT_NEAR(opening_by_boost(spring, 0.85 * bar), 0.5, rounding);
  EXPECT_NEAR(opening_by_boost(spring, 1.0 * bar), 1, rounding);
}

TEST(GateSpring, ControllerLeavesOnlyTheDrivePressure) {
  GateSpring held = spring;
  held.controller = true;
  EXPECT_EQ(forced_opening(held, 1.5 * bar, 2.7 * bar), 0);
  EXPECT_NEAR(forced_opening(held, 1.5 * bar, 3.4 * bar), 0.5, rounding);  // 170 N from the valve alone
}

TEST(GateSpring, LargerDiaphragmIsBlownOpenLater) {
  GateSpring large = spring;
  large.diaphragm_area *= 2;
  EXPECT_GT(cracking_boost(large, 1.2 * bar), cracking_boost(spring, 1.2 * bar));
  EXPECT_LT(forced_opening(large, 0.5 * bar, 1.4 * bar), forced_opening(spring, 0.5 * bar, 1.4 * bar));
}

TEST(GateSpring, SuctionBehindNoBoostKeepsItShut) { EXPECT_EQ(forced_opening(spring, -0.5 * bar, 0.2 * bar), 0); }

std::string gate_text(const std::string& keys) {
  return with(engine_text, "[[wastegate]]\nat = \"merge\"\n",
              "[[wastegate]]\nat = \"merge\"\nbore = \"40 mm\"\n" + keys);
}
GatePlan gate_of(const std::string& keys) { return read_engine(gate_text(keys)).plan.gates.at(0); }

TEST(GateSpringCase, IsReadWithTheSeatAsTheValvesArea) {
  const GatePlan gate = gate_of("spring = \"0.7 bar\"\nfully_open = \"1 bar\"\ndiaphragm = \"60 mm\"\n");
  ASSERT_TRUE(gate.spring);
  EXPECT_NEAR(gate.spring->cracks, 0.7 * bar, 1e-6);  // rounding of the units
  EXPECT_NEAR(gate.spring->fully_open, bar, 1e-6);
  EXPECT_NEAR(gate.spring->diaphragm_area, std::numbers::pi / 4 * 0.06 * 0.06, 1e-12);
  EXPECT_NEAR(gate.spring->valve_area, std::numbers::pi / 4 * 0.04 * 0.04, 1e-12);
  EXPECT_FALSE(gate.spring->controller);
  EXPECT_TRUE(no_spring_sentence(gate).empty());
}

TEST(GateSpringCase, TakesAreasToo) {
  const GatePlan gate =
      gate_of("spring = \"10 psi\"\ndiaphragm = \"28 cm^2\"\nvalve_area = \"10 cm^2\"\ncontroller = true\n");
  ASSERT_TRUE(gate.spring);
  EXPECT_NEAR(gate.spring->diaphragm_area, 28e-4, 1e-12);
  EXPECT_NEAR(gate.spring->valve_area, 10e-4, 1e-12);
  EXPECT_TRUE(gate.spring->controller);
  EXPECT_NEAR(gate.spring->fully_open, 1.5 * gate.spring->cracks, 1e-6);  // the assumed row
}

TEST(GateSpringCase, WhatIsLeftOutIsSaid) {
  EXPECT_TRUE(says(no_spring_sentence(gate_of("")), {"spring and diaphragm", "'gate'", "not computed"}));
  EXPECT_TRUE(says(no_spring_sentence(gate_of("spring = \"0.7 bar\"\n")), {"The diaphragm of"}));
  EXPECT_TRUE(says(no_spring_sentence(gate_of("diaphragm = \"60 mm\"\n")), {"The spring of"}));
}

TEST(GateSpringCase, FullyOpenBelowTheSpringIsAFault) {
  const std::string bad = gate_text("spring = \"0.7 bar\"\nfully_open = \"0.6 bar\"\ndiaphragm = \"60 mm\"\n");
  EXPECT_TRUE(says(engine_fault(bad), {"fully_open is", "0.6", "0.7"}));
  EXPECT_TRUE(says(engine_fault(gate_text("spring = \"0.7 barg\"\ndiaphragm = \"60 kg\"\n")), {"diaphragm"}));
}

}  // namespace
}  // namespace pulsewright
