// Where the fuel's heat goes, over engines, fuels and speeds.

#include "models/energy_account.hpp"

#include <gtest/gtest.h>

#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::with;

// Coarse cells: bookkeeping does not depend on them.
const std::string coarse = with(engine_text, "cell = \"5 mm\"", "cell = \"12 mm\"");

struct EngineOfThem {
  const char* name;
  std::string what, by;  // replaced in the text
  double rpm;
};

class EnergyOfACycle : public testing::TestWithParam<EngineOfThem> {};

// 0.3 % of the fuel's heat is the program's promise; what is left is what the settled state still stores.
TEST_P(EnergyOfACycle, IsAccountedForWithinThreePerMille) {
  const EngineOfThem& e = GetParam();
  const SpeedResult s = run_speed(test::read_engine(with(coarse, e.what, e.by)), e.rpm);
  const EnergyAccount& a = s.energy;
  EXPECT_TRUE(s.settled) << s.unsettled_figure;
  EXPECT_NEAR(a.rest() / a.fuel, 0, 3e-3);
  // 1e-5, the bound of energy_error: with the store counted only the tolerances of the joints' and turbines' searches are left.
  EXPECT_NEAR((a.rest() - a.stored) / a.fuel, 0, 1e-5);
  for (const double part :
       {a.gross_work, a.cylinder_wall_heat, a.duct_wall_heat, a.turbine_work, a.exhaust_heat, a.unburned})
    EXPECT_GT(part, 0);
  // The shaft's mean power over a cycle is recorded every half degree: 0.5 % for the corners between.
  double shaft = 0;
  for (const EntryFigures& entry : s.turbine) shaft += entry.power_shaft;
  EXPECT_NEAR(shaft * 120 / e.rpm / a.turbine_work, 1, 5e-3);
}
INSTANTIATE_TEST_SUITE_P(Engines, EnergyOfACycle,
                         testing::Values(EngineOfThem{"petrol_slow", "redline", "redline", 2000},
                                         EngineOfThem{"petrol", "redline", "redline", 4500},
                                         EngineOfThem{"petrol_fast", "redline", "redline", 7500},
                                         EngineOfThem{"port_fuel", "redline", "fuel_enters = \"port\"\nredline", 4500},
                                         EngineOfThem{"lean", "redline", "lambda = 1.1\nredline", 4500},
                                         EngineOfThem{"ethanol", "redline", "fuel = \"ethanol\"\nredline", 4500},
                                         EngineOfThem{"methanol", "redline", "fuel = \"methanol\"\nredline", 4500},
                                         EngineOfThem{"diesel", "redline = 7500", "fuel = \"diesel\"\nredline = 4500",
                                                      3000}),
                         [](const auto& p) { return std::string(p.param.name); });

// 0.1 % : the two are the same sum over another cycle of the cylinders.
TEST(EnergyAccount, SplitsTheWorkAsTheMeanPressuresDo) {
  const EngineCase engine = test::read_engine(coarse);
  const SpeedResult s = run_speed(engine, 4500);
  const double displacement = SliderCrank(engine.engine.crank).displacement();
  double gross = 0;
  for (const CylinderFigures& c : s.cylinders) gross += c.imep * displacement;
  EXPECT_NEAR(s.energy.gross_work / gross, 1, 1e-3);
  EXPECT_NEAR(s.energy.brake_work() * 4500 / 120 / s.power, 1, 1e-9);
}

// Nothing but numbers: 1 kg of air in at 298.15 K, out at 298.15 K with the fuel's heat gone into work.
TEST(EnergyAccount, CountsHeatFromTheDatumOfTheHeatingValue) {
  const Gas gas = mixture_gas(*find_fuel("petrol"), 1);
  EnergyCrossings c{};
  c.cylinders.intake = {1, enthalpy(gas, 298.15, 0), 0};
  c.to_air = {1, enthalpy(gas, 298.15, 1), 1};
  c.cylinders.work = 2e6;
  c.cylinders.fuel = {0.05, 0.05 * enthalpy(gas, 298.15, 0), 0};
  c.cylinders.fuel_heat = 0.9 * 0.05 * 43.5e6;
  const EnergyAccount a = energy_account(c, {43.5e6, 0}, gas);
  EXPECT_NEAR(a.exhaust_heat, 0, 1e-6);
  EXPECT_NEAR(a.fuel, 0.05 * 43.5e6, 1e-6);
  EXPECT_NEAR(a.unburned, 0.1 * 0.05 * 43.5e6, 1e-3);
  EXPECT_NEAR(a.rest(), a.fuel - a.unburned - 2e6, 1e-3);
}

}  // namespace
}  // namespace pulsewright
