// The parts of an engine that follow from its case by a formula: wheel speed, the restriction behind the turbine, cycles.

#include "models/engine_model.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solver/composition.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::with;

const std::string air_text = "[ambient]\npressure = \"1 bar\"\ntemperature = \"15 degC\"\n";
const std::string coarse_text = with(engine_text, "cell = \"5 mm\"", "cell = \"20 mm\"") + air_text;
const std::string without_downpipe = coarse_text.substr(0, coarse_text.find("[[duct]]")) + air_text;

// Air as a perfect gas, c_p 1005 J/(kg K), from 288.15 K over a pressure ratio of 2, no cooler behind it. 0.5 %: c_p of air rises by 0.4 % up to
// the 350 K behind the compressor.
TEST(EngineModel, CompressorWorkIsTheIsentropicRiseOverTheEfficiency) {
  const EngineCase engine = read_engine(coarse_text + "[cooler]\npressure_drop = \"0 bar\"\n");
  const double ideal = 1005 * 288.15 * (std::pow(2.0, 0.4 / 1.4) - 1);
  EXPECT_NEAR(EngineModel(engine, 3000).compressor_work() * engine.charge.compressor_efficiency / ideal, 1, 5e-3);
}

TEST(EngineModel, TipSpeedIsTheCompressorsOverTheRatioOfTheWheels) {
  const EngineCase engine = read_engine(coarse_text);
  const EngineModel model(engine, 3000);
  const double compressor_tip = std::sqrt(model.compressor_work() / engine.charge.work_coefficient);
  EXPECT_NEAR(model.tip_speed(), compressor_tip / engine.turbines[0].wheel_ratio, 1e-9);  // rounding
  ASSERT_EQ(model.turbines().size(), 1u);
  EXPECT_EQ(model.turbines()[0]->tip_speed(), model.tip_speed());
  EXPECT_GT(model.tip_speed(), 150);  // what turbos of cars run at, common practice
  EXPECT_LT(model.tip_speed(), 450);
}

TEST(EngineModel, WithoutBoostTheWheelTakesNoWork) {
  const EngineCase engine = read_engine(with(coarse_text, "\"1.0 bar\"", "\"0 bar\""));
  const EngineModel model(engine, 3000);
  EXPECT_EQ(model.compressor_work(), 0);
  EXPECT_EQ(model.tip_speed(), 0);
  EXPECT_EQ(model.intake_pressure(), 1e5);
}

/// Area of the restriction to the air behind the turbine.
double exit_area(const EngineCase& engine) { return EngineModel(engine, 3000).turbines()[0]->spec().exit_area; }

// Saint-Venant and Wantzel's formula for the flow of a nozzle: at the design flow the area costs the stated drop.
TEST(EngineModel, ExitAreaPassesTheDesignFlowAtTheSilencersDrop) {
  const EngineCase engine = read_engine(without_downpipe);
  const Gas gas = mixture_gas(engine.engine.fuel, engine.engine.lambda);
  const double air =
      0.95 * engine.engine.displacement() * 2e5 / (gas_constant(gas, 0) * engine.charge.temperature) * 7500 / 120;
  const double flow = air * (1 + 1 / (0.85 * stoichiometric_air_fuel_ratio(engine.engine.fuel)));
  const double g = heat_ratio(gas, 1000, 1), R = gas_constant(gas, 1), p0 = 1e5 + engine.silencer.pressure_drop,
               r = 1e5 / p0;
  const double per_area =
      p0 / std::sqrt(R * 1000) * std::sqrt(2 * g / (g - 1) * (std::pow(r, 2 / g) - std::pow(r, (g + 1) / g)));
  EXPECT_NEAR(exit_area(engine) * per_area / flow, 1, 1e-6);  // the same formula, evaluated elsewhere
}

TEST(EngineModel, ADrawnDownpipeHasTheRestrictionAtItsOwnEnd) {
  EXPECT_GT(exit_area(read_engine(coarse_text)), 100 * exit_area(read_engine(without_downpipe)));  // as good as none
}

TEST(EngineModel, ACycleEndsWhenCylinderOneFiresAgain) {
  const EngineCase engine = read_engine(coarse_text);
  EngineModel model(engine, 6000);
  long steps = 0;
  for (int k = 1; k <= 2; ++k) {
    model.cycle([&] { ++steps; });
    EXPECT_EQ(model.cycles(), k);
    EXPECT_NEAR(model.network().time(), k * 120.0 / 6000, 1e-12);  // rounding of some thousand steps
  }
  EXPECT_EQ(steps, model.network().steps());
}

TEST(EngineModel, HasItsCylindersInOrder) {
  const EngineCase engine = read_engine(coarse_text);
  const EngineModel model(engine, 3000);
  ASSERT_EQ(model.cylinders().size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(model.cylinders()[i]->spec().name, "cylinder " + std::to_string(i + 1));
}

}  // namespace
}  // namespace pulsewright
