// What a hot tube gives off, against published figures.

#include "models/outside_heat.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace pulsewright {
namespace {

const Gas gas = mixture_gas(*find_fuel("petrol"), 0.85);

// T. L. Bergman, A. S. Lavine, F. P. Incropera, D. P. DeWitt, Introduction to Heat Transfer, 6th ed. 2011: example 9.2 works
// out this cylinder, example 7.3 the blown one; both figures second hand, as an open library recomputes them.
TEST(OutsideHeat, NaturalConvectionAgreesWithPublishedFigures) {
  EXPECT_NEAR(natural_nusselt(0.69 * 2.63e9, 0.69), 139.13493970073597, 1e-9);  // rounding
}

TEST(OutsideHeat, BlownTubeAgreesWithPublishedFigures) {
  EXPECT_NEAR(blown_nusselt(6071, 0.7), 40.63708594124974, 1e-9);  // rounding
}

// A horizontal steam pipe of 0.1 m, 165 degC, emissivity 0.85, in a room of 23 degC loses 325 W/m to the air and 441 W/m by
// radiation (Incropera and DeWitt, the chapter's example; figures from memory). 1.5 %: their air's data are rounded.
TEST(OutsideHeat, SteamPipeLosesWhatTheTextbookSays) {
  const EngineBay room{296, 0, 101325};
  const double around = std::numbers::pi * 0.1;
  EXPECT_NEAR(around * outside_coefficient(0.1, 438, room, gas) * 142 / 325, 1, 0.015);
  EXPECT_NEAR(around * outside_heat_flux(0.1, 438, 0.85, room, gas) / 766, 1, 0.015);
}

TEST(OutsideHeat, ATubeAsWarmAsTheBayLosesNothing) {
  EXPECT_NEAR(outside_heat_flux(0.04, 330, 0.8, EngineBay{}, gas), 0, 1e-9);
}

TEST(OutsideHeat, MovingAirTakesMoreAndStillAirIsItsLimit) {
  EngineBay bay;
  double last = outside_coefficient(0.042, 1000, bay, gas);
  const double still = last;
  for (const double speed : {1e-6, 0.5, 2.0, 10.0}) {
    bay.air_speed = speed;
    const double now = outside_coefficient(0.042, 1000, bay, gas);
    if (speed < 1e-3)
      EXPECT_NEAR(now / still, 1, 1e-3);  // 0.3 of a Nusselt number of 9, to the fourth power
    else
      EXPECT_GT(now, last);
    last = now;
  }
}

}  // namespace
}  // namespace pulsewright
