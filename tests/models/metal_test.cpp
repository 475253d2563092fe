// The pieces of a manifold and their heat.

#include "models/metal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "models/engine_model.hpp"
#include "tests/models/case_text.hpp"
#include "tests/models/hand_balance.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::with;

const std::string coarse_text = with(engine_text, "cell = \"5 mm\"", "cell = \"20 mm\"");

TEST(Metal, PiecesCoverEveryDuctOnce) {
  const EngineCase engine = read_engine(coarse_text);
  const auto pieces = metal_pieces(engine.plan);
  std::size_t k = 0;
  for (std::size_t d = 0; d < engine.plan.ducts.size(); ++d) {
    double at = 0;
    for (; k < pieces.size() && pieces[k].duct == static_cast<int>(d); ++k) {
      EXPECT_NEAR(pieces[k].from, at, 1e-12);
      EXPECT_LE(pieces[k].to - pieces[k].from, 0.1125 + 1e-9);  // one and a half times the piece that is aimed at
      EXPECT_NEAR(pieces[k].name_to - pieces[k].name_from, pieces[k].to - pieces[k].from, 1e-12);
      at = pieces[k].to;
    }
    EXPECT_NEAR(at, engine.plan.ducts[d].drawing.length(), 1e-12);
  }
  EXPECT_EQ(k, pieces.size());
}

TEST(Metal, PortsKeepTheirGivenTemperatureAndTubesAreComputed) {
  for (const MetalPiece& piece : metal_pieces(read_engine(coarse_text).plan))
    EXPECT_EQ(piece.computed, !piece.name.starts_with("port ")) << piece.name;
}

TEST(Metal, ATemperatureThatIsGivenStays) {
  EngineCase engine = read_engine(with(coarse_text, "[each_primary]", "[each_primary]\nwall_temperature = \"900 K\""));
  EngineModel model(engine, 3000);
  for (int k = 0; k < 2; ++k) model.cycle([] {});
  for (const MetalPiece& piece : model.metal().pieces())
    if (piece.name.starts_with("primary")) {
      EXPECT_FALSE(piece.computed);
      EXPECT_EQ(piece.temperature, 900);
    }
}

TEST(Metal, HeldMetalDoesNotMove) {
  const EngineCase engine = read_engine(coarse_text);
  EngineModel model(engine, 3000);
  model.metal().hold(true);
  model.cycle([] {});
  for (const MetalPiece& piece : model.metal().pieces()) EXPECT_EQ(piece.temperature, piece.temperature_before);
}

// The walls move between the cycles, never within one: rounding alone is left, some 1e4 steps and cells of 1e-16.
TEST(Metal, WhatTheGasLosesIsWhatThePiecesGet) {
  const EngineCase engine = read_engine(coarse_text);
  EngineModel model(engine, 3000);
  for (int k = 0; k < 3; ++k) {
    const double before = model.network().heat_taken();
    model.cycle([] {});
    const double lost = before - model.network().heat_taken();
    double got = 0;
    for (const MetalPiece& piece : model.metal().pieces())
      got += piece.gas_side.heat_in(piece.temperature_before) * model.cycle_time();
    EXPECT_NEAR(got / lost, 1, 1e-10);
  }
}

class SettledMetal : public testing::Test {
 protected:
  static constexpr int cycles = 14;  // the metal of the first guess is forgotten by a factor of five a cycle or faster
  SettledMetal() {
    for (int k = 0; k < cycles; ++k) model.cycle([] {});
  }
  const EngineCase engine = read_engine(coarse_text);
  EngineModel model{engine, 4500};
};

TEST_F(SettledMetal, BareRunnerHasTheTemperatureOfABalanceByHand) {
  int seen = 0;
  for (const MetalPiece& p : model.metal().pieces()) {
    if (!p.name.starts_with("primary")) continue;
    const TubePiece& t = p.tube;
    const test::HandTube tube{t.length, t.inside_diameter,     t.outside_diameter(), t.skin_diameter(), 26, 1,
                              0.8,      engine.bay.temperature};
    // 2 K: Sutherland's air in the hand balance, one conductivity of the metal.
    EXPECT_NEAR(p.temperature, test::hand_metal(tube, p.gas_side.conductance, p.gas_side.gas_temperature()), 2)
        << p.name;
    ++seen;
  }
  EXPECT_GT(seen, 12);
}

TEST_F(SettledMetal, HeatThroughTheWallIsTheHeatThatLeavesIt) {
  for (const MetalPiece& p : model.metal().pieces()) {
    if (!p.computed) continue;
    const WallState wall = wall_with_inside(p.tube, p.temperature_before, engine.bay, model.network().gas());
    // 0.2 %: what is left of the approach after these cycles, in the engine as in the metal
    EXPECT_NEAR(p.gas_side.heat_in(p.temperature_before) / wall.heat, 1, 2e-3) << p.name << p.name_from;
  }
}

TEST_F(SettledMetal, MetalLiesBetweenTheBayAndTheGas) {
  for (const MetalPiece& p : model.metal().pieces())
    if (p.computed) {
      EXPECT_GT(p.temperature, engine.bay.temperature + 100) << p.name;
      EXPECT_LT(p.temperature, p.gas_side.gas_temperature()) << p.name;
    }
}

TEST_F(SettledMetal, AnotherRunOfTheSameCaseGivesTheSameNumbers) {
  EngineModel again(engine, 4500);
  for (int k = 0; k < cycles; ++k) again.cycle([] {});
  for (std::size_t k = 0; k < again.metal().pieces().size(); ++k)
    EXPECT_EQ(again.metal().pieces()[k].temperature, model.metal().pieces()[k].temperature);
}

}  // namespace
}  // namespace pulsewright
