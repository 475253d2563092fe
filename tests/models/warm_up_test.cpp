// Cold metal on its way to its settled temperature.

#include "models/warm_up.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::with;

const Gas gas = mixture_gas(*find_fuel("petrol"), 0.85);
const EngineBay bay{};

/// Metal whose properties do not change with temperature.
const Alloy plain_metal{"plain", "", 8000, {300, 20, 1300, 20}, {300, 500, 1300, 500}, 17e-6, 17e-6, 17e-6, 1200};

// Wrapped so that nothing leaves: T = T_gas - (T_gas - T_0) exp(-t hA/(m c)). 0.1 K of 1000: the midpoint rule at a tenth of
// the response time errs by a six-hundredth of the last step, and 1e-5 W/(m K) lets next to nothing through.
TEST(WarmUp, AWallThatLosesNothingFollowsTheExponential) {
  const TubePiece piece{0.1, 0.0366, {2.8e-3, &plain_metal, 0, {"", 0.1, 1e-5}}};
  const GasSide inside{2.5, 2.5 * 1250};
  const double mc = piece.metal_mass() * 500;
  for (const double t : {1.0, 10.0, 60.0, 300.0})
    EXPECT_NEAR(warmed({piece, inside, bay, gas}, 300, t), 1250 - 950 * std::exp(-t * 2.5 / mc), 1.0) << t;
}

TEST(WarmUp, InALongTimeTheBalanceIsReached) {
  const TubePiece piece{0.1, 0.0366, {2.8e-3, &find_alloy("304"), 0.8, {}}};
  const GasSide inside{2.5, 2.5 * 1250};
  EXPECT_NEAR(warmed({piece, inside, bay, gas}, 300, 3000), balanced_wall(piece, inside, bay, gas).inside, 0.01);
}

TEST(WarmUp, HalfWayTwiceIsTheWholeWay) {  // 0.2 K: the rule's own error at a tenth of the response time
  const TubePiece piece{0.1, 0.0366, {2.8e-3, &find_alloy("304"), 0.8, {}}};
  const Heating heating{piece, {2.5, 2.5 * 1250}, bay, gas};
  EXPECT_NEAR(warmed(heating, warmed(heating, 300, 15), 15), warmed(heating, 300, 30), 0.2);
}

TEST(WarmUp, ManifoldComesFromColdToItsSettledTemperature) {
  const EngineCase engine = read_engine(with(engine_text, "cell = \"5 mm\"", "cell = \"20 mm\""));
  EngineModel model(engine, 4500);
  for (int k = 0; k < 10; ++k) model.cycle([] {});
  const WarmUp w = warm_up(model, 600, [] {});
  ASSERT_EQ(w.time.front(), 0);
  EXPECT_NEAR(w.time.back(), 600, 1e-9);
  for (const WarmUpPiece& p : w.pieces) {
    ASSERT_EQ(p.temperature.size(), w.time.size());
    EXPECT_EQ(p.temperature.front(), engine.ambient.temperature);
    for (std::size_t k = 1; k < p.temperature.size(); ++k)
      EXPECT_GT(p.temperature[k], p.temperature[k - 1] - 1) << p.name << w.time[k];  // 1 K: a cycle's own unrest
    // 1 %: ten minutes are several times the response even of the cast housing; both runs have their unrest of 0.1 %
    EXPECT_NEAR(p.temperature.back() / p.settled, 1, 0.01) << p.name;
    ASSERT_TRUE(p.time_to_90_per_cent) << p.name;
    EXPECT_GT(*p.time_to_90_per_cent, 2) << p.name;
    EXPECT_LT(*p.time_to_90_per_cent, 400) << p.name;
  }
}

}  // namespace
}  // namespace pulsewright
