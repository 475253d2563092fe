#include "solver/gas.hpp"

#include <fmt/format.h>

#include "shared/error.hpp"
#include "solver/composition.hpp"

namespace pulsewright {

Gas perfect_gas(double gamma, double R) {
  if (!(gamma > 1 && std::isfinite(gamma) && R > 0 && std::isfinite(R)))
    throw Error(ErrorKind::internal,
                fmt::format("a perfect gas needs gamma above 1 and R above 0, not gamma {} and R {}", gamma, R));
  const double cv = R / (gamma - 1);
  Gas gas{};
  gas.perfect = true;
  gas.constant = {R, cv, 1 / cv, 1 / (cv + R), gamma, make_transport_fit(air())};
  return gas;
}

Gas mixture_gas(const Fuel& fuel, double lambda) {
  Gas gas{};
  gas.mixture = make_mixture(burned_composition(fuel, lambda));
  return gas;
}

// Equation   perfect gas: p'/p = (T'/T)^(cp/R); mixture: ln(p'/p) = (s(T') - s(T))/R, s the integral of cp dT/T
// Source     second law for an ideal gas
// Symbols    T, T' K before and after; cp, R J/(kg K)
// Valid for  T, T' > 0
// Tested by  tests/solver/gas_test.cpp
double isentropic_pressure_ratio(const Gas& gas, double T, double T_after, double Y) {
  if (gas.perfect) return std::pow(T_after / T, 1 / (gas.constant.gas_constant * gas.constant.per_cp));
  const double rise =
      entropy_at_constant_pressure(gas.mixture, T_after, Y) - entropy_at_constant_pressure(gas.mixture, T, Y);
  return std::exp(rise / gas_constant(gas.mixture, Y));
}

// Equation   s(T') = s(T) + R ln(p'/p), solved for ln T' by Newton's rule from T' = T (p'/p)^(R/cp(T))
// Source     as above; ds/d(ln T) = cp
// Symbols    as above
// Valid for  pressure_ratio > 0, T > 0. cp changes slowly: two turns leave rounding, five are the limit
// Tested by  tests/solver/gas_test.cpp
double isentropic_temperature(const Gas& gas, double T, double Y, double pressure_ratio) {
  if (gas.perfect) return T * std::pow(pressure_ratio, gas.constant.gas_constant * gas.constant.per_cp);
  const Mixture& m = gas.mixture;
  const double rise = gas_constant(m, Y) * std::log(pressure_ratio);
  const double target = entropy_at_constant_pressure(m, T, Y) + rise;
  double T_after = T * std::exp(rise / cp(m, T, Y));
  for (int turn = 0; turn < 5; ++turn) {
    const double step = (target - entropy_at_constant_pressure(m, T_after, Y)) / cp(m, T_after, Y);
    T_after *= std::exp(step);
    if (std::abs(step) < 1e-7) break;  // the next would be about its square
  }
  return T_after;
}

}  // namespace pulsewright
