#include "tests/verification/simple_wave.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pulsewright {

using std::numbers::pi;

double SineWave::breaking_time() const { return wavelength / ((gamma + 1) * amplitude * pi); }

double SineWave::velocity(double x, double t) const {
  // u = U sin k(x - (a0 + (gamma+1)/2 u) t): before breaking the difference rises with u.
  const double k = 2 * pi / wavelength;
  double low = -std::abs(amplitude), high = std::abs(amplitude);
  for (int turn = 0; turn < 60; ++turn) {
    const double u = 0.5 * (low + high);
    const double start = x - (sound_at_rest + (gamma + 1) / 2 * u) * t;
    (u < amplitude * std::sin(k * start) ? low : high) = u;
  }
  return 0.5 * (low + high);
}

double SineWave::density_ratio(double u) const {
  return std::pow(1 + (gamma - 1) / 2 * u / sound_at_rest, 2 / (gamma - 1));
}

double SineWave::pressure_ratio(double u) const { return std::pow(density_ratio(u), gamma); }

double breaking_distance_head(const SineWave& wave, double frequency) {
  return 2 * wave.sound_at_rest * wave.sound_at_rest / ((wave.gamma + 1) * wave.amplitude * 2 * pi * frequency);
}

double breaking_distance_continuous(const SineWave& wave, double frequency) {
  // Fronts sent at neighbouring phases meet where x = c^2 / (dc/dt); the least over one turn, on a fine grid.
  double least = breaking_distance_head(wave, frequency);
  const double steepness = (wave.gamma + 1) / 2;
  for (int i = 0; i < 200000; ++i) {
    const double phase = 2 * pi * (i / 200000.0);
    const double speed = wave.sound_at_rest + steepness * wave.amplitude * std::sin(phase);
    const double rise = steepness * wave.amplitude * 2 * pi * frequency * std::cos(phase);
    if (rise > 0) least = std::min(least, speed * speed / rise);
  }
  return least;
}

double reflected_shock_ratio(double p21, double gamma) {
  return ((3 * gamma - 1) * p21 - (gamma - 1)) / ((gamma - 1) * p21 + (gamma + 1));
}

double shock_mach_after_area(double mach, double area_ratio, double g) {
  // dM/d(ln A) = -(M^2 - 1)/(M lambda(M)), by Runge-Kutta of order 4.
  const auto slope = [g](double m) {
    const double m2 = m * m, mu = std::sqrt(((g - 1) * m2 + 2) / (2 * g * m2 - (g - 1)));
    const double lambda = (1 + 2 / (g + 1) * (1 - mu * mu) / mu) * (1 + 2 * mu + 1 / m2);
    return -(m2 - 1) / (m * lambda);
  };
  constexpr int steps = 200;
  const double h = std::log(area_ratio) / steps;
  for (int i = 0; i < steps; ++i) {
    const double a = slope(mach), b = slope(mach + h / 2 * a), c = slope(mach + h / 2 * b), d = slope(mach + h * c);
    mach += h / 6 * (a + 2 * b + 2 * c + d);
  }
  return mach;
}

}  // namespace pulsewright
