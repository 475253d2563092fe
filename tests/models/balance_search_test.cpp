#include "models/balance_search.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

const SearchRange lever{0.02, 5, {1, 2}, 4, 0.35, 1e-3};

/// Answers until nothing moves; the number of answers.
template <class Balance>
int searched(BalanceSearch& search, Balance balance) {
  int answers = 1;
  while (search.answer(balance(search.position())) && answers < 100) ++answers;
  return answers;
}

TEST(BalanceSearch, FindsARootInFewAnswers) {
  BalanceSearch search(lever, 0.15);
  EXPECT_LE(searched(search, [](double x) { return std::log(0.6 / x); }), 8);
  EXPECT_NEAR(search.position(), 0.6, 1e-3);  // of the closeness over a slope of about 1.7
}

// Falls through 0 at 0.3, rises again at 0.5 and falls at 0.9: from below only the first is right.
TEST(BalanceSearch, FromBelowFindsTheLowestOfThreeRoots) {
  BalanceSearch search(lever, 0.15);
  searched(search, [](double x) { return -4 * (x - 0.3) * (x - 0.5) * (x - 0.9) / 0.3; });
  EXPECT_NEAR(search.position(), 0.3, 5e-3);
}

TEST(BalanceSearch, LandsOnAKinkBeforeItPassesIt) {
  BalanceSearch search(lever, 0.8);
  bool landed = false;
  for (int i = 0; i < 20; ++i) {
    EXPECT_TRUE(landed || search.position() <= 1);
    landed = landed || search.position() == 1;
    search.answer(search.position() <= 1 ? 0.8 : 0.8 - 2 * (search.position() - 1));
  }
  EXPECT_NEAR(search.position(), 1.4, 1e-3);
}

TEST(BalanceSearch, SaysWhichEndItIsPressedAgainst) {
  BalanceSearch up(lever, 3), down(lever, 0.4);
  searched(up, [](double) { return 1.0; });
  searched(down, [](double) { return -1.0; });
  EXPECT_TRUE(up.at_high_end());
  EXPECT_TRUE(down.at_low_end());
}

// Each answer is still a third of the way behind: the gas has not settled when it is asked.
TEST(BalanceSearch, ComesToRestThoughAnswersLag) {
  BalanceSearch search(lever, 0.15);
  double seen = 0.15;
  for (int i = 0; i < 60; ++i) {
    seen += 0.67 * (search.position() - seen);
    search.answer(std::log(0.7 / seen));
  }
  EXPECT_TRUE(search.close());
  EXPECT_NEAR(search.position(), 0.7, 2e-3);
}

}  // namespace
}  // namespace pulsewright
