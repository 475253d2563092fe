#include "models/turbine_housing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "solver/orifice.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

const Gas exhaust = perfect_gas(1.33, 287);
const TurbineHousing street{0.63 * 0.0254, 0.0448, 0.064, 0.055, 60 * std::numbers::pi / 180};

// By hand: 16.002 mm x 44.8 mm = 716.9 mm2; pi/4 (55^2 - 16.5^2) mm2 x 0.5 = 1081.0 mm2.
TEST(TurbineHousing, AreasAreThoseOfAHandCalculation) {
  const TurbineAreas areas = housing_areas(street, 1);
  EXPECT_NEAR(areas.scroll_throat, 716.9e-6, 0.1e-6);  // last digit of the hand calculation
  EXPECT_NEAR(areas.rotor, 1081.0e-6, 0.1e-6);
}

TEST(TurbineHousing, TwoScrollsShareTheThroatAndNotTheRotor) {
  const TurbineAreas one = housing_areas(street, 1), two = housing_areas(street, 2);
  EXPECT_DOUBLE_EQ(two.scroll_throat, one.scroll_throat / 2);
  EXPECT_EQ(two.rotor, one.rotor);
}

// 1e-9: pair_flow's own solution is good to 1e-12 in pressure.
TEST(TurbineHousing, CapacityAndAreasAreInversesOfEachOther) {
  for (int scrolls : {1, 2})
    for (double ratio : {1.3, 2.0, 3.5}) {
      const TurbineAreas areas = housing_areas(street, scrolls);
      const CapacityPoint point = capacity_of(areas, scrolls, ratio, exhaust);
      const TurbineAreas again = scaled_to(areas, scrolls, point, exhaust);
      EXPECT_NEAR(again.scroll_throat / areas.scroll_throat, 1, 1e-9) << ratio;
      EXPECT_NEAR(again.rotor / areas.rotor, 1, 1e-9);
    }
}

// The orifice formula, choked: a rotor far wider than the throat leaves one nozzle. 1e-3: what is left of the wide
// rotor's head, (1/30)^2.
TEST(TurbineHousing, BeforeAWideRotorTheThroatChokesLikeAnOrifice) {
  const TurbineAreas areas{5e-4, 30 * 5e-4};
  const double choked = 5e-4 * 101325 / std::sqrt(287 * 288.15) * flow_function(0, 1.33);
  EXPECT_NEAR(capacity_of(areas, 1, 3, exhaust).flow / choked, 1, 1e-3);
}

std::string with_turbine(const std::string& keys) {
  return test::with(test::engine_text, "[turbine]\n",
                    "[turbine]\ninducer = \"64 mm\"\nexducer = \"55 mm\"\n" + keys + "\n");
}

TEST(TurbineHousing, ABareAOverRIsInInches) {
  const auto inches = test::read_engine(with_turbine("a_over_r = 0.63")).turbines[0],
             said = test::read_engine(with_turbine("a_over_r = \"0.63 in\"")).turbines[0],
             metric = test::read_engine(with_turbine("a_over_r = \"16.002 mm\"")).turbines[0];
  EXPECT_EQ(inches.source, TurbineSource::housing);
  EXPECT_NEAR(inches.areas.scroll_throat, 716.9e-6, 0.1e-6);  // by hand, with R_c = 1.4 inducer radii
  for (const TurbineCase* t : {&said, &metric}) {
    EXPECT_NEAR(t->areas.scroll_throat / inches.areas.scroll_throat, 1, 1e-12);
    EXPECT_NEAR(t->capacity.flow / inches.capacity.flow, 1, 1e-12);
  }
}

TEST(TurbineHousing, TheCapacityPointScalesBothNozzles) {
  const std::string point =
      "capacity = { flow = \"0.2 kg/s\", ratio = 2.0, temperature = \"288.15 K\", pressure = \"1.01325 bar\" }";
  const auto drawn = test::read_engine(with_turbine("a_over_r = 0.63")).turbines[0],
             scaled = test::read_engine(with_turbine("a_over_r = 0.63\n" + point)).turbines[0];
  EXPECT_EQ(scaled.source, TurbineSource::housing_and_point);
  const double factor = 0.2 / drawn.capacity.flow;  // both nozzles alike: the flow goes with them
  EXPECT_NEAR(scaled.areas.scroll_throat / drawn.areas.scroll_throat, factor, 1e-9);
  EXPECT_NEAR(scaled.areas.rotor / drawn.areas.rotor, factor, 1e-9);
}

TEST(TurbineHousing, TheWheelRatioFollowsFromTheWheels) {
  const auto t = test::read_engine(with_turbine("") + "[compressor]\nexducer = \"68 mm\"\n").turbines[0];
  EXPECT_DOUBLE_EQ(t.wheel_ratio, 68.0 / 64.0);
  EXPECT_DOUBLE_EQ(test::read_engine(with_turbine("")).turbines[0].wheel_ratio, 1.05);  // the assumed compressor
}

}  // namespace
}  // namespace pulsewright
