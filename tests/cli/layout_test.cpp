// What a comparison says was held equal, and what differs: every figure that a sentence states must be the same in all.

#include "cli/layout.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "models/side_by_side.hpp"

namespace pulsewright {
namespace {

Layout layout(const std::string& letter, const std::string& name, const std::vector<std::string>& tries = {}) {
  CaseOptions options;
  options.tries = tries;
  return {letter, load_case(std::string(PULSEWRIGHT_CASES) + "/" + name, options), {}};
}

const std::string equal = "03_equal_primaries.toml", unequal = "04_short_unequal.toml";

/// The equal primaries beside themselves with one change.
std::vector<Layout> changed(const std::string& change) {
  std::vector<Layout> pair;
  pair.push_back(layout("A", equal));
  pair.push_back(layout("B", equal, {change}));
  share_silencer(*pair[0].loaded.engine, *pair[1].loaded.engine);  // as compare does
  return pair;
}

bool holds(const std::vector<std::string>& lines, const std::string& words) {
  return std::ranges::any_of(lines, [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

std::string all(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + '\n';
  return text;
}

TEST(HeldEqual, NamesEngineBoostTurbineAndCellOfLayoutsThatShareThem) {
  std::vector<Layout> pair;
  pair.push_back(layout("A", equal));
  pair.push_back(layout("B", unequal));
  const auto lines = held_equal(pair);
  for (const char* words :
       {"engine of 2.00 l, 4 cylinders, compression 9.0", "boost 1.00 bar gauge", "1.98 bar absolute", "50 degC",
        "turbine passing 0.160 kg/s", "ratio of 2.00", "cell 5.0 mm"})
    EXPECT_TRUE(holds(lines, words)) << words << " is not in\n" << all(lines);
}

struct Change {
  const char* change;
  const char* word;  // of the sentence that must go
};
class HeldEqualLeavesOut : public testing::TestWithParam<Change> {};

TEST_P(HeldEqualLeavesOut, WhatDiffersInAnyFigureItStates) {
  const auto lines = held_equal(changed(GetParam().change));
  EXPECT_FALSE(holds(lines, GetParam().word)) << all(lines);
  EXPECT_EQ(lines.size(), held_equal(changed("title=\"another\"")).size() - 1) << all(lines);
}

TEST_P(HeldEqualLeavesOut, WhatItThenNamesWithBothValues) {
  const auto lines = not_equal(changed(GetParam().change));
  ASSERT_EQ(lines.size(), 1u) << all(lines);
  EXPECT_TRUE(lines[0].starts_with("NOT held equal: ")) << lines[0];
  for (const char* words : {GetParam().word, ". A: ", "; B: "})
    EXPECT_NE(lines[0].find(words), std::string::npos) << words << " is not in " << lines[0];
}
INSTANTIATE_TEST_SUITE_P(
    Figures, HeldEqualLeavesOut,
    testing::Values(Change{"engine.bore=\"85 mm\"", "engine of"}, Change{"engine.compression_ratio=10", "engine of"},
                    Change{"charge.boost_gauge=\"1.2 bar\"", "boost"},
                    Change{"charge.temperature=\"70 degC\"", "boost"}, Change{"ambient.altitude=\"1500 m\"", "boost"},
                    Change{"turbine.capacity.flow=\"0.2 kg/s\"", "turbine"},
                    Change{"turbine.capacity.ratio=2.5", "turbine"}, Change{"run.cell=\"10 mm\"", "cell"},
                    Change{"engine.fuel=\"diesel\"", "fuel"}, Change{"engine.lambda=0.9", "fuel"},
                    Change{"silencer.pressure_drop=\"0.3 bar\"", "silencer"}));

TEST(NotEqual, NamesTogetherTheLayoutsThatShareAValue) {
  auto three = changed("run.cell=\"10 mm\"");
  three.push_back(layout("C", equal));
  const auto lines = not_equal(three);
  ASSERT_EQ(lines.size(), 1u) << all(lines);
  EXPECT_EQ(lines[0],
            "NOT held equal: cells of the pipes. A, C: pipes computed in pieces, cell 5.0 mm; B: pipes computed in "
            "pieces, cell 10.0 mm");
}

TEST(NotEqual, SaysNothingOfLayoutsThatShareEverything) {
  EXPECT_TRUE(not_equal(changed("each_primary.tube=\"NPS 1-1/2 sch 10S\"")).empty());
}

TEST(Differences, OfASharedValueAreSaidOnceForEveryPrimary) {
  const auto lines = differences(changed("each_primary.tube=\"NPS 1-1/2 sch 10S\""));
  ASSERT_EQ(lines.size(), 1u) << all(lines);
  EXPECT_EQ(lines[0], "B: every primary: tube NPS 1-1/2 sch 10S, not NPS 1-1/4 sch 10S");
}

TEST(Differences, TellPrimariesByTheirCylinderWhateverTheirOrder) {
  const auto lines = differences(changed("primary.3.length=\"400 mm\""));
  ASSERT_EQ(lines.size(), 1u) << all(lines);
  EXPECT_EQ(lines[0], "B: primary 3: 400 mm long, not 450 mm");
}

TEST(Differences, SayWhatALayoutLeavesOpenAndNothingOfWhatItShares) {
  std::vector<Layout> pair;
  pair.push_back(layout("A", equal));
  pair.push_back(layout("B", unequal));
  const auto lines = differences(pair);
  EXPECT_TRUE(
      holds(lines, "B: primary 2: 220 mm long, not 450 mm; bends 120 deg, not 210 deg; clock left open, not 270 deg"))
      << all(lines);
  EXPECT_EQ(lines.size(), 4u) << all(lines);  // a line for each primary
}

TEST(Differences, SayOnceWhatAllPrimariesChangedAlike) {
  std::vector<Layout> pair;
  pair.push_back(layout("A", equal));
  pair.push_back(layout("B", "07_divided_1_4_and_2_3.toml"));
  const auto lines = differences(pair);
  EXPECT_TRUE(holds(lines, "B: every primary: 350 mm long, not 450 mm; angle 10 deg, not 15 deg")) << all(lines);
  EXPECT_TRUE(holds(lines, "B: primary 2: goes to rear, not merge")) << all(lines);
  EXPECT_TRUE(holds(lines, "B: not here: gate, merge")) << all(lines);
}

TEST(Differences, ThatSeveralLayoutsShareAreSaidOnce) {
  std::vector<Layout> three;
  three.push_back(layout("A", equal));
  three.push_back(layout("B", "07_divided_1_4_and_2_3.toml"));
  three.push_back(layout("C", "08_divided_1_2_and_3_4.toml"));
  const auto lines = differences(three);
  EXPECT_TRUE(holds(lines, "B, C: turbine: scrolls 2")) << all(lines);
  EXPECT_TRUE(holds(lines, "B: primary 2: goes to rear")) << all(lines);
  EXPECT_TRUE(holds(lines, "C: primary 2: goes to front")) << all(lines);
}

TEST(Differences, ReadATableInsideAListAsPartOfThatItem) {
  std::vector<Layout> pair;
  pair.push_back(layout("A", "15_vee_8_one_turbine.toml"));
  pair.push_back(layout("B", "16_vee_8_two_turbines.toml"));
  const auto lines = differences(pair);
  for (const char* words : {"B: left turbine: only here: ", "B: right turbine: only here: ", "capacity flow 0.16 kg/s"})
    EXPECT_TRUE(holds(lines, words)) << words << " is not in\n" << all(lines);
}

TEST(Differences, OfTwinsAreNone) {
  std::vector<Layout> pair;
  pair.push_back(layout("A", equal));
  pair.push_back(layout("B", equal));
  EXPECT_TRUE(differences(pair).empty());
}

SpeedResult speed(double rpm, double torque, double filling) {
  SpeedResult s{};
  s.rpm = rpm, s.torque = torque;
  s.cylinders.resize(2);
  s.cylinders[0].volumetric_efficiency = filling, s.cylinders[1].volumetric_efficiency = filling + 0.1;
  return s;
}

TEST(InShort, NamesTheSpeedWhereAFigureDiffersMost) {
  auto pair = changed("run.cell=\"10 mm\"");
  pair[0].result.speeds = {speed(3000, 200, 0.9), speed(5000, 300, 0.9)};
  pair[1].result.speeds = {speed(3000, 199, 0.9), speed(5000, 280, 0.9)};
  const auto lines = in_short(pair);
  EXPECT_TRUE(holds(lines, "at 5000 rpm (280 against 300 Nm)")) << all(lines);
  EXPECT_FALSE(holds(lines, "at 3000 rpm")) << all(lines);  // half a per cent there
  EXPECT_FALSE(holds(lines, "nan")) << all(lines);
}

TEST(InShort, OfOneLayoutIsNothing) {
  std::vector<Layout> one;
  one.push_back(layout("A", equal));
  EXPECT_TRUE(in_short(one).empty());
}

}  // namespace
}  // namespace pulsewright
