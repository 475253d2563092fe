#include "models/compressor.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solver/composition.hpp"

namespace pulsewright {
namespace {

EngineCase cool_case() {
  EngineCase engine{};
  engine.ambient = {1e5, 293};
  engine.charge.boost_gauge = 1e5;
  engine.charge.temperature = 323;
  engine.charge.compressor_efficiency = 0.7;
  engine.charge.work_coefficient = 0.7;
  engine.charge.cooler_drop = 0.08e5;
  engine.charge.full_flow = 0.3;
  return engine;
}
const Gas air = perfect_gas(1.4, 287);

// cp T ((1 + (b + dp)/p)^((g-1)/g) - 1)/eta of a perfect gas, exactly.
TEST(Compressor, WorksAgainstBoostAndCooler) {
  const double work = 1004.5 * 293 * (std::pow(2.08, 0.4 / 1.4) - 1) / 0.7;
  EXPECT_NEAR(compressor_point(cool_case(), air, 1e5, 0.3).work / work, 1, 1e-9);
  EXPECT_NEAR(compressor_point(cool_case(), air, 1e5, 0.15).pressure_ratio, 2.02, 1e-12);  // a quarter of the drop
}

TEST(Compressor, DoesNothingWithoutBoost) {
  EXPECT_EQ(compressor_point(cool_case(), air, 0, 0.3).work, 0);
  EXPECT_EQ(compressor_point(cool_case(), air, -2e4, 0.3).rise, 0);
}

// The inverse to the tolerance of the gas's own inverse.
TEST(Compressor, BoostFromItsWorkIsTheBoostItWorkedFor) {
  for (double boost : {0.05e5, 0.4e5, 1e5, 2.5e5}) {
    const double work = compressor_point(cool_case(), air, boost, 0.25).work;
    EXPECT_NEAR(boost_from_work(cool_case(), air, work, 0.25) / boost, 1, 1e-6);
  }
}

TEST(Compressor, WarmsTheChargeInProportionToItsOwnRise) {
  const EngineCase engine = cool_case();
  EXPECT_EQ(charge_temperature_at(engine, air, 1e5, 0.2), 323);
  EXPECT_NEAR(charge_temperature_at(engine, air, 0, 0.2), 293, 1e-9);
  const double share = compressor_point(engine, air, 0.5e5, 0.2).rise / compressor_point(engine, air, 1e5, 0.2).rise;
  EXPECT_NEAR(charge_temperature_at(engine, air, 0.5e5, 0.2), 293 + 30 * share, 1e-9);
}

TEST(Compressor, LeavesTheChargeAsGivenWhereTheCaseAsksForNoBoost) {
  EngineCase engine = cool_case();
  engine.charge.boost_gauge = 0;
  EXPECT_EQ(charge_temperature_at(engine, air, 0, 0.2), 323);
}

}  // namespace
}  // namespace pulsewright
