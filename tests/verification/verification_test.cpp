// One test for each set of checks; it names every check that misses.

#include <gtest/gtest.h>

#include "tests/verification/all_checks.hpp"

namespace pulsewright {
namespace {

class Published : public testing::TestWithParam<CheckSet> {};

TEST_P(Published, FiguresAreReproduced) {
  const std::vector<Check> checks = run_checks(GetParam());
  EXPECT_FALSE(checks.empty());
  for (const Check& check : checks) EXPECT_TRUE(holds(check)) << describe(check);
}

INSTANTIATE_TEST_SUITE_P(, Published, testing::ValuesIn(all_checks()),
                         [](const testing::TestParamInfo<CheckSet>& set) { return std::string(set.param.name); });

TEST(Check, HoldsWithinItsToleranceOnly) {
  CheckList list("g", "s");
  list.relative(0.01, "r").value("in", 200, 201.9);
  list.value("out", 200, 202.1);
  list.absolute(0.5, "r").value("in", -1, -1.4);
  list.value("out", -1, -1.6);
  list.band("in", 1, 2, 2);
  list.at_least("out", 1, 0.999);
  list.value("nan", 0, std::numeric_limits<double>::quiet_NaN());
  std::vector<bool> held;
  for (const Check& c : list.checks()) held.push_back(holds(c));
  EXPECT_EQ(held, (std::vector<bool>{true, false, true, false, true, false, false}));
}

TEST(Check, TableSkipsWhatTheSourceDoesNotGive) {
  CheckList list("g", "s");
  const double none = std::numeric_limits<double>::quiet_NaN();
  list.table({{"x", "double", "square"}, 1, {{2, 4, 4}, {3, 6, none}}}, [](std::span<const double> key) {
    return std::vector{2 * key[0], key[0] * key[0]};
  });
  EXPECT_EQ(list.checks().size(), 3U);
  EXPECT_EQ(list.checks()[1].name, "square");
  EXPECT_EQ(list.checks()[1].at, "x 2");
}

TEST(Check, ThatCannotBeComputedDoesNotHold) {
  const CheckSet broken = {"broken", []() -> std::vector<Check> { throw std::runtime_error("no"); }, 0};
  ASSERT_EQ(run_checks(broken).size(), 1U);
  EXPECT_FALSE(holds(run_checks(broken)[0]));
}

}  // namespace
}  // namespace pulsewright
