#include "models/losses.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pulsewright {

// Equation   K = (0.10 + 2.4 f) sin(a/2) + 6.6 f (sqrt(sin(a/2)) + sin(a/2)) / (r/d)^(4 a/pi)
//            the book adds the friction along the arc, f a r/d
// Source     D. C. Rennels and H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, 2012, chapter 15 (second
//            hand: an open library's tabulated values are reproduced to 3e-5)
// Symbols    a angle rad; r centre-line radius, d bore m; f Darcy factor (carries Reynolds number and roughness)
// Valid for  smooth bends of round tube, r/d 0.5 and more, to 180 degrees; incompressible; handbooks spread +-30 %
// Tested by  tests/models/losses_test.cpp, tests/verification/pipe_checks.cpp
double bend_loss(double angle, double radius_over_bore, double darcy) {
  const double s = std::sin(std::clamp(angle, 0.0, std::numbers::pi) / 2);
  const double tightness = std::pow(std::max(radius_over_bore, 0.5), -4 * angle / std::numbers::pi);
  return (0.10 + 2.4 * darcy) * s + 6.6 * darcy * (std::sqrt(s) + s) * tightness;
}

double bend_loss_with_friction(double angle, double radius_over_bore, double darcy) {
  return darcy * angle * radius_over_bore + bend_loss(angle, radius_over_bore, darcy);
}

// Equation   share = min(1, 3.2 tan(b)^1.25), K = share (1 - A1/A2)^2
// Source     I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 5-2, expansion part (from memory, so
//            checked against five handbooks' tables); the cap is the sudden widening of Borda and Carnot
// Symbols    b half-angle of the equal-area cone; A1, A2 smaller and larger area; friction along the cone not included
// Valid for  cones of round section, incompressible; handbooks agree to +-25 % between 10 and 60 degrees in all
// Tested by  tests/models/losses_test.cpp, tests/verification/pipe_checks.cpp
double diffuser_share(double half_angle) {
  if (half_angle >= std::numbers::pi / 4) return 1;
  return std::min(1.0, 3.2 * std::pow(std::tan(std::max(half_angle, 0.0)), 1.25));
}

// Equation   share = sqrt((sin b - sin 15 deg)/(1 - sin 15 deg)), 0 below 15 deg; K = share 0.5 (1 - A1/A2)
// Source     0.5 (1 - A1/A2) and the root of sin b: Crane TP-410, 2009 (second hand); shifted by us to begin at 15 deg
// Symbols    b half-angle of the equal-area cone; A1, A2 smaller and larger area
// Valid for  cones of round section, incompressible; forms in print differ by a third at the sudden end
// Tested by  tests/models/losses_test.cpp, tests/verification/pipe_checks.cpp
double contraction_share(double half_angle) {
  const double start = std::sin(std::numbers::pi / 12);
  const double s = std::sin(std::clamp(half_angle, 0.0, std::numbers::pi / 2));
  return std::sqrt(std::max(0.0, (s - start) / (1 - start)));
}

double diffuser_loss(double half_angle, double small_over_large) {
  return diffuser_share(half_angle) * (1 - small_over_large) * (1 - small_over_large);
}

double contraction_loss(double half_angle, double small_over_large) {
  return contraction_share(half_angle) * 0.5 * (1 - small_over_large);
}

}  // namespace pulsewright
