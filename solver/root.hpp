#pragma once
// Newton's method held inside a bracket: the few turns that every element's relation takes.

#include <cmath>

namespace pulsewright {

/// A function's value and its slope.
struct Slope {
  double value;
  double slope;
};

/// Where a function that starts at or above zero in lo and falls to or below zero in hi passes zero. A Newton step that
/// leaves the bracket, or has no usable slope, is replaced by a bisection. tolerance is absolute, in x.
template <class Function>
double falling_root(const Function& f, double lo, double hi, double guess, double tolerance) {
  constexpr int most_turns = 80;
  double x = guess > lo && guess < hi ? guess : 0.5 * (lo + hi);
  for (int turn = 0; turn < most_turns; ++turn) {
    const Slope s = f(x);
    if (s.value == 0) return x;
    (s.value > 0 ? lo : hi) = x;
    double next = x - s.value / s.slope;
    if (!(next > lo && next < hi)) next = std::abs(next - x) <= tolerance ? x : 0.5 * (lo + hi);
    if (std::abs(next - x) <= tolerance || hi - lo <= tolerance) return next;
    x = next;
  }
  return x;
}

}  // namespace pulsewright
