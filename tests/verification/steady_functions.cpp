#include "tests/verification/steady_functions.hpp"

#include <cmath>

namespace pulsewright {

Isentropic isentropic(double m, double g) {
  const double tau = 1 + (g - 1) / 2 * m * m;  // T0 / T
  const double area = std::pow(2 / (g + 1) * tau, (g + 1) / (2 * (g - 1))) / m;
  return {std::pow(tau, -g / (g - 1)), std::pow(tau, -1 / (g - 1)), 1 / tau, area,
          std::sqrt(g) * m * std::pow(tau, -(g + 1) / (2 * (g - 1)))};
}

double mach_at_area(double area_ratio, double gamma, bool supersonic) {
  double small = supersonic ? 1 : 1e-9, large = supersonic ? 100 : 1;
  for (int turn = 0; turn < 200; ++turn) {
    const double m = 0.5 * (small + large);
    const bool too_wide = isentropic(m, gamma).area_ratio > area_ratio;
    (too_wide == supersonic ? large : small) = m;
  }
  return 0.5 * (small + large);
}

NormalShock normal_shock(double m, double g) {
  const double m2 = m * m;
  const double pressure = 1 + 2 * g / (g + 1) * (m2 - 1);
  const double density = (g + 1) * m2 / ((g - 1) * m2 + 2);
  const double behind = std::sqrt((1 + (g - 1) / 2 * m2) / (g * m2 - (g - 1) / 2));
  return {behind, pressure, density, pressure / density, pressure * isentropic(m, g).p_p0 / isentropic(behind, g).p_p0};
}

Fanno fanno(double m, double g) {
  const double m2 = m * m;
  const double temperature = (g + 1) / (2 + (g - 1) * m2);
  const double length = (1 - m2) / (g * m2) + (g + 1) / (2 * g) * std::log(m2 * temperature);
  return {length, temperature, std::sqrt(temperature) / m, m * std::sqrt(temperature), isentropic(m, g).area_ratio};
}

Rayleigh rayleigh(double m, double g) {
  const double m2 = m * m;
  const double pressure = (1 + g) / (1 + g * m2);
  const double temperature = m2 * pressure * pressure;
  const double tau = (2 + (g - 1) * m2) / (g + 1);  // T0/T over its sonic value
  return {temperature * tau, temperature, pressure, pressure * std::pow(tau, g / (g - 1)), temperature / pressure};
}

}  // namespace pulsewright
