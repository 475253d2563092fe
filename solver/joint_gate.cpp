#include "solver/joint_gate.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

constexpr double linear_above = 0.99;  // pressure ratio; assumed, see the header

struct FlowFunction {
  double value, slope;  // slope by the pressure ratio
};

FlowFunction true_flow_function(double ratio, double g) {
  const double x = std::pow(ratio, 1 / g);
  const double square = 2 * g / (g - 1) * x * (x - ratio), value = std::sqrt(square);
  const double square_slope = 2 / (g - 1) * (2 * x * x / ratio - (g + 1) * x);
  return {value, square_slope / (2 * value)};
}

// Equation   m = A p0/sqrt(R T0) psi,  psi^2 = 2g/(g-1) (r^(2/g) - r^((g+1)/g)),  r = p/p0, not below the critical
// ratio Source     Saint-Venant and Wantzel 1839; J. B. Heywood, Internal Combustion Engine Fundamentals, 1988,
// appendix C Symbols    A effective area m2; p0, T0 upstream total; p downstream static; g ratio of specific heats
// Valid for  0 < r <= 1; linear in 1 - r above 0.99
// Tested by  tests/solver/joint_test.cpp
FlowFunction flow_function(double ratio, double g) {
  const double critical = std::pow(2 / (g + 1), g / (g - 1));
  if (ratio <= critical) return {std::sqrt(g) * std::pow(2 / (g + 1), (g + 1) / (2 * (g - 1))), 0};
  if (ratio < linear_above) return true_flow_function(ratio, g);
  const double slope = -true_flow_function(linear_above, g).value / (1 - linear_above);
  return {slope * (ratio - 1), slope};
}

}  // namespace

OrificeFlow orifice_flow(const OrificeSide& in, const OrificeSide& out) {
  if (in.p >= out.p) {
    const double ratio = out.p / in.p, root = std::sqrt(in.R * in.T);
    const FlowFunction psi = flow_function(ratio, in.gamma);
    return {in.p / root * psi.value, (psi.value - ratio * psi.slope) / root};
  }
  const double root = std::sqrt(out.R * out.T);
  const FlowFunction psi = flow_function(in.p / out.p, out.gamma);
  return {-out.p / root * psi.value, -psi.slope / root};
}

}  // namespace pulsewright
