#include "solver/gas.hpp"

#include <fmt/format.h>

#include "shared/error.hpp"

namespace pulsewright {

Gas perfect_gas(double gamma, double R) {
  if (!(gamma > 1 && std::isfinite(gamma) && R > 0 && std::isfinite(R)))
    throw Error(ErrorKind::internal,
                fmt::format("a perfect gas needs gamma above 1 and R above 0, not gamma {} and R {}", gamma, R));
  const double cv = R / (gamma - 1);
  Gas gas{};
  gas.perfect = true;
  gas.constant = {R, cv, 1 / cv, 1 / (cv + R), gamma};
  return gas;
}

// Equation   integral of cp dT/T from T to T' = R ln(p'/p); perfect gas: T' = T (p'/p)^(R/cp)
// Source     second law for an ideal gas
// Symbols    T, T' K before and after; p'/p pressure_ratio; cp, R J/(kg K)
// Valid for  pressure_ratio > 0
// Tested by  tests/solver/gas_test.cpp
double isentropic_temperature(const Gas& gas, double T, double, double pressure_ratio) {
  return T * std::pow(pressure_ratio, gas.constant.gas_constant * gas.constant.per_cp);
}

}  // namespace pulsewright
