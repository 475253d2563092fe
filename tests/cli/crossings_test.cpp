// Where two layouts change places: the straight line between two speeds, nothing for a wobble that is worth no word.

#include <gtest/gtest.h>

#include "cli/layout.hpp"

namespace pulsewright {
namespace {

struct Point {
  double rpm, first, second;
};

SpeedResult with_torque(double rpm, double torque) {
  SpeedResult s{};
  s.rpm = rpm, s.torque = torque;
  return s;
}

/// Two layouts that differ in torque alone.
std::vector<Layout> torques(const std::vector<Point>& points) {
  std::vector<Layout> pair(2);
  pair[0].letter = "A", pair[1].letter = "B";
  for (const Point& p : points) {
    pair[0].result.speeds.push_back(with_torque(p.rpm, p.first));
    pair[1].result.speeds.push_back(with_torque(p.rpm, p.second));
  }
  return pair;
}

constexpr double rounding = 1e-9;  // of speeds of some thousand

TEST(Crossings, LieWhereTheStraightLineBetweenTwoSpeedsPassesZero) {
  // 30 less at 3000, 10 more at 5000: three quarters of the way.
  const auto found = crossings(torques({{3000, 300, 270}, {5000, 300, 310}}));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].rpm, 4500, rounding);
  EXPECT_EQ(found[0].row->words->name, "torque");
  EXPECT_TRUE(found[0].second_less_below);
}

TEST(Crossings, NameTheBetterLayoutBelowAndAbove) {
  const auto lines = crossing_sentences(torques({{3000, 300, 270}, {5000, 300, 310}}));
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_EQ(lines[0], "torque: A has more up to about 4500 rpm, B above");
  EXPECT_EQ(crossing_sentences(torques({{3000, 270, 300}, {5000, 310, 300}}))[0],
            "torque: B has more up to about 4500 rpm, A above");
}

TEST(Crossings, OfAFigureBetterLowNameWhoHasLess) {
  auto pair = torques({{3000, 300, 300}, {5000, 300, 300}});
  const auto entry = [](double stagnation) {
    EntryFigures e{};
    e.pressure_mean = 1e5, e.stagnation_mean = stagnation;
    return e;
  };
  for (std::size_t s = 0; s < 2; ++s) {
    pair[0].result.speeds[s].turbine = {entry(2e5)};
    pair[1].result.speeds[s].turbine = {entry(s == 0 ? 1.8e5 : 2.2e5)};
  }
  // The gauge shows the same in both: what the gas brought to rest says counts.
  const auto lines = crossing_sentences(pair);
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_EQ(lines[0], "drive pressure: B has less up to about 4000 rpm, A above");
}

TEST(Crossings, AreNoneWhereTheDifferenceIsWorthNoWordOnOneSide) {
  EXPECT_TRUE(crossings(torques({{3000, 300, 270}, {5000, 300, 301}})).empty());
  EXPECT_TRUE(crossings(torques({{3000, 300, 299}, {5000, 300, 301}})).empty());
}

TEST(Crossings, SeeADifferenceThatGrowsFurtherAway) {
  const auto found = crossings(torques({{2000, 300, 270}, {3000, 300, 299}, {4000, 300, 301}, {5000, 300, 340}}));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].rpm, 3500, rounding);
}

TEST(Crossings, AreNoneWithoutAChangeOfSign) {
  EXPECT_TRUE(crossings(torques({{3000, 300, 270}, {5000, 300, 290}})).empty());
  EXPECT_TRUE(crossings(torques({{3000, 300, 270}})).empty());
}

TEST(Crossings, AreFoundWhereverThereAreSeveral) {
  const auto found = crossings(torques({{2000, 300, 320}, {3000, 300, 280}, {4000, 300, 320}}));
  ASSERT_EQ(found.size(), 2u);
  EXPECT_NEAR(found[0].rpm, 2500, rounding);
  EXPECT_NEAR(found[1].rpm, 3500, rounding);
}

}  // namespace
}  // namespace pulsewright
