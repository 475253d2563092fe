#include "models/silencer.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "shared/error.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {

// Equation   A = mdot sqrt(R T)/(p0 psi(p_air/p0)), p0 = p_air + drop
// Source     as flow_function in solver/orifice.hpp
// Symbols    psi flow function at the heat ratio of burned gas at T
// Valid for  any drop; beyond the critical ratio the orifice is choked
// Tested by  tests/models/silencer_test.cpp
double silencer_area(const SilencerPoint& s, const Gas& gas) {
  if (s.pressure_drop == 0) return std::numeric_limits<double>::infinity();
  if (!(s.pressure_drop > 0 && s.mass_flow > 0))
    throw Error(ErrorKind::case_file,
                fmt::format("a silencer needs a pressure drop and a flow above 0, not {:g} Pa at {:g} kg/s",
                            s.pressure_drop, s.mass_flow));
  const double total = s.air_pressure + s.pressure_drop;
  const double psi = flow_function(s.air_pressure / total, heat_ratio(gas, s.temperature, 1));
  return s.mass_flow * std::sqrt(gas_constant(gas, 1) * s.temperature) / (total * psi);
}

}  // namespace pulsewright
