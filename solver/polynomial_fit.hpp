#pragma once
// Polynomials fitted once at start-up.

#include <functional>
#include <vector>

namespace pulsewright {

/// Coefficients of z^0..z^degree, z = -1..1, whose largest relative error against `f` (positive) is about the smallest
/// possible.
std::vector<double> fit_relative(const std::function<double(double)>& f, int degree);

}  // namespace pulsewright
