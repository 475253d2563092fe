#include "solver/fuel.hpp"

#include <gtest/gtest.h>

#include "shared/error.hpp"
#include "solver/composition.hpp"

namespace pulsewright {
namespace {

// 1e-12: rounding of means whose one weight is zero.
TEST(EthanolBlend, EndsAreTheFuelsThemselves) {
  for (const auto& [share, name] : {std::pair{0.0, "petrol"}, std::pair{1.0, "ethanol"}}) {
    const Fuel blend = ethanol_blend(share), fuel = *find_fuel(name);
    EXPECT_NEAR(blend.hydrogen_per_carbon, fuel.hydrogen_per_carbon, 1e-12);
    EXPECT_NEAR(blend.oxygen_per_carbon, fuel.oxygen_per_carbon, 1e-12);
    EXPECT_NEAR(blend.lower_heating_value / fuel.lower_heating_value, 1, 1e-12);
    EXPECT_NEAR(stoichiometric_air_fuel_ratio(blend) / stoichiometric_air_fuel_ratio(fuel), 1, 1e-12);
  }
}

// The air that a blend needs is the sum of what its parts need, by mass: nothing is lost in the mean formula. 1e-12: rounding.
TEST(EthanolBlend, NeedsTheAirOfItsParts) {
  const Fuel petrol = *find_fuel("petrol"), ethanol = *find_fuel("ethanol");
  for (const double share : {0.1, 0.5, 0.85}) {
    const double w = share * ethanol.density / (share * ethanol.density + (1 - share) * petrol.density);
    const double parts = w * stoichiometric_air_fuel_ratio(ethanol) + (1 - w) * stoichiometric_air_fuel_ratio(petrol);
    EXPECT_NEAR(stoichiometric_air_fuel_ratio(ethanol_blend(share)) / parts, 1, 1e-12);
  }
}

// E85 needs 9.8 kg of air a kg, E10 14.0 (usual figures of the trade, rounded there to 0.1: petrol's make-up varies).
TEST(EthanolBlend, E85AndE10NeedTheUsualAir) {
  EXPECT_NEAR(stoichiometric_air_fuel_ratio(ethanol_blend(0.85)), 9.8, 0.1);
  EXPECT_NEAR(stoichiometric_air_fuel_ratio(ethanol_blend(0.10)), 14.0, 0.1);
}

TEST(ParseFuel, TakesNamesAndPerCentsOfEthanol) {
  EXPECT_EQ(parse_fuel("petrol").name, "petrol");
  EXPECT_EQ(parse_fuel(" Methanol ").name, "methanol");
  EXPECT_EQ(parse_fuel("E85").name, "E85");
  EXPECT_EQ(parse_fuel("e27.5").name, "E27.5");
  EXPECT_EQ(parse_fuel("E85").lower_heating_value, ethanol_blend(0.85).lower_heating_value);
}

TEST(ParseFuel, RefusesWhatItDoesNotKnow) {
  for (const char* text : {"", "E", "E101", "E-5", "Enan", "E85x", "kerosene", "85"})
    EXPECT_THROW(parse_fuel(text), Error) << text;
}

}  // namespace
}  // namespace pulsewright
