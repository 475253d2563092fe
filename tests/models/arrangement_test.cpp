#include "models/arrangement.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

TEST(Arrangements, EachNamesEveryCylinderOnceAndGivesItABank) {
  for (const Arrangement& a : arrangements()) {
    std::vector<int> sorted = a.firing_order;
    std::sort(sorted.begin(), sorted.end());
    for (std::size_t i = 0; i < sorted.size(); ++i) EXPECT_EQ(sorted[i], static_cast<int>(i) + 1) << a.name;
    EXPECT_EQ(a.bank.size(), sorted.size()) << a.name;
    EXPECT_EQ(a.firing_order.front(), 1) << a.name;
  }
}

TEST(Arrangements, InlineFourFires1342Every180Degrees) {
  const Arrangement* four = find_arrangement("inline 4");
  ASSERT_NE(four, nullptr);
  EXPECT_EQ(even_firing_degrees(four->firing_order), (std::vector<double>{0, 540, 180, 360}));
  EXPECT_EQ(find_arrangement("inline 7"), nullptr);
}

TEST(Arrangements, CountFromCylinderOneWhereverTheOrderBegins) {
  EXPECT_EQ(even_firing_degrees(std::vector<int>{3, 4, 2, 1}), (std::vector<double>{0, 540, 180, 360}));
}

TEST(Arrangements, RefuseAnOrderThatLeavesACylinderOut) {
  EXPECT_THROW(even_firing_degrees(std::vector<int>{1, 3, 3, 2}), Error);
  EXPECT_THROW(even_firing_degrees(std::vector<int>{1, 5, 3, 2}), Error);
  EXPECT_THROW(even_firing_degrees(std::vector<int>{0, 1}), Error);
}

/// Gaps between the firings of one bank, from its first cylinder on.
std::vector<double> gaps_of_bank(std::string_view name, int bank) {
  const Arrangement& a = *find_arrangement(name);
  const std::vector<double> at = firing_degrees(a.firing_order, a.at);
  std::vector<double> of_bank;
  for (std::size_t i = 0; i < at.size(); ++i)
    if (a.bank[i] == bank) of_bank.push_back(at[i]);
  return firing_gaps(of_bank);
}

using Gaps = std::vector<double>;

TEST(Arrangements, CrossPlaneEightFiresEvenlyButNotOnItsBanks) {
  const Arrangement* eight = find_arrangement("vee 8");
  EXPECT_EQ(firing_gaps(firing_degrees(eight->firing_order, eight->at)), Gaps(8, 90));
  EXPECT_EQ(gaps_of_bank("vee 8", 0), (Gaps{270, 180, 90, 180}));
  EXPECT_EQ(gaps_of_bank("vee 8", 1), (Gaps{90, 180, 270, 180}));
  EXPECT_EQ(gaps_of_bank("vee 8 by bank", 0), (Gaps{180, 90, 180, 270}));
}

TEST(Arrangements, EnginesWhoseBanksFireEvenly) {
  for (const int bank : {0, 1}) {
    EXPECT_EQ(gaps_of_bank("vee 8 flat crank", bank), Gaps(4, 180));
    EXPECT_EQ(gaps_of_bank("vee 6", bank), Gaps(3, 240));
    EXPECT_EQ(gaps_of_bank("vee 6, uneven", bank), Gaps(3, 240));
    EXPECT_EQ(gaps_of_bank("boxer 6", bank), Gaps(3, 240));
    EXPECT_EQ(gaps_of_bank("vee 10", bank), Gaps(5, 144));
    EXPECT_EQ(gaps_of_bank("vee 12", bank), Gaps(6, 120));
  }
  EXPECT_EQ(gaps_of_bank("boxer 4", 0), (Gaps{180, 540}));
}

TEST(Arrangements, UnevenOnesKeepTheirGaps) {
  const auto gaps = [](std::string_view name) {
    const Arrangement* a = find_arrangement(name);
    return firing_gaps(firing_degrees(a->firing_order, a->at));
  };
  EXPECT_EQ(gaps("vee 6, uneven"), (Gaps{90, 150, 90, 150, 90, 150}));
  EXPECT_EQ(gaps("vee 2"), (Gaps{270, 450}));
  EXPECT_EQ(gaps("inline 4, cross-plane"), (Gaps{270, 180, 90, 180}));
}

// Every row fires over one cycle only, its own order in rising angle.
TEST(Arrangements, FireWithinOneCycleInTheirOrder) {
  for (const Arrangement& a : arrangements()) {
    const std::vector<double> at = firing_degrees(a.firing_order, a.at);
    double before = -1;
    for (const int cylinder : a.firing_order) {
      const double now = at[static_cast<std::size_t>(cylinder - 1)];
      EXPECT_GT(now, before) << a.name;
      EXPECT_LT(now, 720) << a.name;
      before = now;
    }
  }
}

}  // namespace
}  // namespace pulsewright
