// Tube advice: only what can be bought, near the port, with the gas speed worked out by hand.

#include "models/tube_advice.hpp"

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

bool is_stock(const std::string& name) {
  return std::ranges::any_of(stock_pipes(), [&](const StockPipe& p) { return p.tube().name == name; });
}

// 86 mm of stroke at 7500 rpm: the piston runs 2 x 0.086 x 125 = 21.5 m/s in the mean; a bore of 43 mm is half of 86.
TEST(TubeAdvice, GasSpeedIsThePistonsTimesTheRatioOfAreas) {
  EXPECT_NEAR(gas_speed_at_redline(read_engine(engine_text).engine, 0.043), 4 * 21.5, 1e-9);
}

// Oval 36 x 28 (two half rounds of 28 and 8 mm between): area pi/4 28^2 + 8 x 28 = 839.75 mm2, 32.70 mm round.
TEST(TubeAdvice, ThePortCountsAsGivenElseByItsValves) {
  EXPECT_NEAR(port_bore(read_engine(engine_text).engine), 32.70e-3, 0.01e-3);
  const EngineCase bare = read_engine(with(engine_text, "exit = \"oval 36 mm x 28 mm\"", ""));
  EXPECT_NEAR(port_bore(bare.engine), equal_area_bore(throat_area(bare.engine.exhaust.shape)), 1e-12);
}

TEST(TubeAdvice, TwoOrThreeStockTubesTheNearestAboveThePortAmongThem) {
  for (const int bore_mm : {66, 72, 77, 82, 86, 93, 100, 108, 120}) {
    const EngineCase c =
        read_engine(with(with(engine_text, "bore = \"86 mm\"", "bore = \"" + std::to_string(bore_mm) + " mm\""),
                         "exit = \"oval 36 mm x 28 mm\"", ""));
    const auto tubes = tubes_to_try(c.engine);
    const double port = port_bore(c.engine);
    EXPECT_GE(tubes.size(), 2u) << bore_mm;
    EXPECT_LE(tubes.size(), 3u) << bore_mm;
    EXPECT_TRUE(std::ranges::is_sorted(tubes, std::less<>(), [](const TubeChoice& t) { return t.tube.bore(); }));
    const std::string fits = stock_pipe_above(port).tube().name;
    EXPECT_TRUE(std::ranges::any_of(tubes, [&](const TubeChoice& t) { return t.tube.name == fits; })) << bore_mm;
    for (const TubeChoice& t : tubes) {
      EXPECT_TRUE(is_stock(t.tube.name)) << t.tube.name;
      EXPECT_GT(t.tube.bore(), 0.85 * port);
      EXPECT_LT(t.tube.bore(), 1.5 * port);
      EXPECT_FALSE(t.reason.empty());
    }
  }
}

TEST(TubeAdvice, NoPipeNearAPortBeyondTheTableIsSaidNotInvented) {
  const EngineCase ship = read_engine(with(engine_text, "oval 36 mm x 28 mm", "round 140 mm"));
  EXPECT_TRUE(tubes_to_try(ship.engine).empty());
  EXPECT_TRUE(says(tube_advice_text(ship), {"No pipe of the table", "as drawn"}));
}

TEST(TubeAdvice, ShowsBoreWallSpeedAndReasonBesideWhatIsDrawn) {
  // 36.66 mm: 21.5 x (86/36.66)^2 = 118 m/s.
  EXPECT_TRUE(says(tube_advice_text(read_engine(engine_text)),
                   {"NPS 1-1/4 sch 10S", "36.7 mm", "2.77 mm", "118 m/s", "a round hole of 32.7 mm", "+4.0 mm",
                    "(drawn)", "common practice, no source"}));
}

}  // namespace
}  // namespace pulsewright
