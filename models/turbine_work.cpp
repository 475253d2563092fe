#include "models/turbine_work.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {

// Equation   dh = h(T0) - h(T_is), T_is after the isentropic change to p_out
// Source     S. L. Dixon and C. A. Hall, Fluid Mechanics and Thermodynamics of Turbomachinery, 7th ed., 2014, chapter 1
// Symbols    h sensible enthalpy J/kg at the gas's own composition
// Valid for  any gas of solver/gas.hpp
// Tested by  tests/verification/orifice_turbine_checks.cpp
double isentropic_drop(const Gas& gas, const TotalState& inlet, double p_out) {
  if (!(p_out < inlet.p)) return 0;
  const double T = isentropic_temperature(gas, inlet.T, inlet.Y, p_out / inlet.p);
  return enthalpy(gas, inlet.T, inlet.Y) - enthalpy(gas, T, inlet.Y);
}

double spouting_velocity(double drop) { return std::sqrt(2 * std::max(drop, 0.0)); }

// Equation   eta = peak (2x - x^2), not below 0; x = (U/C0)/0.7071
// Source     the optimum: ideal 90 degree inward-flow radial turbine, U^2 = C0^2/2; about 0.7 in H. Luddecke,
//            D. Filsinger, J. Ehrhard, Int. J. Rotating Machinery 2012, 589720. The parabola: common practice, no source
// Symbols    U wheel tip speed, C0 spouting velocity m/s
// Valid for  radial turbines; beyond x = 2 the wheel would drive the gas: 0
// Tested by  tests/verification/orifice_turbine_checks.cpp
double turbine_efficiency(double peak, double tip_speed, double spouting) {
  if (!(spouting > 0)) return 0;
  const double x = tip_speed / spouting / best_velocity_ratio;
  return std::clamp(peak * x * (2 - x), 0.0, peak);
}

// Equation   1 - 0.15 |a - b|/(a + b)
// Source     assumed
// Symbols    a, b mass flow of the scrolls kg/s; one that runs backward counts as none
// Valid for  two scrolls
// Tested by  tests/models/turbine_work_test.cpp
double partial_admission(double flow_a, double flow_b) {
  const double a = std::max(flow_a, 0.0), b = std::max(flow_b, 0.0);
  return a + b > 0 ? 1 - 0.15 * std::abs(a - b) / (a + b) : 1;
}

// Equation   U = sqrt(dh0/psi) / (d_compressor/d_turbine)
// Source     Euler's turbine equation; the coefficient is assumed
// Symbols    dh0 J/kg; psi work coefficient; d exducer and inducer
// Valid for  both wheels on one shaft
// Tested by  tests/models/turbine_work_test.cpp
double turbine_tip_speed(double compressor_work, double work_coefficient, double exducer_over_inducer) {
  return std::sqrt(std::max(compressor_work, 0.0) / work_coefficient) / exducer_over_inducer;
}

}  // namespace pulsewright
