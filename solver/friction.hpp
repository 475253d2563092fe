#pragma once
// What the wall of a duct does to the gas: friction and heat, as plain functions of the Reynolds number.

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>

namespace pulsewright {

inline constexpr double laminar_up_to = 2300, turbulent_from = 4000;  // Reynolds numbers

/// (relative roughness / 3.7)^1.11: what of the roughness enters the turbulent law. Constant along a run, so kept by cell.
double roughness_term(double relative_roughness);

/// Darcy friction factor (four times Fanning's) of a pipe; relative roughness = roughness / hydraulic diameter.
/// Laminar below Re 2300, turbulent above 4000, blended smoothly between. Re 0 gives infinity.
double darcy_factor(double reynolds, double relative_roughness);

/// Base-10 logarithm of a positive normal number without a call or a branch, so that loops over it vectorise. Absolute
/// error below 4e-9: mantissa m in 0.7..1.41, ln m = 2 artanh(s), s = (m - 1)/(m + 1), by its series.
inline double quick_log10(double x) {
  constexpr std::uint64_t root_half = 0x3FE6A09E00000000U;  // just below sqrt(1/2)
  const std::uint64_t bits = std::bit_cast<std::uint64_t>(x) - root_half;
  const double m = std::bit_cast<double>((bits & 0x000FFFFFFFFFFFFFU) + root_half);
  // the exponent, biased by 1024 to stay positive, becomes a double when put under 2^52
  const std::uint64_t exponent = ((bits + (1024ULL << 52)) >> 52) | 0x4330000000000000U;
  const double s = (m - 1) / (m + 1), q = s * s;
  const double ln_m = 2 * s * (1 + q * (1.0 / 3 + q * (1.0 / 5 + q * (1.0 / 7 + q * (1.0 / 9)))));
  return 0.30102999566398120 * (std::bit_cast<double>(exponent) - (0x1p52 + 1024)) + 0.43429448190325183 * ln_m;
}

// Equation   f = 64/Re (laminar); f = [1.8 log10((e/3.7)^1.11 + 6.9/Re)]^-2 (turbulent); blended by x^2 (3 - 2x) between
//            Re 2300 and 4000
// Source     Hagen-Poiseuille; S. E. Haaland, J. Fluids Eng. 105 (1983) 89; the blend is our own
// Symbols    f Darcy factor; Re Reynolds number on hydraulic diameter; e relative roughness; x from 0 to 1 over the blend
// Valid for  fully developed steady pipe flow, Re to 1e8, e to 0.05; pulsating flow is taken as a row of steady states
// Tested by  tests/solver/friction_test.cpp, tests/verification/pipe_checks.cpp
inline double blended_darcy(double reynolds, double log10_of_bracket) {
  const double x = std::min(std::max((reynolds - laminar_up_to) / (turbulent_from - laminar_up_to), 0.0), 1.0);
  const double turbulent = x * x * (3 - 2 * x), t = 1.8 * log10_of_bracket;
  return turbulent / (t * t) + (1 - turbulent) * 64 / reynolds;
}

/// darcy_factor for loops over cells; relative error below 1e-8.
inline double quick_darcy(double reynolds, double rough) {
  return blended_darcy(reynolds, quick_log10(rough + 6.9 / reynolds));
}

// Equation   Nu = max(3.66, 0.07 Re^0.75), the power as two square roots
// Source     form after C. Depcik and D. Assanis, SAE 2002-01-0372; constants from memory; 3.66 laminar, wall of one
//            temperature
// Symbols    Nu = h D/k on hydraulic diameter (Prandtl number of gas taken up in 0.07); Re from the momentary |u|
// Valid for  exhaust manifolds, Re to about 3e5; some twice the steady pipe; spread: the range of run.wall_heat_factor
// Tested by  tests/solver/friction_test.cpp, tests/verification/pipe_checks.cpp
inline double nusselt(double reynolds) { return std::max(3.66, 0.07 * std::sqrt(reynolds * std::sqrt(reynolds))); }

}  // namespace pulsewright
