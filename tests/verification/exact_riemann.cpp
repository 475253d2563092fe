// Source of the relations: H. W. Liepmann and A. Roshko, Elements of Gasdynamics, 1957, ch. 3 (shock tube); the arrangement
// of the solution in x/t follows from the characteristics.
#include "tests/verification/exact_riemann.hpp"

#include <cmath>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

double sound(const GasState& s, double gamma) { return std::sqrt(gamma * s.p / s.rho); }

/// Mach number of a shock that raises the pressure by the ratio.
double shock_mach(double ratio, double gamma) { return std::sqrt(1 + (gamma + 1) / (2 * gamma) * (ratio - 1)); }

/// Velocity that the wave to p takes from gas running into it (negative for a rarefaction).
double velocity_change(double p, const GasState& s, double gamma) {
  const double ratio = p / s.p, a = sound(s, gamma);
  if (ratio < 1) return 2 * a / (gamma - 1) * (std::pow(ratio, (gamma - 1) / (2 * gamma)) - 1);
  const double m = shock_mach(ratio, gamma);
  return 2 * a / (gamma + 1) * (m - 1 / m);
}

double density_behind(double p, const GasState& s, double gamma) {
  const double ratio = p / s.p;
  if (ratio < 1) return s.rho * std::pow(ratio, 1 / gamma);
  const double m2 = 1 + (gamma + 1) / (2 * gamma) * (ratio - 1);
  return s.rho * (gamma + 1) * m2 / ((gamma - 1) * m2 + 2);
}

/// The wave on the right of gas s that ends at pressure p and velocity u.
ExactRiemann::Wave wave_to_the_right(double p, double u, const GasState& s, double gamma) {
  const double a = sound(s, gamma);
  if (p >= s.p) {
    const double speed = s.u + a * shock_mach(p / s.p, gamma);
    return {speed, speed, true};
  }
  return {s.u + a, u + a * std::pow(p / s.p, (gamma - 1) / (2 * gamma)), false};
}

/// The gas at x/t, to the right of the contact.
GasState right_of_contact(double xi, double p, double u, const GasState& s, double gamma) {
  const ExactRiemann::Wave wave = wave_to_the_right(p, u, s, gamma);
  if (xi >= wave.outer) return s;
  if (xi <= wave.inner) return {density_behind(p, s, gamma), u, p};
  const double a0 = sound(s, gamma);
  // On the fan u + a = x/t and u - 2a/(gamma-1) is the undisturbed gas's.
  const double a = (gamma - 1) / (gamma + 1) * (xi - s.u) + 2 / (gamma + 1) * a0;
  const double ratio = std::pow(a / a0, 2 / (gamma - 1));
  return {s.rho * ratio, xi - a, s.p * std::pow(ratio, gamma)};
}

GasState mirrored(const GasState& s) { return {s.rho, -s.u, s.p}; }

}  // namespace

ExactRiemann::ExactRiemann(const GasState& left, const GasState& right, double gamma)
    : left_(left), right_(right), gamma_(gamma) {
  const double reach = 2 / (gamma - 1) * (sound(left, gamma) + sound(right, gamma));
  if (right.u - left.u >= reach) throw Error(ErrorKind::internal, "exact Riemann solution: a vacuum opens");
  const auto excess = [&](double p) {
    return velocity_change(p, left_, gamma_) + velocity_change(p, right_, gamma_) + right_.u - left_.u;
  };
  double low = std::log(1e-30), high = std::log(1e30);
  for (int turn = 0; turn < 200; ++turn) {
    const double middle = 0.5 * (low + high);
    (excess(std::exp(middle)) < 0 ? low : high) = middle;
  }
  p_ = std::exp(0.5 * (low + high));
  u_ = 0.5 * (left_.u + right_.u + velocity_change(p_, right_, gamma_) - velocity_change(p_, left_, gamma_));
}

double ExactRiemann::rho_star_left() const { return density_behind(p_, left_, gamma_); }
double ExactRiemann::rho_star_right() const { return density_behind(p_, right_, gamma_); }

ExactRiemann::Wave ExactRiemann::right_wave() const { return wave_to_the_right(p_, u_, right_, gamma_); }

ExactRiemann::Wave ExactRiemann::left_wave() const {
  const Wave wave = wave_to_the_right(p_, -u_, mirrored(left_), gamma_);
  return {-wave.outer, -wave.inner, wave.shock};
}

GasState ExactRiemann::at(double x_over_t) const {
  if (x_over_t >= u_) return right_of_contact(x_over_t, p_, u_, right_, gamma_);
  return mirrored(right_of_contact(-x_over_t, p_, -u_, mirrored(left_), gamma_));
}

}  // namespace pulsewright
