#include "solver/joint_gate.hpp"

#include <cmath>

#include "solver/orifice.hpp"

namespace pulsewright {
namespace {

constexpr double linear_above = 0.99;  // pressure ratio; assumed, see the header

struct FlowFunction {
  double value, slope;  // slope by the pressure ratio
};

FlowFunction subsonic(double ratio, double g) {
  const double value = flow_function(ratio, g), x = std::pow(ratio, 1 / g);
  return {value, (2 * x * x / ratio - (g + 1) * x) / ((g - 1) * value)};
}

// Equation   m = A p0/sqrt(R T0) psi(r), psi of solver/orifice.hpp; psi' = (2 r^(2/g-1) - (g+1) r^(1/g))/((g-1) psi)
// Source     J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, appendix C, differentiated
// Symbols    A effective area m2; p0, T0 upstream total; r = p/p0, p downstream static; g ratio of specific heats
// Valid for  0 < r <= 1; linear in 1 - r above 0.99
// Tested by  tests/solver/joint_gate_test.cpp
FlowFunction gate_flow_function(double ratio, double g) {
  if (ratio <= critical_pressure_ratio(g)) return {flow_function(0, g), 0};
  if (ratio < linear_above) return subsonic(ratio, g);
  const double slope = -flow_function(linear_above, g) / (1 - linear_above);
  return {slope * (ratio - 1), slope};
}

}  // namespace

OrificeFlow orifice_flow(const OrificeSide& in, const OrificeSide& out) {
  if (in.p >= out.p) {
    const double ratio = out.p / in.p, root = std::sqrt(in.R * in.T);
    const FlowFunction psi = gate_flow_function(ratio, in.gamma);
    return {in.p / root * psi.value, (psi.value - ratio * psi.slope) / root};
  }
  const double root = std::sqrt(out.R * out.T);
  const FlowFunction psi = gate_flow_function(in.p / out.p, out.gamma);
  return {-out.p / root * psi.value, -psi.slope / root};
}

}  // namespace pulsewright
