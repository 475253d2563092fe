#pragma once
// The thermally perfect mixture of air and burned gas, as fits that a loop over cells can afford: no log, pow or exp,
// no branch, one divide. The fits are made once from NASA's data by make_mixture. All temperatures go through
//   z = (T - middle)/half_span, which runs from -1 at T_low to 1 at T_high;
// outside, heat capacities stay at the end's value, so that energies go on in straight lines and keep rising.

#include <algorithm>

#include "solver/blend.hpp"
#include "solver/thermal_state.hpp"
#include "solver/transport_fit.hpp"

namespace pulsewright {

struct Composition;

namespace mixture_fit {
constexpr double T_low = 200, T_high = 3500;  // K
constexpr double middle = (T_low + T_high) / 2, half_span = (T_high - T_low) / 2;
constexpr std::size_t heat_terms = 7, energy_terms = heat_terms + 1, inverse_terms = 5;
}  // namespace mixture_fit

/// Energy or enthalpy q(T, Y) between T_low and T_high, its slope, and a first guess of z from q.
struct CaloricFit {
  Blend<mixture_fit::energy_terms> value;     // q in powers of z, J/kg
  Blend<mixture_fit::heat_terms> slope;       // dq/dT in powers of z, J/(kg K)
  Blend<1> at_low, at_high;                   // q at T_low and T_high, J/kg
  Blend<1> slope_below, slope_above;          // dq/dT outside
  std::array<double, 3> scale{};              // powers of Y: 1/q at T_high, kg/J, for the guess
  Blend<mixture_fit::inverse_terms> inverse;  // z in powers of q scale(Y)
};

struct Mixture {
  Blend<1> gas_constant;  // R, J/(kg K)
  CaloricFit energy, enthalpy;
  // Entropy at constant pressure: logarithm ln T + rest(z), J/(kg K).
  Blend<1> entropy_logarithm;
  Blend<mixture_fit::heat_terms> entropy_rest;
  TransportFit transport;
};

/// The fits for air as fresh gas and this burned gas.
Mixture make_mixture(const Composition& burned);

/// The integral of cp dT/T up to a constant, J/(kg K). Not for a loop over cells: it uses log. T above 0.
double entropy_at_constant_pressure(const Mixture& mixture, double T, double Y);

namespace mixture_fit {

inline double clamp_temperature(double T) { return std::min(std::max(T, T_low), T_high); }
inline double to_z(double T) { return (T - middle) * (1 / half_span); }

// Equation   q(T) = P(z_c) + P'(T_c) (T - T_c),  T_c = T kept within T_low..T_high
// Source     fit to NASA/TP-2002-211556 data (mixture.cpp); exact integral of its own slope
// Symbols    q J/kg, energy or enthalpy; T K
// Valid for  any T; heat capacity constant outside T_low..T_high
// Tested by  tests/solver/gas_test.cpp, tests/solver/mixture_test.cpp
inline double value_at(const CaloricFit& fit, double T, double Y) {
  const double inside = clamp_temperature(T), outside = T - inside;
  const double slope = outside < 0 ? fit.slope_below.at(0, Y) : fit.slope_above.at(0, Y);
  return fit.value.at(to_z(inside), Y) + slope * outside;
}

/// A temperature found from energy or enthalpy, and the slope of that function there.
struct Inverted {
  double T;          // K
  double per_slope;  // dT/dq, kg K/J
};

// Equation   z = z0 + d - r d^2 + (2 r^2 - s) d^3, d = (q_c - P)/P', r = P''/(2 P'), s = P'''/(6 P');  T outside:
//            + (q - q_c)/P'(z);  P'(z) by Taylor's series from z0
// Source     Chebyshev's correction of fourth order (J. F. Traub, Iterative Methods for the Solution of Equations, 1964;
//            from memory), once: no iteration
// Symbols    q J/kg, q_c = q kept within its values at T_low and T_high; P(z) the fit of q
// Valid for  any finite q, rises with q. T is good to 2e-8 of itself from 10 K away, 1e-4 from 100 K, 3 % from 500 K;
//            the slope to 3e-9 from 2 K, 3e-4 from 100 K. A cell moves less in a step, but where a front jumps through
// Tested by  tests/solver/mixture_test.cpp
inline Inverted invert_from(const CaloricFit& fit, double z0, double q, double inside, double Y) {
  const Taylor p = taylor(fit.value, z0, Y);
  const double per_slope = 1 / p.slope;
  const double d = (inside - p.value) * per_slope, r = p.second * per_slope, s = p.third * per_slope;
  const double step = d * (1 - d * (r - d * (2 * r * r - s)));
  const double bend = step * (2 * r + 3 * step * s);
  const double per_slope_there = half_span * per_slope * (1 - bend + bend * bend);
  return {middle + half_span * (z0 + step) + (q - inside) * per_slope_there, per_slope_there};
}

/// q kept within its values at T_low and T_high.
inline double clamp_value(const CaloricFit& fit, double q, double Y) {
  return std::min(std::max(q, fit.at_low.at(0, Y)), fit.at_high.at(0, Y));
}

/// From nothing: the start is a fit of z by q, within 6 K.
inline Inverted invert(const CaloricFit& fit, double q, double Y) {
  const double inside = clamp_value(fit, q, Y);
  const double scaled = inside * (fit.scale[0] + Y * (fit.scale[1] + Y * fit.scale[2]));
  return invert_from(fit, fit.inverse.at(scaled, Y), q, inside, Y);
}

}  // namespace mixture_fit

inline double gas_constant(const Mixture& m, double Y) { return m.gas_constant.at(0, Y); }
inline double cv(const Mixture& m, double T, double Y) {
  return m.energy.slope.at(mixture_fit::to_z(mixture_fit::clamp_temperature(T)), Y);
}
inline double heat_ratio(const Mixture& m, double T, double Y) { return 1 + gas_constant(m, Y) / cv(m, T, Y); }
inline double internal_energy(const Mixture& m, double T, double Y) { return mixture_fit::value_at(m.energy, T, Y); }
inline double temperature_from_energy(const Mixture& m, double e, double Y) {
  return mixture_fit::invert(m.energy, e, Y).T;
}
inline double temperature_from_enthalpy(const Mixture& m, double h, double Y) {
  return mixture_fit::invert(m.enthalpy, h, Y).T;
}
/// From a temperature nearby, as a cell has it from the step before.
inline ThermalState thermal_state(const Mixture& m, double e, double Y, double T_nearby) {
  using namespace mixture_fit;
  const double z0 = to_z(clamp_temperature(T_nearby));
  const auto [T, per_cv] = invert_from(m.energy, z0, e, clamp_value(m.energy, e, Y), Y);
  return {T, 1 + gas_constant(m, Y) * per_cv};
}

// Equation   (rho e)_Y/rho = e_burned(T) - e_fresh(T) - (c_v/R) T (R_burned - R_fresh)
// Source     chain rule on e(T, Y), T = p/(rho R(Y)), at constant p and rho
// Symbols    J/kg; cv_over_R = c_v/R
// Valid for  as value_at
// Tested by  tests/solver/mixture_test.cpp
inline double energy_by_burned(const Mixture& m, double T, double cv_over_R) {
  const double z = mixture_fit::to_z(mixture_fit::clamp_temperature(T));
  double rise = m.energy.value.more.back();
  for (std::size_t k = mixture_fit::energy_terms - 1; k-- > 0;) rise = rise * z + m.energy.value.more[k];
  return rise - cv_over_R * T * m.gas_constant.more[0];
}
inline double viscosity(const Mixture& m, double T, double Y) { return viscosity(m.transport, T, Y); }
inline double conductivity(const Mixture& m, double T, double Y) { return conductivity(m.transport, T, Y); }

}  // namespace pulsewright
