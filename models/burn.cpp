#include "models/burn.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {

// Equation   x = 1 - exp(-a y^(m+1)), y = (t - t_0)/dt
// Source     Heywood 1988, eq. 9.20
// Symbols    y share of the burn's length; a, m shape (6.908 and 2 assumed: 99.9 % burned at y = 1)
// Valid for  y >= 0; zero before
// Tested by  tests/models/burn_test.cpp, tests/verification/engine_checks.cpp
double wiebe(double a, double m, double y) { return y <= 0 ? 0 : -std::expm1(-a * std::pow(y, m + 1)); }

double wiebe_slope(double a, double m, double y) {
  return y <= 0 ? 0 : a * (m + 1) * std::pow(y, m) * std::exp(-a * std::pow(y, m + 1));
}

// Equation   y_q = (-ln(1 - q x(1))/a)^(1/(m+1)); length = duration/(y_90 - y_10), start = centre - y_50 length
// Source     inverse of the Wiebe curve
// Symbols    q burned share after scaling with x(1), so that q = 1 at y = 1
// Valid for  any a, m, duration above zero
// Tested by  tests/models/burn_test.cpp
BurnCurve::BurnCurve(const BurnTiming& t) : a_(t.wiebe_a), m_(t.wiebe_m), whole_(wiebe(t.wiebe_a, t.wiebe_m, 1)) {
  if (!(t.duration.radians > 0)) throw Error(ErrorKind::case_file, "the burn duration must be above zero");
  if (!(a_ > 0 && m_ >= 0)) throw Error(ErrorKind::case_file, "wiebe_a must be above zero, wiebe_m zero or above");
  const auto y = [&](double share) { return std::pow(-std::log1p(-share * whole_) / a_, 1 / (m_ + 1)); };
  length_ = t.duration.radians / (y(0.9) - y(0.1));
  start_ = t.centre.radians - y(0.5) * length_;
}

double BurnCurve::fraction(CrankAngle angle) const {
  const double y = (angle.radians - start_) / length_;
  if (y <= 0) return 0;
  return y >= 1 ? 1 : wiebe(a_, m_, y) / whole_;
}

}  // namespace pulsewright
