#include "models/nozzle_pair.hpp"

#include <fmt/format.h>

#include <cmath>

#include "shared/error.hpp"
#include "solver/orifice.hpp"
#include "solver/root.hpp"

namespace pulsewright {
namespace {

// Square of the flow function and its slope: smooth where the pressures meet, flat where the nozzle is choked.
Slope flow_squared(double ratio, double g) {
  const double k = (g - 1) / g, t = std::pow(ratio, k);
  if (t <= 2 / (g + 1)) {
    const double choked = flow_function(0, g);
    return {choked * choked, 0};
  }
  const double throat_density2 = ratio * ratio / (t * t), front = 2 / k;
  return {front * throat_density2 * (1 - t), front * throat_density2 / ratio * (2 / g * (1 - t) - k * t)};
}

}  // namespace

// Equation   psi(x) = K x psi(r/x), squared: both nozzles pass one mass flow; psi is the flow function
// Source     turbine as two nozzles in series: N. Watson and M. S. Janota, Turbocharging the Internal Combustion
//            Engine, 1982 (from memory); psi: solver/orifice.hpp
// Symbols    x middle over first total pressure; r behind the second over first total pressure; K second_over_first
// Valid for  0 <= r <= 1, K > 0
// Tested by  tests/models/nozzle_pair_test.cpp, tests/verification/orifice_turbine_checks.cpp
PairFlow pair_flow(double r, double second_over_first, double gamma) {
  if (!(r < 1)) return {1, 0};
  const double k2 = second_over_first * second_over_first;
  const auto excess = [&](double x) -> Slope {
    const Slope first = flow_squared(x, gamma), second = flow_squared(r / x, gamma);
    return {first.value - k2 * x * x * second.value, first.slope - k2 * (2 * x * second.value - r * second.slope)};
  };
  const double incompressible = (1 + k2 * r) / (1 + k2);
  const double x = falling_root(excess, r, 1, incompressible, 1e-12);
  return {x, flow_function(x, gamma)};
}

TurbineAreas areas_from_capacity(const CapacityPoint& point, double rotor_over_throat, int scrolls, const Gas& gas) {
  if (!(point.ratio > 1 && point.flow > 0 && point.temperature > 0 && point.pressure > 0))
    throw Error(ErrorKind::case_file,
                fmt::format("a turbine's capacity needs a flow above 0 and a ratio above 1, not {:g} kg/s at {:g}",
                            point.flow, point.ratio));
  const double gamma = heat_ratio(gas, capacity_temperature, 1);
  const double flow = pair_flow(1 / point.ratio, rotor_over_throat, gamma).flow;
  const double throat = point.flow * std::sqrt(gas_constant(gas, 1) * point.temperature) / (point.pressure * flow);
  return {throat / scrolls, throat * rotor_over_throat};
}

}  // namespace pulsewright
