#pragma once
// A port with perfect gas in it, for tests of ends.

#include <cmath>

#include "solver/element.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

/// Gas at a duct's end: pressure Pa, temperature K, velocity toward the element m/s.
inline EndState gas_at(const Gas& gas, double p, double T, double w, double Y = 0) {
  return {p / (gas_constant(gas, Y) * T), w, p, Y, T, heat_ratio(gas, T, Y), sound_speed(gas, T, Y)};
}

inline Port port_with(const EndState& state, double area = 1e-3) {
  Port port{};
  port.state = state;
  port.area = area;
  return port;
}

}  // namespace pulsewright
