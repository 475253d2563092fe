#pragma once
// What stands behind the turbine when no downpipe is drawn, and at the end of a drawn one: a restriction to the air.

#include "solver/gas.hpp"

namespace pulsewright {

/// The silencer by what it costs at one flow.
struct SilencerPoint {
  double pressure_drop;  // Pa, total before it over the air's
  double mass_flow;      // kg/s
  double temperature;    // of the gas before it, K
  double air_pressure;   // Pa
};

/// Area of the orifice that costs the same, m2, effective; infinite for no drop. Throws Error (case_file) below zero.
double silencer_area(const SilencerPoint& point, const Gas& gas);

}  // namespace pulsewright
