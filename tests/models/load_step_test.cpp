#include "models/load_step.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

// dE/dt = P - k E with constants: E = P/k + (E0 - P/k) exp(-k t), whatever the steps.
TEST(ShaftEnergy, FollowsTheClosedFormOfConstantPowers) {
  for (int steps : {1, 7, 1000}) {
    ShaftEnergy shaft(200);
    for (int i = 0; i < steps; ++i) shaft.advance(0.8 / steps, 9000, 3.0);
    EXPECT_NEAR(shaft.value(), 3000 + (200 - 3000) * std::exp(-2.4), 1e-9 * 3000);  // rounding of the steps
  }
  ShaftEnergy free(200);
  free.advance(0.5, 4000, 0);
  EXPECT_NEAR(free.value(), 2200, 1e-9);
}

// I w^2/2 with w = 2 U/d and U^2 = work/psi.
TEST(ShaftEnergy, OfAWheelIsItsInertiaAtTheSpeedOfItsWork) {
  EngineCase engine{};
  engine.charge.work_coefficient = 0.7;
  engine.turbines.resize(1);
  engine.turbines[0].wheel_ratio = 1.05, engine.turbines[0].inducer = 0.064, engine.turbines[0].inertia = 3.5e-5;
  const double work = 90e3, w = std::sqrt(work / 0.7) / (1.05 * 0.064 / 2);
  EXPECT_NEAR(shaft_energy_per_work(engine) * work / (0.5 * 3.5e-5 * w * w), 1, 1e-12);
}

EngineCase step_case(const std::string& rpm, const std::string& inertia) {
  std::string text = test::with(test::engine_text, "rpm = [3000]", "rpm = [" + rpm + "]\nboost = \"step\"");
  text = test::with(text, "[turbine]", "[turbine]\ninertia = \"" + inertia + "\"");
  return test::read_engine(test::with(text, "cell = \"5 mm\"", "cell = \"20 mm\""));
}

TEST(LoadStep, TakesTwiceAsLongWithTwiceTheInertia) {
  const SpeedResult light = run_speed(step_case("4500", "3e-5 kg m^2"), 4500),
                    heavy = run_speed(step_case("4500", "6e-5 kg m^2"), 4500);
  ASSERT_TRUE(light.boost.time_to_boost && heavy.boost.time_to_boost);
  // The wheel's size goes with the fifth root of its inertia and takes part of the factor: 2 / 2^(2/5) = 1.52. Within
  // 15 %: the first cycles are the gas's, not the shaft's.
  EXPECT_NEAR(*heavy.boost.time_to_boost / *light.boost.time_to_boost, std::pow(2, 0.6), 0.15 * std::pow(2, 0.6));
  EXPECT_EQ(light.boost.state, BoostFigures::State::held);
}

TEST(LoadStep, SaysWhereTheBoostStandsWhenItDoesNotGetThere) {
  const SpeedResult s = run_speed(step_case("1200", "3e-5 kg m^2"), 1200);
  EXPECT_FALSE(s.boost.time_to_boost);
  EXPECT_NE(s.boost.why_no_time.find("bar after"), std::string::npos) << s.boost.why_no_time;
}

TEST(LoadStep, AsksForTheShaftsInertia) {
  EXPECT_TRUE(test::says(test::engine_fault(test::with(test::engine_text, "rpm = [3000]", "boost = \"step\"")),
                         {"inertia", "exducer"}));
}

}  // namespace
}  // namespace pulsewright
