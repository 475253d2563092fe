#pragma once
// What a turbine's wheel takes out of the gas.

#include <numbers>

#include "solver/gas.hpp"

namespace pulsewright {

/// Gas before the wheel, brought to rest.
struct TotalState {
  double p;  // Pa
  double T;  // K
  double Y;  // burned mass fraction
};

/// Enthalpy drop of an isentropic expansion from the total state to a static pressure, J/kg; 0 where p_out is not
/// below.
double isentropic_drop(const Gas& gas, const TotalState& inlet, double p_out);

/// Velocity that the isentropic drop would give, m/s (C0).
double spouting_velocity(double drop);

/// Wheel tip speed over spouting velocity where a radial turbine is best.
inline constexpr double best_velocity_ratio = std::numbers::sqrt2 / 2;

/// Total-to-static efficiency over wheel tip speed and spouting velocity, 0..peak.
double turbine_efficiency(double peak, double tip_speed, double spouting_velocity);

/// Share of the efficiency that is left when two scrolls carry flow_a and flow_b, kg/s.
double partial_admission(double flow_a, double flow_b);

/// Tip speed of the turbine wheel on the shaft of a compressor that does this much work, m/s. compressor_work: rise of
/// total enthalpy, J/kg; work_coefficient: that over the square of the compressor's tip speed; exducer_over_inducer:
/// compressor exducer over turbine inducer. No work: 0.
double turbine_tip_speed(double compressor_work, double work_coefficient, double exducer_over_inducer);

}  // namespace pulsewright
