// Any valid engine with any valid manifold settles or says what did not; none crashes, none gives what is no number.

#include "tests/models/random_engine.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

#include "models/engine_run.hpp"
#include "shared/error.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

constexpr int shards = 20, engines_each = 15;  // 300 engines, in parts so that cores share them

void expect_numbers(const SpeedResult& s) {
  for (const double x : {s.mass_error, s.energy_error, s.unsettled_mass, s.unsettled_energy, s.intake_pressure,
                         s.torque, s.power, s.air_flow, s.fuel_flow, s.exhaust_flow, s.energy.fuel, s.energy.rest(),
                         s.energy.cylinder_wall_heat, s.energy.duct_wall_heat, s.compressor_power, s.turbine_surplus})
    EXPECT_TRUE(std::isfinite(x));
  for (const EntryFigures& e : s.turbine)
    for (const double x :
         {e.pressure_mean, e.stagnation_mean, e.pressure_peak, e.pressure_swing, e.temperature_flow_mean,
          e.temperature_time_mean, e.mass_flow, e.power_available, e.power_shaft})
      EXPECT_TRUE(std::isfinite(x)) << e.name;
  for (const CylinderFigures& c : s.cylinders)
    for (const double x : {c.volumetric_efficiency, c.burned_gas_left, c.imep, c.pmep, c.pressure_peak,
                           c.port_pressure_mean, c.port_pressure_peak, c.overlap_port_pressure.value_or(0),
                           c.overlap_port_minus_intake.value_or(0), c.temperature})
      EXPECT_TRUE(std::isfinite(x)) << "cylinder " << c.cylinder;
  for (const GateFigures& g : s.gates) EXPECT_TRUE(std::isfinite(g.share_of_flow) && std::isfinite(g.flow)) << g.name;
  for (const Arrival& a : s.arrivals) EXPECT_TRUE(std::isfinite(a.deg) && std::isfinite(a.rise)) << a.from << a.at;
  for (const PulseOverlap& o : s.overlap) EXPECT_TRUE(std::isfinite(o.percent)) << o.at;
}

/// 1e-5: the program's promise for mass and energy, settled or not.
void expect_sound(const SpeedResult& s) {
  expect_numbers(s);
  EXPECT_LT(s.mass_error, 1e-5);
  EXPECT_LT(s.energy_error, 1e-5);
  EXPECT_NE(s.settled, !s.unsettled_figure.empty());
}

class RandomEngine : public testing::TestWithParam<int> {};

TEST_P(RandomEngine, SettlesOrSaysWhatDidNot) {
  for (int k = 0; k < engines_each; ++k) {
    const auto seed = static_cast<std::uint64_t>(GetParam() * engines_each + k);
    const std::string text = test::random_engine(seed);
    SCOPED_TRACE("seed " + std::to_string(seed));
    try {
      const EngineCase engine = test::read_engine(text);
      const SpeedResult s = run_speed(engine, engine.run.rpm.front());
      expect_sound(s);
      if (!s.settled) std::cout << "seed " << seed << ", not settled: " << s.unsettled_figure << '\n';
    } catch (const Error& error) {
      ADD_FAILURE() << error.what() << '\n' << text;
    }
  }
}
INSTANTIATE_TEST_SUITE_P(Seeds, RandomEngine, testing::Range(0, shards));

}  // namespace
}  // namespace pulsewright
