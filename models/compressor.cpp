#include "models/compressor.hpp"

#include <algorithm>
#include <cmath>

#include "models/turbine_work.hpp"

namespace pulsewright {

const char* const no_map_sentence =
    "No compressor map is given: surge, choke and overspeed of the compressor are not seen.";

CompressorMapAnswer compressor_on_map(const ChargeCase& charge, double pressure_ratio, double air_flow) {
  return charge.map->at(charge.inlet, air_flow / charge.compressors, pressure_ratio);
}

double compressor_efficiency(const ChargeCase& charge, double pressure_ratio, double air_flow) {
  return charge.map ? compressor_on_map(charge, pressure_ratio, air_flow).efficiency : charge.compressor_efficiency;
}

double compressor_tip_speed(const ChargeCase& charge, const CompressorPoint& point, double air_flow) {
  if (!(point.work > 0)) return 0;
  return charge.map ? compressor_on_map(charge, point.pressure_ratio, air_flow).tip_speed
                    : turbine_tip_speed(point.work, charge.work_coefficient, 1);
}

// Equation   dp = dp_full (m/m_full)^2
// Source     turbulent loss in a passage of fixed shape; common practice, no source
// Symbols    m air flow kg/s; m_full at redline, target boost and volumetric efficiency 0.95
// Valid for  charge of about the same density; twice the full flow at most, constant beyond
// Tested by  tests/models/compressor_on_map_test.cpp
double cooler_drop(const ChargeCase& charge, double air_flow) {
  if (!(charge.full_flow > 0)) return charge.cooler_drop;
  const double share = std::clamp(air_flow / charge.full_flow, 0.0, 2.0);
  return charge.cooler_drop * share * share;
}

// Equation   dh0 = (h(T_s) - h(T_ambient))/eta, T_s isentropic from ambient to the wheel's outlet, p_out = p_intake + dp
// Source     definition of the isentropic efficiency
// Symbols    dh0 J/kg; eta compressor efficiency; dp the cooler's pressure drop Pa
// Valid for  boost above 0; else no work and no rise
// Tested by  tests/models/compressor_on_map_test.cpp, tests/models/engine_run_test.cpp
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
  if (engine.charge.map && engine.charge.cooler_effectiveness)
    return engine.ambient.temperature +
           (1 - *engine.charge.cooler_effectiveness) * compressor_point(engine, gas, boost_gauge, air_flow).rise;
  if (!(target > 0) || boost_gauge == target) return engine.charge.temperature;
  const double share =
      compressor_point(engine, gas, boost_gauge, air_flow).rise / compressor_point(engine, gas, target, air_flow).rise;
  return engine.ambient.temperature + share * (engine.charge.temperature - engine.ambient.temperature);
}

// Equation   h(T_s) = h(T_ambient) + eta dh0, pressure ratio by the isentropic relation; eta at the ratio: in turns
// Source     definition of the isentropic efficiency
// Symbols    as in compressor_point
// Valid for  work above 0
// Tested by  tests/models/compressor_on_map_test.cpp
double boost_from_work(const EngineCase& engine, const Gas& gas, double work, double air_flow) {
  if (!(work > 0)) return 0;
  const double T = engine.ambient.temperature, h = enthalpy(gas, T, 0);
  double ratio = 1;
  for (int turn = 0; turn < (engine.charge.map ? 20 : 1); ++turn) {  // one efficiency: no turns needed
    const double eta = compressor_efficiency(engine.charge, ratio, air_flow);
    ratio = isentropic_pressure_ratio(gas, T, temperature_from_enthalpy(gas, h + eta * work, 0), 0);
  }
  return std::max(0.0, (ratio - 1) * engine.ambient.pressure - cooler_drop(engine.charge, air_flow));
}

}  // namespace pulsewright
