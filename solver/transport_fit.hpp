#pragma once
// Viscosity and conductivity of air and burned gas as polynomials for the loop over cells.

#include <algorithm>

#include "solver/blend.hpp"

namespace pulsewright {

struct Composition;

struct TransportFit {
  static constexpr double T_low = 250, T_high = 3000;  // K
  static constexpr std::size_t terms = 6;

  Blend<terms> viscosity;     // Pa s, in powers of z
  Blend<terms> conductivity;  // W/(m K)
};

/// Fit to the CEA data of air (Y = 0) and this burned gas (Y = 1).
TransportFit make_transport_fit(const Composition& burned);

// Equation   polynomial in z = (T - middle)/half span of 250..3000 K, its coefficients in a straight line in Y
// Source     fit to the data named in solver/transport.cpp
// Symbols    viscosity Pa s; conductivity W/(m K); T K
// Valid for  250..3000 K; outside, the value at the end
// Tested by  tests/solver/transport_test.cpp
inline double transport_z(double T) {
  constexpr double middle = (TransportFit::T_low + TransportFit::T_high) / 2;
  constexpr double half_span = (TransportFit::T_high - TransportFit::T_low) / 2;
  return (std::min(std::max(T, TransportFit::T_low), TransportFit::T_high) - middle) * (1 / half_span);
}
inline double viscosity(const TransportFit& f, double T, double Y) { return f.viscosity.at(transport_z(T), Y); }
inline double conductivity(const TransportFit& f, double T, double Y) { return f.conductivity.at(transport_z(T), Y); }

}  // namespace pulsewright
