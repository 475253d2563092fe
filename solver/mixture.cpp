#include "solver/mixture.hpp"

#include <Eigen/Dense>
#include <cmath>
#include <numbers>

#include "solver/composition.hpp"
#include "solver/polynomial_fit.hpp"

namespace pulsewright {
namespace {

using namespace mixture_fit;
using HeatPolynomial = std::array<double, heat_terms>;
using EnergyPolynomial = std::array<double, energy_terms>;

template <std::size_t N>
Blend<N> blend(const std::array<double, N>& fresh, const std::array<double, N>& burned) {
  Blend<N> b{fresh, {}};
  for (std::size_t k = 0; k < N; ++k) b.more[k] = burned[k] - fresh[k];
  return b;
}

template <std::size_t N>
double value(const std::array<double, N>& polynomial, double z) {
  return Blend<N>{polynomial, {}}.at(z, 0);
}

template <std::size_t N>
std::array<double, N + 1> integral(const std::array<double, N>& polynomial) {
  std::array<double, N + 1> sum{};
  for (std::size_t k = 0; k < N; ++k) sum[k + 1] = polynomial[k] / static_cast<double>(k + 1);
  return sum;
}

// The heat capacity at constant volume in powers of z, J/(kg K).
HeatPolynomial fit_cv(const Composition& c) {
  const double R = gas_constant(c);
  const auto cp_at = [&](double z) { return heat_capacity(c, middle + half_span * z); };
  // Relative to cp, since the bound is one on cp.
  const std::vector<double> cp_fit = fit_relative(cp_at, static_cast<int>(heat_terms) - 1);
  HeatPolynomial cv{};
  std::copy(cp_fit.begin(), cp_fit.end(), cv.begin());
  cv[0] -= R;
  return cv;
}

// Equation   q(T) = c(T_low) T_low + integral of c from T_low to T
// Source     definition of a sensible energy, zero at 0 K, with c constant below T_low
// Symbols    c heat capacity at constant volume (energy) or pressure (enthalpy), J/(kg K); q J/kg
// Valid for  T_low..T_high
// Tested by  tests/solver/gas_test.cpp
EnergyPolynomial sensible(const HeatPolynomial& heat) {
  EnergyPolynomial q = integral(heat);
  for (double& coefficient : q) coefficient *= half_span;
  q[0] = value(heat, -1) * T_low - value(q, -1);
  return q;
}

// Least squares of z over a net of temperatures and burned fractions, weighted toward the cold end, where a given error
// of z weighs more in the temperature.
Blend<inverse_terms> fit_inverse(const CaloricFit& fit) {
  constexpr int temperatures = 60, fractions = 9, columns = 2 * static_cast<int>(inverse_terms);
  Eigen::MatrixXd powers(temperatures * fractions, columns);
  Eigen::VectorXd target(temperatures * fractions);
  for (int row = 0; row < powers.rows(); ++row) {
    const double z = std::cos(std::numbers::pi * (row / fractions + 0.5) / temperatures);
    const double Y = static_cast<double>(row % fractions) / (fractions - 1);
    const double scaled = fit.value.at(z, Y) * (fit.scale[0] + Y * (fit.scale[1] + Y * fit.scale[2]));
    double power = 1 / std::sqrt(middle + half_span * z);
    target[row] = z * power;
    for (int k = 0; k < columns; k += 2, power *= scaled) {
      powers(row, k) = power;
      powers(row, k + 1) = power * Y;
    }
  }
  const Eigen::VectorXd solution = powers.colPivHouseholderQr().solve(target);
  Blend<inverse_terms> inverse;
  for (std::size_t k = 0; k < inverse_terms; ++k) {
    inverse.fresh[k] = solution[static_cast<Eigen::Index>(2 * k)];
    inverse.more[k] = solution[static_cast<Eigen::Index>(2 * k + 1)];
  }
  return inverse;
}

CaloricFit make_caloric(const HeatPolynomial& fresh, const HeatPolynomial& burned) {
  CaloricFit fit;
  const EnergyPolynomial q_fresh = sensible(fresh), q_burned = sensible(burned);
  fit.value = blend(q_fresh, q_burned);
  fit.slope = blend(fresh, burned);
  fit.at_low = blend<1>({value(q_fresh, -1)}, {value(q_burned, -1)});
  fit.at_high = blend<1>({value(q_fresh, 1)}, {value(q_burned, 1)});
  fit.slope_below = blend<1>({value(fresh, -1)}, {value(burned, -1)});
  fit.slope_above = blend<1>({value(fresh, 1)}, {value(burned, 1)});
  // The parabola through 1/q(T_high) at Y = 0, 1/2 and 1.
  const double at_0 = 1 / fit.value.at(1, 0), at_half = 1 / fit.value.at(1, 0.5), at_1 = 1 / fit.value.at(1, 1);
  fit.scale = {at_0, 4 * at_half - 3 * at_0 - at_1, 2 * (at_0 + at_1 - 2 * at_half)};
  fit.inverse = fit_inverse(fit);
  return fit;
}

// Entropy at constant pressure as logarithm ln T + rest(z), for a heat capacity cp.
struct EntropyPolynomial {
  double logarithm;
  HeatPolynomial rest;
};

// Equation   cp = (z + m) quotient(z) + remainder, m = middle/half_span, T = half_span (z + m):
//            integral of cp dT/T = remainder ln T + integral of quotient dz
// Source     division of polynomials; exact
// Symbols    cp J/(kg K)
// Valid for  T_low..T_high
// Tested by  tests/solver/gas_test.cpp
EntropyPolynomial entropy_polynomial(const HeatPolynomial& cp) {
  std::array<double, heat_terms - 1> quotient{};
  double carry = 0;
  for (std::size_t k = heat_terms; k-- > 0;) {
    const double now = cp[k] - middle / half_span * carry;
    if (k > 0) quotient[k - 1] = now;
    carry = now;
  }
  return {carry, integral(quotient)};
}

}  // namespace

Mixture make_mixture(const Composition& burned) {
  const Composition fresh = air();
  const double R_fresh = gas_constant(fresh), R_burned = gas_constant(burned);
  const HeatPolynomial cv_fresh = fit_cv(fresh), cv_burned = fit_cv(burned);
  HeatPolynomial cp_fresh = cv_fresh, cp_burned = cv_burned;
  cp_fresh[0] += R_fresh;
  cp_burned[0] += R_burned;
  const EntropyPolynomial s_fresh = entropy_polynomial(cp_fresh), s_burned = entropy_polynomial(cp_burned);

  Mixture m;
  m.gas_constant = blend<1>({R_fresh}, {R_burned});
  m.energy = make_caloric(cv_fresh, cv_burned);
  m.enthalpy = make_caloric(cp_fresh, cp_burned);
  m.entropy_logarithm = blend<1>({s_fresh.logarithm}, {s_burned.logarithm});
  m.entropy_rest = blend(s_fresh.rest, s_burned.rest);
  m.transport = make_transport_fit(burned);
  return m;
}

// Equation   s(T) = logarithm ln T_c + rest(z_c) + cp(T_c) ln(T/T_c),  T_c = T kept within T_low..T_high
// Source     integral of cp dT/T of the fitted cp
// Symbols    s J/(kg K); T K
// Valid for  T > 0
// Tested by  tests/solver/gas_test.cpp
double entropy_at_constant_pressure(const Mixture& m, double T, double Y) {
  const double inside = clamp_temperature(T), z = to_z(inside);
  return m.entropy_logarithm.at(0, Y) * std::log(inside) + m.entropy_rest.at(z, Y) +
         m.enthalpy.slope.at(z, Y) * std::log(T / inside);
}

}  // namespace pulsewright
