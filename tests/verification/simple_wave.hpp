#pragma once
// Waves of finite height in a perfect gas, closed forms: simple waves before they break, and where they break.
//   Source: L. D. Landau and E. M. Lifshitz, Fluid Mechanics, 2nd ed. 1987, sec. 101; G. B. Whitham, Linear and Nonlinear
//           Waves, 1974, ch. 6 (breaking) and ch. 8 (area change); H. W. Liepmann and A. Roshko, Elements of Gasdynamics,
//           1957, ch. 3 (piston, reflected shock).

#include "tests/verification/exact_riemann.hpp"

namespace pulsewright {

/// A wave that runs to the right into gas at rest, u(x, 0) = amplitude sin(2 pi x / wavelength), for ever.
struct SineWave {
  double gamma, amplitude, sound_at_rest, wavelength;

  double breaking_time() const;

  /// Velocity at x and t, t before the breaking time; the implicit solution found by bisection.
  double velocity(double x, double t) const;

  /// Over the values at rest, where the velocity is u.
  double pressure_ratio(double u) const;
  double density_ratio(double u) const;
};

/// A piston or valve that drives u(0, t) = amplitude sin(2 pi f t) into gas at rest: where the first shock forms.
/// head: of one half sine, whose head breaks first. continuous: of a lasting sine, whose later fronts break earlier.
double breaking_distance_head(const SineWave& wave, double frequency);
double breaking_distance_continuous(const SineWave& wave, double frequency);

/// Pressure over that ahead, behind the reflection of a shock of pressure ratio p21 from a closed end, over p2.
double reflected_shock_ratio(double p21, double gamma);

/// Mach number of a shock after a gradual change of area (approximate theory, good to 2-3 % of M - 1).
double shock_mach_after_area(double mach, double area_ratio, double gamma);

}  // namespace pulsewright
