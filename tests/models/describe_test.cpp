// What `check` says about a case agrees with what was drawn, and with angles worked out by hand.

#include "models/describe.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::read_rig;
using test::rig_text;
using test::says;
using test::with;

constexpr double degree = std::numbers::pi / 180;

TEST(Describe, LengthsRunFromFlangeAndFromValve) {
  const auto lines = primary_lines(read_engine(engine_text));
  ASSERT_EQ(lines.size(), 4u);
  EXPECT_EQ(lines[0].name, "primary 1");
  EXPECT_EQ(lines[0].ends_at, "merge");
  EXPECT_NEAR(lines[0].flange_to_end, 0.31, 1e-12);
  EXPECT_NEAR(lines[0].valve_to_end, 0.38, 1e-12);  // with 70 mm of port, assumed
  EXPECT_NEAR(lines[1].flange_to_end, 0.22, 1e-12);
  EXPECT_NEAR(lines[0].bends, 120 * degree, 1e-12);
}

TEST(Describe, VolumeOfARoundPrimaryIsThatOfACylinder) {
  const std::string text = with(with(engine_text, "[engine.exhaust_port]\nexit = \"oval 36 mm x 28 mm\"", ""),
                                "tube = \"NPS 1-1/4 sch 10S\"", "bore = \"40 mm\"");
  const auto lines = primary_lines(read_engine(text));
  EXPECT_NEAR(lines[0].volume, std::numbers::pi / 4 * 0.04 * 0.04 * 0.31, 1e-12);
}

TEST(Describe, LinesSurviveAStepAtTheFlangeAndATapOnTheWay) {
  std::string text = with(engine_text, "tube = ", "transition = \"0 mm\"\ntube = ");
  text = with(text, "at = \"merge\"", "at = \"primary 1:200mm\"");
  const auto lines = primary_lines(read_engine(text));
  EXPECT_EQ(lines[0].name, "primary 1");
  EXPECT_NEAR(lines[0].flange_to_end, 0.31, 1e-12);
  EXPECT_EQ(lines[0].ends_at, "merge");
}

TEST(Describe, SaysNetworkLengthsPairsAndAssumptions) {
  EXPECT_TRUE(says(describe(read_engine(engine_text)),
                   {"Four into one", "firing order 1-3-4-2", "cylinder 1 > port 1 + primary 1", "joint merge",
                    "primary 2 comes in at 15 deg", "gate gate on merge", "380 mm", "cylinder 3", "14 deg",
                    "NPS 1-1/4 sch 10S", "exhaust_port.length", "joint.clock"}));
  EXPECT_TRUE(says(describe(read_rig(rig_text)), {"Tee", "1 ms", "joint tee", "stub comes in at 90 deg"}));
}

TEST(Describe, ManifoldVolumeEndsAtTheTurbine) {
  const EngineCase c = read_engine(engine_text);
  double primaries = 0;
  for (const PrimaryLine& line : primary_lines(c)) primaries += line.volume;
  const double volume = manifold_volume(c);
  EXPECT_GT(volume, primaries);
  EXPECT_LT(volume, primaries + 0.5e-3);  // merge and volute; a downpipe of 2.85 l would show
}

}  // namespace
}  // namespace pulsewright
