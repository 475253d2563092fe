#pragma once
// The exact wave that an element sends into a duct: the relations of a shock or a simple rarefaction running from the
// duct's end into the gas there, for a gas with gamma frozen over the step. All velocities are toward the element.

#include "solver/element.hpp"

namespace pulsewright {

/// Velocity that the wave takes away: w* = w - wave_slowdown(p*, duct). Rises with p*, zero at p* = p; m/s.
double wave_slowdown(double p_star, const EndState& duct);

/// d(wave_slowdown)/dp*, always positive; m/(s Pa).
double wave_slowdown_slope(double p_star, const EndState& duct);

/// The pressure behind the wave that brings the gas to velocity w_star; the inverse of wave_slowdown. Never negative.
double wave_pressure(double w_star, const EndState& duct);

/// Gas of the duct behind the wave (between wave and contact): same Y; rho, w, T, c for pressure p_star.
EndState behind_wave(double p_star, const EndState& duct);

/// The same by its velocity: gas of the duct behind the wave that brings it to w_star. Kept just above vacuum.
EndState brought_to(double w_star, const EndState& duct);

/// Gas of the duct at the end face (x/t = 0) while it flows toward the element (w* >= 0) at star pressure p_star: the gas
/// behind the wave; or, where the wave is swept toward the element, the undisturbed gas or the sonic state of the fan.
EndState face_toward_element(double p_star, const EndState& duct);

}  // namespace pulsewright
