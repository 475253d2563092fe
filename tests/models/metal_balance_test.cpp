// The heat through a piece of tube.

#include "models/metal_balance.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "tests/models/hand_balance.hpp"

namespace pulsewright {
namespace {

const Gas gas = mixture_gas(*find_fuel("petrol"), 0.85);
const EngineBay bay{};

TubePiece bare_piece() { return {0.1, 0.0366, {2.8e-3, &find_alloy("304"), 0.8, {}}}; }

TubePiece wrapped_piece() {
  TubePiece piece = bare_piece();
  piece.metal.wrap = {"", 3e-3, 0.15};
  return piece;
}

test::HandTube by_hand(const TubePiece& p, double k) {
  return {p.length, p.inside_diameter,         p.outside_diameter(), p.skin_diameter(),
          k,        p.metal.wrap.conductivity, p.metal.emissivity,   bay.temperature};
}

/// Gas of 1250 K with a mean coefficient h on the inside.
GasSide gas_side(const TubePiece& p, double h) {
  const double hA = h * std::numbers::pi * p.inside_diameter * p.length;
  return {hA, hA * 1250};
}

// 1.5 K: the hand balance takes Sutherland's air (2 % off in viscosity at the film) and one conductivity of the metal.
TEST(MetalBalance, AgreesWithABalanceByHand) {
  for (const TubePiece& piece : {bare_piece(), wrapped_piece()})
    for (const double h : {80.0, 200.0, 400.0}) {
      const GasSide inside = gas_side(piece, h);
      EXPECT_NEAR(balanced_wall(piece, inside, bay, gas).inside,
                  test::hand_metal(by_hand(piece, 26), inside.conductance, 1250), 1.5)
          << h;
    }
}

TEST(MetalBalance, WhatComesInGoesOut) {
  const GasSide inside = gas_side(bare_piece(), 200);
  const WallState wall = balanced_wall(bare_piece(), inside, bay, gas);
  EXPECT_NEAR(inside.heat_in(wall.inside) / wall.heat, 1, 1e-6);  // the root's tolerance, 1e-6 K of some 200 K
  EXPECT_NEAR(wall_with_inside(bare_piece(), wall.inside, bay, gas).heat / wall.heat, 1, 1e-6);
  EXPECT_GT(wall.inside, wall.outside);
  EXPECT_EQ(wall.outside, wall.skin);  // bare
}

TEST(MetalBalance, WrapMakesMetalHotterAndItsOwnSkinColder) {
  const WallState bare = balanced_wall(bare_piece(), gas_side(bare_piece(), 200), bay, gas);
  const WallState wrapped = balanced_wall(wrapped_piece(), gas_side(bare_piece(), 200), bay, gas);
  EXPECT_GT(wrapped.inside, bare.inside + 40);
  EXPECT_LT(wrapped.skin, bare.skin - 40);
  EXPECT_LT(wrapped.heat, 0.8 * bare.heat);
}

TEST(MetalBalance, WithoutAnyExchangeTheWallIsAsColdAsTheBay) {
  EXPECT_NEAR(balanced_wall(bare_piece(), {}, bay, gas).inside, bay.temperature, 1e-6);
}

TEST(MetalBalance, GasColderThanTheBayIsWarmedThroughTheWall) {
  const TubePiece piece = bare_piece();
  const GasSide inside{2, 2 * 300};  // 300 K
  const WallState wall = balanced_wall(piece, inside, bay, gas);
  EXPECT_LT(wall.heat, 0);
  EXPECT_GT(wall.inside, 300);
  EXPECT_LT(wall.inside, bay.temperature);
}

TEST(MetalBalance,
     NoSkinAtAllLosesNoHeat) {  // emissivity 0 and an endless wrap: the wall comes to the gas's temperature
  TubePiece piece = bare_piece();
  piece.metal.emissivity = 0;
  piece.metal.wrap = {"", 0.05, 1e-4};
  EXPECT_NEAR(balanced_wall(piece, gas_side(piece, 200), bay, gas).inside, 1250, 2);  // what 1e-4 W/(m K) lets through
}

// h 400 W/(m2 K), 2.8 mm, 26 W/(m K): 0.04. Below 0.1 one temperature stands for the wall (textbook rule).
TEST(MetalBalance, StockTubeIsThinEnoughForOneTemperature) { EXPECT_LT(biot_number(bare_piece(), 400, 1000), 0.1); }

TEST(MetalBalance,
     MassIsThatOfTheTube) {  // NPS 1-1/4 sch 10S weighs 2.7 kg/m (ASME B36.19M: 2.69 for stainless at 7.95)
  TubePiece piece{1, 0.0422 - 2 * 2.77e-3, {2.77e-3, &find_alloy("304"), 0.8, {}}};
  EXPECT_NEAR(piece.metal_mass(), 2.72, 0.05);
}

}  // namespace
}  // namespace pulsewright
