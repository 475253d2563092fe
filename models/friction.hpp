#pragma once
// From mean pressures to torque.

#include <numbers>

namespace pulsewright {

/// Constants of the friction mean pressure; all assumed.
struct FrictionLaw {
  double constant = 0.4e5;       // Pa
  double of_peak = 0.005;        // times peak pressure
  double of_speed = 0.09e5;      // Pa s/m, times mean piston speed
  double of_speed_squared = 90;  // Pa s2/m2
};

// Equation   FMEP = 0.4 bar + 0.005 p_max + 0.09 Sp + 0.0009 Sp^2
// Source     form of S. K. Chen and P. F. Flynn, SAE 650733, 1965; constants assumed, from memory
// Symbols    p_max peak cylinder pressure; Sp mean piston speed m/s; FMEP in bar in this line, Pa in the code
// Valid for  warm engines; +-25 %
// Tested by  tests/models/friction_test.cpp
inline double friction_mean_pressure(const FrictionLaw& law, double peak_pressure, double mean_piston_speed) {
  return law.constant + law.of_peak * peak_pressure +
         (law.of_speed + law.of_speed_squared * mean_piston_speed) * mean_piston_speed;
}

/// Torque of one cylinder: mean effective pressure times displacement over the angle of a cycle, Nm.
inline double torque(double mean_effective_pressure, double displacement) {
  return mean_effective_pressure * displacement / (4 * std::numbers::pi);
}

}  // namespace pulsewright
