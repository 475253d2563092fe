// What a run says about its metal.

#include "models/metal_figures.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "models/describe.hpp"
#include "models/engine_run.hpp"
#include "models/settle.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::with;

const std::string coarse_text = with(engine_text, "cell = \"5 mm\"", "cell = \"20 mm\"");

SpeedResult run(const std::string& text) {
  const EngineCase engine = read_engine(text);
  return run_speed(engine, 3000);
}

const SpeedResult& bare() {
  static const SpeedResult result = run(coarse_text);
  return result;
}

double hottest(const SpeedResult& s, const std::string& name) {
  return std::ranges::find(s.metal.runners, name, &RunnerFigures::name)->hottest;
}

// The metal is watched like every other figure: when the run has settled, what goes in comes out. 0.1 % is the settling
// bound on a temperature; the heat through the wall follows it about threefold.
TEST(MetalFigures, HeatThroughTheWallLeavesIt) {
  ASSERT_TRUE(bare().settled);
  EXPECT_NEAR(bare().metal.heat_in / bare().metal.heat_out, 1, 3e-3);
  EXPECT_GT(bare().metal.heat_in, 1000);  // W: a manifold at load gives off kilowatts
}

// Ports included, all that the ducts lost in the cycle. Rounding.
TEST(MetalFigures, PiecesTogetherGetWhatTheDuctsLost) {
  double sum = 0;
  for (const PieceFigures& p : bare().metal.pieces) sum += p.heat_in;
  EXPECT_NEAR(sum * 120 / bare().rpm / bare().energy.duct_wall_heat, 1, 1e-9);
}

TEST(MetalFigures, GasCoolsAlongARunnerAndMetalIsColderThanGas) {
  double last = 1e9;
  for (const PieceFigures& p : bare().metal.pieces) {
    if (p.name != "primary 1") continue;
    EXPECT_LT(p.gas_temperature, last + 1);  // 1 K: the record is single precision, its samples half a degree apart
    EXPECT_LT(p.wall_temperature, p.gas_temperature);
    last = p.gas_temperature;
  }
  EXPECT_LT(last, 1e9);
}

// Independent of the pieces' own flow means: the figure of the cylinder at the head face. 10 K: the first piece's middle lies
// some 15 mm behind that face.
TEST(MetalFigures, GasAtTheFlangeIsTheGasThatLeavesTheHead) {
  const auto first = std::ranges::find(bare().metal.pieces, "primary 1", &PieceFigures::name);
  EXPECT_NEAR(first->gas_temperature, bare().cylinders[0].temperature, 10);
}

TEST(MetalFigures, WrapMakesMetalAndGasHotter) {
  const SpeedResult wrapped = run(with(coarse_text, "[each_primary]", "[each_primary]\nwrap = \"glass wrap\""));
  EXPECT_GT(hottest(wrapped, "primary 1"), hottest(bare(), "primary 1") + 30);
  EXPECT_GT(wrapped.turbine[0].temperature_flow_mean, bare().turbine[0].temperature_flow_mean + 5);
}

TEST(MetalFigures, AirAcrossTheTubesCoolsThem) {
  const SpeedResult blown = run(coarse_text + "[ambient]\nair_speed = \"5 m/s\"\n");
  EXPECT_LT(hottest(blown, "primary 1"), hottest(bare(), "primary 1") - 20);
}

TEST(MetalFigures, GrowthIsThatOfEveryPieceAtItsOwnTemperature) {
  const auto& runner = *std::ranges::find(bare().metal.runners, "primary 1", &RunnerFigures::name);
  double expected = 0;
  for (const PieceFigures& p : bare().metal.pieces)
    if (p.name == "primary 1") expected += (p.to - p.from) * growth_per_metre(find_alloy("304"), p.wall_temperature);
  ASSERT_TRUE(runner.growth);
  EXPECT_NEAR(*runner.growth, expected, 1e-9);
  EXPECT_GT(*runner.growth, 2e-3);  // 310 mm some 500 to 800 K warmer: 3 to 5 mm
  EXPECT_LT(*runner.growth, 6e-3);
}

TEST(MetalFigures, AGivenTemperatureSaysNothingOfItsOutside) {
  const SpeedResult given = run(with(coarse_text, "[each_primary]", "[each_primary]\nwall_temperature = \"900 K\""));
  for (const PieceFigures& p : given.metal.pieces)
    if (p.name == "primary 1") {
      EXPECT_EQ(p.wall_temperature, 900);
      EXPECT_FALSE(p.heat_out || p.growth || p.skin_temperature);
    }
}

// Metal moves by cycle means, not by minutes: within two cycles of what the same run needs with its walls given.
TEST(MetalFigures, ComputedMetalHardlyDelaysSettling) {
  std::string given = with(coarse_text, "[each_primary]", "[each_primary]\nwall_temperature = \"1050 K\"");
  given = with(given, "[turbine]", "[turbine]\nwall_temperature = \"1050 K\"");
  given = with(given, "name = \"downpipe\"", "name = \"downpipe\"\nwall_temperature = \"1050 K\"");
  EXPECT_LE(bare().cycles, run(given).cycles + 2);
}

TEST(MetalCase, CheckSaysWhatTheWallsAreMadeOf) {
  const std::string text =
      metal_text(read_engine(with(coarse_text, "[each_primary]", "[each_primary]\nalloy = \"1.4541\"")).plan);
  EXPECT_NE(text.find("primary 1, primary 2"), std::string::npos) << text;
  EXPECT_NE(text.find("321"), std::string::npos) << text;
  EXPECT_NE(text.find("wall 2.77 mm, bare"), std::string::npos) << text;
  EXPECT_NE(text.find("port 1"), std::string::npos) << text;
}

TEST(MetalCase, MetalAndAGivenTemperatureExcludeEachOther) {
  for (const char* key : {"alloy = \"321\"", "emissivity = 0.3", "wrap = \"glass wrap\""}) {
    const std::string both = std::string("[each_primary]\nwall_temperature = \"900 K\"\n") + key;
    EXPECT_THROW(read_engine(with(coarse_text, "[each_primary]", both)), Error) << key;
  }
}

TEST(MetalCase, BadMetalIsRefused) {
  for (const char* key : {"alloy = \"unobtainium\"", "wrap = \"wool\"", "emissivity = 1.5", "wall = \"2 mm\"",
                          "wrap = { thickness = \"3 mm\" }"})
    EXPECT_THROW(read_engine(with(coarse_text, "[each_primary]", std::string("[each_primary]\n") + key)), Error) << key;
}

TEST(MetalCase, NamedWrapsAreTakenAndNoneIsBare) {
  for (const NamedWrap& wrap : named_wraps()) {
    const std::string key = "[each_primary]\nwrap = \"" + std::string(wrap.name) + "\"";
    EXPECT_NO_THROW(read_engine(with(coarse_text, "[each_primary]", key))) << wrap.name;
  }
  EXPECT_NO_THROW(read_engine(with(coarse_text, "[each_primary]", "[each_primary]\nwrap = \"none\"")));
}

}  // namespace
}  // namespace pulsewright
