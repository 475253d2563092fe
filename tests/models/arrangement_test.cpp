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

}  // namespace
}  // namespace pulsewright
