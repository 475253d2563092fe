// Boost made and held: the demo engine on long cells, where only balances and bookkeeping are asked for.

#include <gtest/gtest.h>

#include <cmath>

#include "models/engine_model.hpp"
#include "models/engine_run.hpp"
#include "models/side_by_side.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using State = BoostFigures::State;
constexpr double coarse = 20e-3;  // m

EngineCase demo(const std::vector<std::string>& changes) {
  CaseFile file = CaseFile::load(std::string(PULSEWRIGHT_CASES) + "/03_equal_primaries.toml");
  for (const std::string& change : changes) file.set(change);
  return read_engine_case(file, coarse);
}
const std::string balanced = "run.boost=\"balanced\"", hold = "run.boost=\"hold\"", given = "run.boost=\"given\"";

SpeedResult at(double rpm, const std::vector<std::string>& changes) { return run_speed(demo(changes), rpm); }

TEST(Balanced, PowersAreEqualWithinTwoPerMille) {
  for (double rpm : {1500.0, 2000.0, 3000.0, 5500.0, 7500.0}) {
    const SpeedResult s = at(rpm, {balanced});
    EXPECT_TRUE(s.settled) << s.unsettled_figure;
    EXPECT_LT(std::abs(s.turbine_surplus), 2e-3 * s.compressor_power) << rpm;
  }
}

TEST(Balanced, MakesLessThanTheTargetBelowTheThresholdAndHoldsItAbove) {
  const SpeedResult slow = at(1500, {balanced}), fast = at(5500, {balanced});
  EXPECT_EQ(slow.boost.state, State::below_target);
  EXPECT_LT(slow.boost_gauge, 0.9e5);
  EXPECT_EQ(slow.gates[0].opening, 0);
  EXPECT_EQ(fast.boost.state, State::held);
  EXPECT_EQ(fast.boost_gauge, 1e5);
  EXPECT_GT(fast.gates[0].opening, 0.05);
}

// 0.4 %: each run's own powers are equal to 0.2 %.
TEST(Balanced, GivesTheStateOfTheBoostItFound) {
  const SpeedResult found = at(2000, {balanced});
  EngineCase engine = demo({given});
  EngineModel model(engine, 2000);
  model.set_boost(found.boost_gauge);
  for (int cycle = 0; cycle < 30; ++cycle) model.cycle([] {});
  EXPECT_NEAR(model.turbine_power() / model.compressor_power(), 1, 4e-3);
  EXPECT_NEAR(model.air_flow() / found.air_flow, 1, 2e-3);
}

// 0.1 % is what settling lets pass.
TEST(Hold, GivesTheStateOfAGivenBoostWithThatGateOpening) {
  const SpeedResult held = at(4500, {hold});
  const SpeedResult fixed = at(4500, {given, "wastegate.gate.opening=" + std::to_string(held.gates[0].opening)});
  EXPECT_EQ(held.boost.state, State::held);
  EXPECT_EQ(fixed.boost.state, State::given);
  EXPECT_NEAR(fixed.torque / held.torque, 1, 1e-3);
  EXPECT_NEAR(fixed.turbine[0].stagnation_mean / held.turbine[0].stagnation_mean, 1, 1e-3);
  EXPECT_NEAR(fixed.gates[0].share_of_flow / held.gates[0].share_of_flow, 1, 2e-3);
}

TEST(Hold, SaysThatTheTargetIsNotReachedWhereTheTurbineHasTooLittlePower) {
  const SpeedResult s = at(1500, {hold});
  EXPECT_EQ(s.boost.state, State::not_reached);
  EXPECT_EQ(s.gates[0].opening, 0);
  EXPECT_LT(s.turbine_surplus, 0);
}

// At every opening the boost at which powers are equal; monotone.
TEST(Gate, LowersTheBoostAsItOpens) {
  const EngineCase engine = demo({hold});
  double last = 1e9;
  for (double opening : {0.0, 0.1, 0.25, 0.5, 1.0}) {
    EngineModel model(engine, 4500);
    model.set_gate_opening(opening);
    for (int cycle = 0; cycle < 8; ++cycle) model.cycle([] {});
    EXPECT_LT(model.turbine_power() / model.compressor_power(), last) << opening;
    last = model.turbine_power() / model.compressor_power();
  }
}

class SmallGate : public testing::Test {
 protected:
  static constexpr double rpm = 6500;
  const SpeedResult small_ = at(rpm, {balanced, "wastegate.gate.bore=\"16 mm\""});
};

TEST_F(SmallGate, LetsTheBoostClimbAndSaysWhichBoreWouldHold) {
  EXPECT_TRUE(small_.settled) << small_.unsettled_figure;
  EXPECT_EQ(small_.boost.state, State::cannot_hold);
  EXPECT_EQ(small_.gates[0].opening, 1);
  EXPECT_GT(small_.boost_gauge, 1.02e5);
  ASSERT_TRUE(small_.gates[0].bore_that_would_hold) << small_.boost.why_no_bore;
  EXPECT_GT(*small_.gates[0].bore_that_would_hold, 17e-3);
}

TEST_F(SmallGate, OfTheBoreThatWouldHoldThenHoldsAndBarely) {
  ASSERT_TRUE(small_.gates[0].bore_that_would_hold);
  const std::string bore = std::to_string(1e3 * *small_.gates[0].bore_that_would_hold);
  const SpeedResult larger = at(rpm, {balanced, "wastegate.gate.bore=\"" + bore + " mm\""});
  EXPECT_EQ(larger.boost.state, State::held);
  EXPECT_EQ(larger.boost_gauge, 1e5);
  EXPECT_GT(larger.gates[0].opening, 0.9);  // no larger than it must be
}

TEST(LargeGate, ShowsNoCreepUpToTheRedline) {
  for (double rpm : {5500.0, 6500.0, 7500.0}) {
    const SpeedResult s = at(rpm, {balanced, "wastegate.gate.bore=\"60 mm\"", "wastegate.gate.angle=\"0 deg\""});
    EXPECT_EQ(s.boost.state, State::held);
    EXPECT_EQ(s.boost_gauge, 1e5) << rpm;
  }
}

TEST(NoGate, CannotHoldAndNoBoreIsMadeUp) {
  std::string text = test::with(test::engine_text, "[[wastegate]]\nat = \"merge\"\n", "");
  text = test::with(test::with(text, "rpm = [3000]", "boost = \"balanced\""), "cell = \"5 mm\"", "cell = \"20 mm\"");
  const SpeedResult s = run_speed(test::read_engine(text), 6000);
  EXPECT_EQ(s.boost.state, State::cannot_hold);
  EXPECT_GT(s.boost_gauge, 1e5);
  EXPECT_EQ(s.boost.why_no_bore, "there is no wastegate");
}

TEST(NoBoost, IsCleanInEveryMode) {
  for (const char* mode : {"hold", "balanced", "step"}) {
    const SpeedResult s = at(
        3000, {"charge.boost_gauge=\"0 bar\"", "turbine.exducer=\"55 mm\"", "run.boost=\"" + std::string(mode) + "\""});
    EXPECT_TRUE(s.settled) << mode;
    EXPECT_EQ(s.boost.state, State::given) << mode;
    EXPECT_EQ(s.compressor_power, 0) << mode;
  }
}

TEST(Boost, IsTheSameAtAnyNumberOfThreadsAndInAnyOrder) {
  const EngineCase up = demo({balanced, "run.rpm=[2000, 4500]"}), down = demo({balanced, "run.rpm=[4500, 2000]"});
  const auto one = run_engines({&up}, {.threads = 1}), two = run_engines({&down}, {.threads = 2});
  EXPECT_EQ(one[0].speeds[0].boost_gauge, two[0].speeds[1].boost_gauge);
  EXPECT_EQ(one[0].speeds[1].gates[0].opening, two[0].speeds[0].gates[0].opening);
}

// 8 degrees a bar where the centre is assumed, none where it is given.
TEST(Boost, MovesABurnCentreThatIsAssumed) {
  const EngineCase assumed = demo({given}), said = demo({given, "engine.burn.centre=\"20 deg after tdc\""});
  EngineModel moving(assumed, 3000), fixed(said, 3000);
  moving.set_boost(0.5e5), fixed.set_boost(0.5e5);
  EXPECT_NEAR(moving.cylinders()[0]->spec().burn.centre.degrees(), 16, 1e-9);
  EXPECT_NEAR(fixed.cylinders()[0]->spec().burn.centre.degrees(), 20, 1e-9);
}

TEST(BoostMode, HoldNeedsAGate) {
  std::string text = test::with(test::engine_text, "[[wastegate]]\nat = \"merge\"\n", "");
  EXPECT_TRUE(test::says(test::engine_fault(test::with(text, "rpm = [3000]", "boost = \"hold\"")), {"no wastegate"}));
}

TEST(BoostMode, AGateThatHoldsAsksForNoOpening) {
  const std::string held = test::with(test::engine_text, "at = \"merge\"\n", "at = \"merge\"\nhold = true\n");
  EXPECT_EQ(test::read_engine(held).run.boost, BoostMode::hold);
  EXPECT_TRUE(test::says(test::engine_fault(test::with(held, "hold = true\n", "hold = true\nopening = 0.2\n")),
                         {"opening", "hold"}));
}

}  // namespace
}  // namespace pulsewright
