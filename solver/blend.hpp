#pragma once
// Polynomials whose coefficients run in a straight line from fresh gas (Y = 0) to burned gas (Y = 1). The loops here
// are unrolled by the compiler: a loop over cells that calls them has neither branch nor call, and vectorises.

#include <array>
#include <cstddef>

namespace pulsewright {

template <std::size_t N>
struct Blend {
  std::array<double, N> fresh{}, more{};  // the coefficient of x^k is fresh[k] + Y more[k]

  double coefficient(std::size_t k, double Y) const { return fresh[k] + Y * more[k]; }

  double at(double x, double Y) const {
    double sum = coefficient(N - 1, Y);
    for (std::size_t k = N - 1; k-- > 0;) sum = sum * x + coefficient(k, Y);
    return sum;
  }
};

/// A polynomial about x: value + slope d + second d^2 + third d^3 + ..., taken along in one pass.
struct Taylor {
  double value, slope, second, third;
};

template <std::size_t N>
inline Taylor taylor(const Blend<N>& p, double x, double Y) {
  Taylor t{p.coefficient(N - 1, Y), 0, 0, 0};
  for (std::size_t k = N - 1; k-- > 0;) {
    t.third = t.third * x + t.second;
    t.second = t.second * x + t.slope;
    t.slope = t.slope * x + t.value;
    t.value = t.value * x + p.coefficient(k, Y);
  }
  return t;
}

}  // namespace pulsewright
