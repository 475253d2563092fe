#pragma once
// The slope across a cell that makes no new highs or lows.

namespace pulsewright {

// Plain selects: a loop over them vectorises.
inline double lesser(double a, double b) { return a < b ? a : b; }
inline double greater(double a, double b) { return a > b ? a : b; }

// Equation   s = median-like: sign and min(2|a|, 2|b|, |a+b|/2) where a and b agree in sign, else 0
// Source     B. van Leer, J. Comput. Phys. 23 (1977) 276 (monotonised central)
// Symbols    a, b one-sided differences, s limited difference across the cell
// Valid for  any a, b
// Tested by  tests/solver/sweep_test.cpp
inline double limited(double a, double b) {
  const double low = lesser(a, b), high = greater(a, b);
  const double up = 2 * greater(low, 0.0), down = 2 * lesser(high, 0.0);
  return greater(lesser(0.5 * (a + b), up), down);
}

}  // namespace pulsewright
