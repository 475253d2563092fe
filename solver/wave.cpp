#include "solver/wave.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

double shock_front_speed(double p_star, const EndState& d) {
  const double g = d.gamma;
  return d.w - d.c * std::sqrt((g + 1) / (2 * g) * p_star / d.p + (g - 1) / (2 * g));
}

EndState isentropic_state(double c_ratio, double p, double w, const EndState& d) {
  EndState s = d;
  s.c = d.c * c_ratio;
  s.T = d.T * c_ratio * c_ratio;
  s.p = p;
  s.rho = d.rho * (p / d.p) / std::max(c_ratio * c_ratio, 1e-300);  // 0 in the void, where p is 0 too
  s.w = w;
  return s;
}

double isentropic_pressure(double c_ratio, const EndState& d) {
  return d.p * std::pow(c_ratio, 2 * d.gamma / (d.gamma - 1));
}

}  // namespace

// Equation   shock (p* > p):       f = (p* - p) sqrt(a / (p* + b)),  a = 2/((g+1) rho), b = (g-1)/(g+1) p
//            rarefaction (p* < p): f = 2c/(g-1) ((p*/p)^((g-1)/2g) - 1)
// Source     E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed., 2009, section 4.2
// Symbols    p*, p Pa; rho kg/m3; c m/s; g = c^2 rho/p; f m/s
// Valid for  0 <= p*; gamma frozen at the duct's end
// Tested by  tests/solver/wave_test.cpp, tests/verification/riemann_checks.cpp
double wave_slowdown(double p_star, const EndState& d) {
  const double g = d.gamma;
  if (p_star > d.p) return (p_star - d.p) * std::sqrt(2 / ((g + 1) * d.rho) / (p_star + (g - 1) / (g + 1) * d.p));
  return 2 * d.c / (g - 1) * (std::pow(std::max(p_star, 0.0) / d.p, (g - 1) / (2 * g)) - 1);
}

double wave_slowdown_slope(double p_star, const EndState& d) {
  const double g = d.gamma;
  if (p_star > d.p) {
    const double b = (g - 1) / (g + 1) * d.p;
    return std::sqrt(2 / ((g + 1) * d.rho) / (p_star + b)) * (1 - (p_star - d.p) / (2 * (p_star + b)));
  }
  const double ratio = std::max(p_star / d.p, 1e-12);
  return std::pow(ratio, -(g + 1) / (2 * g)) / (d.rho * d.c);
}

// Equation   f(p*) = w - w*, solved for p*: shock, with q = p* - p:  q^2 - B q - B (p + b) = 0, B = (w - w*)^2 / a
//            rarefaction: p* = p (1 + (g-1)/2 (w - w*)/c)^(2g/(g-1))
// Source     as wave_slowdown
// Symbols    a, b as there
// Valid for  any w*; beyond the escape speed 2c/(g-1) the pressure is zero
// Tested by  tests/solver/wave_test.cpp
double wave_pressure(double w_star, const EndState& d) {
  const double g = d.gamma, f = d.w - w_star;
  if (f > 0) {
    const double big_b = f * f * (g + 1) * d.rho / 2;
    return d.p + 0.5 * (big_b + std::sqrt(big_b * (big_b + 4 * (d.p + (g - 1) / (g + 1) * d.p))));
  }
  return isentropic_pressure(std::max(0.0, 1 + (g - 1) / 2 * f / d.c), d);
}

EndState behind_wave(double p_star, const EndState& d) {
  const double g = d.gamma;
  if (p_star <= d.p) {
    const double c_ratio = std::pow(std::max(p_star, 0.0) / d.p, (g - 1) / (2 * g));
    return isentropic_state(c_ratio, p_star, d.w - 2 * d.c / (g - 1) * (c_ratio - 1), d);
  }
  const double w = d.w - wave_slowdown(p_star, d);
  const double r = p_star / d.p, k = (g - 1) / (g + 1);
  EndState s = d;
  s.p = p_star;
  s.rho = d.rho * (r + k) / (k * r + 1);
  s.T = d.T * r * d.rho / s.rho;
  s.c = std::sqrt(g * s.p / s.rho);
  s.w = w;
  return s;
}

// Equation   rarefaction: c* = c + (g-1)/2 (w - w*), isentropic; shock: wave_pressure and the jump of density
// Source     Toro 2009, sections 3.1 and 4.2
// Symbols    as wave_slowdown
// Valid for  any w*; near vacuum held at a tenth of the sound speed (1e-7 of the pressure or less)
// Tested by  tests/solver/wave_test.cpp
EndState brought_to(double w_star, const EndState& d) {
  if (w_star < d.w) {
    EndState s = behind_wave(wave_pressure(w_star, d), d);
    s.w = w_star;
    return s;
  }
  const double g = d.gamma, ratio = std::max(0.1, 1 + (g - 1) / 2 * (d.w - w_star) / d.c);
  return isentropic_state(ratio, isentropic_pressure(ratio, d), w_star, d);
}

// Equation   fan at x/t = 0: w = c = 2/(g+1) (c_d + (g-1)/2 w_d), isentropic from the duct's state
// Source     Toro 2009, section 4.4-4.5 (sampling)
// Symbols    index d: the gas at the duct's end
// Valid for  w* >= 0
// Tested by  tests/solver/wave_test.cpp
EndState face_toward_element(double p_star, const EndState& d) {
  const double g = d.gamma;
  if (p_star > d.p) return shock_front_speed(p_star, d) >= 0 ? d : behind_wave(p_star, d);
  if (d.w - d.c >= 0) return d;
  const EndState star = behind_wave(p_star, d);
  if (star.w - star.c <= 0) return star;
  const double c = 2 / (g + 1) * (d.c + (g - 1) / 2 * d.w);
  return isentropic_state(c / d.c, isentropic_pressure(c / d.c, d), c, d);
}

}  // namespace pulsewright
