#include "models/threshold.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

EngineCase balanced_case() {
  EngineCase engine{};
  engine.charge.boost_gauge = 1e5;
  engine.run.boost = BoostMode::balanced;
  return engine;
}

std::vector<SpeedResult> speeds(const std::vector<std::pair<double, double>>& boost_at) {
  std::vector<SpeedResult> list;
  for (const auto& [rpm, boost] : boost_at) {
    list.emplace_back();
    list.back().rpm = rpm, list.back().settled = true, list.back().boost_gauge = boost;
  }
  return list;
}

TEST(Threshold, LiesOnTheLineBetweenTheSpeedsAroundIt) {
  const Threshold t = boost_threshold(balanced_case(), speeds({{4000, 1e5}, {2000, 0.3e5}, {3000, 0.7e5}}));
  ASSERT_TRUE(t.rpm);
  EXPECT_NEAR(*t.rpm, 3000 + 1000 * 0.2 / 0.3, 1e-9);  // the order of the speeds does not matter
  EXPECT_EQ(t.low, 3000);
  EXPECT_EQ(t.high, 4000);
}

TEST(Threshold, IsNoneWithItsReasonWhereNoPairOfSpeedsLiesAroundIt) {
  const Threshold above = boost_threshold(balanced_case(), speeds({{2000, 1e5}, {3000, 1e5}}));
  const Threshold below = boost_threshold(balanced_case(), speeds({{2000, 0.1e5}, {3000, 0.2e5}}));
  EXPECT_FALSE(above.rpm);
  EXPECT_NE(above.reason.find("at or below 2000 rpm"), std::string::npos) << above.reason;
  EXPECT_FALSE(below.rpm);
  EXPECT_NE(below.reason.find("above 3000 rpm"), std::string::npos) << below.reason;
}

TEST(Threshold, PassesOverSpeedsThatDidNotSettle) {
  auto list = speeds({{2000, 0.3e5}, {2500, 2e5}, {3000, 1e5}});
  list[1].settled = false;
  EXPECT_EQ(boost_threshold(balanced_case(), list).high, 3000);
}

TEST(Threshold, IsNoneWhereBoostIsImposed) {
  EngineCase engine = balanced_case();
  engine.run.boost = BoostMode::given;
  const Threshold t = boost_threshold(engine, speeds({{2000, 0.3e5}, {3000, 1e5}}));
  EXPECT_FALSE(t.rpm);
  EXPECT_FALSE(t.reason.empty());
}

}  // namespace
}  // namespace pulsewright
