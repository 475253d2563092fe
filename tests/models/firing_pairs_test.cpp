// Firing pairs against angles worked out by hand from the cam card and the firing order.

#include "models/firing_pairs.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::says;
using test::with;

constexpr double degree = std::numbers::pi / 180;
constexpr double rounding = 1e-6;  // degrees; the cam card goes through a power and its inverse

/// 1 and 4 to scroll a, 2 and 3 to scroll b.
std::string divided(const std::string& first_pair = "4") {
  std::string text = with(with(engine_text, "[turbine]", "[turbine]\nscrolls = 2"), "to = \"merge\"\n", "");
  text =
      with(text, "outlet = \"turbine\"", "outlet = \"turbine.a\"\n[[joint]]\nname = \"rear\"\noutlet = \"turbine.b\"");
  for (const char* c : {"1", "2", "3", "4"}) {
    const bool front = c == std::string("1") || c == first_pair;
    text = with(text, std::string("cylinder = ") + c,
                std::string("cylinder = ") + c + "\nto = \"" + (front ? "merge" : "rear") + "\"");
  }
  return text;
}

FiringPair pair_of(const EngineCase& c, int blows, int hears) {
  const auto pairs = firing_pairs(c);
  return *std::ranges::find_if(pairs, [&](const FiringPair& p) { return p.blows == blows && p.hears == hears; });
}

// Cylinder 1's exhaust opens 54 deg before bdc; the blowdown lasts to bdc, 126 to 180 after it fires. The overlap of
// the cylinder that fired 180 before lies at 346-180 = 166 to 378-180 = 198 on the same scale: 14 deg in common.
TEST(FiringPairs, BlowdownFallsIntoTheOverlapOfTheOneThatFiredBefore) {
  const auto pairs = firing_pairs(read_engine(engine_text));
  ASSERT_EQ(pairs.size(), 12u);
  for (const FiringPair& p : pairs) {
    const bool next = std::abs(p.fires_after - 180 * degree) < 1e-9;
    EXPECT_NEAR(p.into_overlap / degree, next ? 14 : 0, rounding) << p.blows << " into " << p.hears;
    EXPECT_TRUE(p.one_scroll);
    EXPECT_EQ(p.meet_at, "merge");
  }
  // Opens at 126, the overlap ends at 198.
  EXPECT_NEAR(pair_of(read_engine(engine_text), 3, 1).opens_before_end / degree, 72, rounding);
}

/// Every cylinder of a case of its own, on two merges so that any number finds room.
std::string many(const std::string& arrangement, int cylinders) {
  std::string text = divided();
  text = with(text, "inline 4", arrangement);
  for (int c = 5; c <= cylinders; ++c)
    text += "[[primary]]\ncylinder = " + std::to_string(c) + "\nlength = \"300 mm\"\nto = \"" +
            (c % 2 == 0 ? "merge" : "rear") + "\"\n";
  return text;
}

// A six fires every 120 deg. The next one's blowdown, 246 to 300, is over before the overlap, 346 to 378. The next but
// one opens at 126 + 240 = 366: 12 deg before the overlap ends.
TEST(FiringPairs, ASixHearsTheNextButOneForTwelveDegrees) {
  for (const FiringPair& p : firing_pairs(read_engine(many("inline 6", 6)))) {
    const bool next_but_one = std::abs(p.fires_after - 240 * degree) < 1e-9;
    EXPECT_NEAR(p.into_overlap / degree, next_but_one ? 12 : 0, rounding) << p.blows << " into " << p.hears;
  }
}

// 1-5-3-6-2-4: in threes 1+2+3 and 4+5+6 each pipe gets a pulse every 240 deg; any other way puts neighbours together.
TEST(FiringPairs, ASixPartsFurthestInThrees) {
  const auto ways = partings(read_engine(many("inline 6", 6)));
  EXPECT_EQ(ways[0].one, (std::vector<int>{1, 2, 3}));
  EXPECT_NEAR(ways[0].apart / degree, 240, rounding);
  EXPECT_NEAR(ways[1].apart / degree, 120, rounding);
}

TEST(FiringPairs, CylindersOnTwoScrollsDoNotMeet) {
  const EngineCase c = read_engine(divided());
  EXPECT_FALSE(pair_of(c, 3, 1).one_scroll);
  EXPECT_TRUE(pair_of(c, 3, 1).meet_at.empty());
  EXPECT_NEAR(pair_of(c, 3, 1).into_overlap / degree, 14, rounding);  // at the valves all the same
  EXPECT_EQ(pair_of(c, 4, 1).meet_at, "merge");
  const auto groups = pipe_groups(c);
  ASSERT_EQ(groups.size(), 2u);
  EXPECT_EQ(groups[0].cylinders, (std::vector<int>{1, 4}));
  EXPECT_EQ(groups[0].entries, std::vector<std::string>{"turbine.a"});
  EXPECT_EQ(groups[1].cylinders, (std::vector<int>{2, 3}));
  EXPECT_EQ(groups[1].entries, std::vector<std::string>{"turbine.b"});
}

TEST(FiringPairs, PipesOfALogMeetAtThePortNearerTheTurbine) {
  std::string text = with(engine_text, "to = \"merge\"\n", "");
  text =
      with(text, "[[joint]]\nname = \"merge\"\noutlet = \"turbine\"\n",
           "[[joint]]\nname = \"over 1\"\noutlet = \"log a\"\n[[joint]]\nname = \"over 2\"\noutlet = \"log b\"\n"
           "[[joint]]\nname = \"merge\"\noutlet = \"turbine\"\n"
           "[[duct]]\nname = \"log a\"\nfrom = \"over 1\"\nto = \"over 2\"\nto_angle = \"0 deg\"\nlength = \"90 mm\"\n"
           "bore = \"40 mm\"\n[[duct]]\nname = \"log b\"\nfrom = \"over 2\"\nto = \"merge\"\nto_angle = \"0 deg\"\n"
           "length = \"90 mm\"\nbore = \"40 mm\"\n");
  for (const auto& [c, to] : {std::pair{"1", "over 1"}, {"2", "over 2"}, {"3", "merge"}, {"4", "merge"}})
    text = with(text, std::string("cylinder = ") + c, std::string("cylinder = ") + c + "\nto = \"" + to + "\"");
  const EngineCase log = read_engine(text);
  EXPECT_EQ(pair_of(log, 2, 1).meet_at, "over 2");
  EXPECT_EQ(pair_of(log, 1, 2).meet_at, "over 2");
  EXPECT_EQ(pair_of(log, 1, 3).meet_at, "merge");
}

// 1-3-4-2: 1+4 and 2+3 fire 360 deg apart, nothing in common. Any other halves hold two of the four bad pairs.
TEST(FiringPairs, TheBestPartingOfAFourIs14And23) {
  const auto ways = partings(read_engine(engine_text));
  ASSERT_EQ(ways.size(), 3u);
  EXPECT_EQ(ways[0].one, (std::vector<int>{1, 4}));
  EXPECT_EQ(ways[0].other, (std::vector<int>{2, 3}));
  EXPECT_EQ(ways[0].sum, 0);
  EXPECT_NEAR(ways[0].apart / degree, 360, rounding);
  for (const int k : {1, 2}) {
    EXPECT_NEAR(ways[static_cast<std::size_t>(k)].sum / degree, 2 * 14, rounding);
    EXPECT_NEAR(ways[static_cast<std::size_t>(k)].worst / degree, 14, rounding);
    EXPECT_NEAR(ways[static_cast<std::size_t>(k)].apart / degree, 180, rounding);
  }
}

TEST(FiringPairs, EveryWayToPartThemIsLookedAtOnce) {
  const auto count = [](const std::string& arrangement, int cylinders) {
    return partings(read_engine(many(arrangement, cylinders))).size();
  };
  EXPECT_EQ(count("inline 5", 5), 10u);  // 5 over 2
  EXPECT_EQ(count("inline 6", 6), 10u);  // half of 6 over 3
  EXPECT_EQ(count("vee 8", 8), 35u);     // half of 8 over 4
}

TEST(FiringPairs, NoOverlapNoPair) {
  const EngineCase c = read_engine(with(
      engine_text, "[engine.exhaust_port]",
      "[engine.exhaust_valve]\nopens = \"54 deg before bdc\"\ncloses = \"5 deg before tdc\"\n[engine.intake_valve]\n"
      "opens = \"5 deg after tdc\"\ncloses = \"50 deg after bdc\"\n[engine.exhaust_port]"));
  for (const FiringPair& p : firing_pairs(c)) EXPECT_EQ(p.into_overlap, 0);
}

TEST(FiringPairs, AreToldInDegreesWithTheWorst) {
  EXPECT_TRUE(
      says(firing_pairs_text(read_engine(engine_text)),
           {"Cylinders 1, 2, 3 and 4 share pipe into turbine", "14 deg", "merge",
            "cylinder 3's exhaust opens 72 degrees before cylinder 1's overlap ends: 14 degrees of its blowdown",
            "alike: ", "1+4 and 2+3", "fire 360 deg apart", "28 deg in all"}));
  const std::string apart = firing_pairs_text(read_engine(divided()));
  EXPECT_TRUE(says(apart, {"Cylinders 1 and 4 share pipe into turbine.a\n  no blowdown", "Kept apart up to the wheel",
                           "3 into 1 (14 deg)"}));
  EXPECT_TRUE(says(firing_pairs_text(read_engine(divided("2"))), {"worst: "}));
}

}  // namespace
}  // namespace pulsewright
