#include "models/compressor.hpp"

#include <algorithm>

namespace pulsewright {

double compressor_efficiency(const ChargeCase& charge, double, double) { return charge.compressor_efficiency; }

// Equation   dp = dp_full (m/m_full)^2
// Source     turbulent loss in a passage of fixed shape; common practice, no source
// Symbols    m air flow kg/s; m_full at redline, target boost and volumetric efficiency 0.95
// Valid for  charge of about the same density; twice the full flow at most, constant beyond
// Tested by  tests/models/compressor_test.cpp
double cooler_drop(const ChargeCase& charge, double air_flow) {
  if (!(charge.full_flow > 0)) return charge.cooler_drop;
  const double share = std::clamp(air_flow / charge.full_flow, 0.0, 2.0);
  return charge.cooler_drop * share * share;
}

// Equation   dh0 = (h(T_s) - h(T_ambient))/eta, T_s isentropic from ambient to the wheel's outlet, p_out = p_intake + dp
// Source     definition of the isentropic efficiency
// Symbols    dh0 J/kg; eta compressor efficiency; dp the cooler's pressure drop Pa
// Valid for  boost above 0; else no work and no rise
// Tested by  tests/models/compressor_test.cpp, tests/models/engine_run_test.cpp
CompressorPoint compressor_point(const EngineCase& engine, const Gas& gas, double boost_gauge, double air_flow) {
  if (!(boost_gauge > 0)) return {1, compressor_efficiency(engine.charge, 1, air_flow), 0, 0};
  const double T = engine.ambient.temperature, p = engine.ambient.pressure;
  const double ratio = (p + boost_gauge + cooler_drop(engine.charge, air_flow)) / p;
  const double efficiency = compressor_efficiency(engine.charge, ratio, air_flow);
  const double h = enthalpy(gas, T, 0),
               work = (enthalpy(gas, isentropic_temperature(gas, T, 0, ratio), 0) - h) / efficiency;
  return {ratio, efficiency, work, temperature_from_enthalpy(gas, h + work, 0) - T};
}

double charge_temperature_at(const EngineCase& engine, const Gas& gas, double boost_gauge, double air_flow) {
  const double target = engine.charge.boost_gauge;
  if (!(target > 0) || boost_gauge == target) return engine.charge.temperature;
  const double share =
      compressor_point(engine, gas, boost_gauge, air_flow).rise / compressor_point(engine, gas, target, air_flow).rise;
  return engine.ambient.temperature + share * (engine.charge.temperature - engine.ambient.temperature);
}

// Equation   h(T_s) = h(T_ambient) + eta dh0, pressure ratio by the isentropic relation; eta at the ratio: three turns
// Source     definition of the isentropic efficiency
// Symbols    as in compressor_point
// Valid for  work above 0
// Tested by  tests/models/compressor_test.cpp
double boost_from_work(const EngineCase& engine, const Gas& gas, double work, double air_flow) {
  if (!(work > 0)) return 0;
  const double T = engine.ambient.temperature, h = enthalpy(gas, T, 0);
  double ratio = 1;
  for (int turn = 0; turn < 3; ++turn) {
    const double eta = compressor_efficiency(engine.charge, ratio, air_flow);
    ratio = isentropic_pressure_ratio(gas, T, temperature_from_enthalpy(gas, h + eta * work, 0), 0);
  }
  return std::max(0.0, (ratio - 1) * engine.ambient.pressure - cooler_drop(engine.charge, air_flow));
}

}  // namespace pulsewright
