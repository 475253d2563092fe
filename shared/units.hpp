#pragma once
// Dimensional values: a number and a unit as the fabricator writes them, SI as the solver wants them.
//   "86 mm", "1-1/4 in", "1 1/2 in", "18 psi", "45 degC", "15 deg", "60 cm^3"
// The number is read here, the unit alone goes to UDUNITS-2. Units in any letter case; added: deg, thou, Nm, C, F, PS.
// Gauge or absolute is said by the key, never guessed: "psig" where absolute is asked is an error, and the other way.

#include <string>
#include <string_view>
#include <utility>

#include "shared/range.hpp"

namespace pulsewright {

enum class Dimension {
  length,                  // m
  area,                    // m2
  volume,                  // m3
  pressure_absolute,       // Pa
  pressure_gauge,          // Pa above ambient
  pressure_difference,     // Pa
  temperature,             // K
  temperature_difference,  // K
  angle,                   // rad
  time,                    // s
  mass,                    // kg
  mass_flow,               // kg/s
  velocity,                // m/s
  inertia,                 // kg m2
  heat_flux,               // W/m2
  power,                   // W
  torque,                  // N m
  force,                   // N
  density,                 // kg/m3
  stiffness,               // N/m
  conductivity,            // W/(m K)
  heat_transfer            // W/(m2 K)
};

/// "a length", "an absolute pressure", ...
std::string_view dimension_name(Dimension dimension);

/// A value for example, "86 mm".
std::string_view dimension_example(Dimension dimension);

/// What a value of this dimension may be where nothing narrower is said, SI: wide enough for any workshop, narrow
/// enough to stop a slip of the pen such as 1e300 mm.
Range usual_range(Dimension dimension);

/// The SI value in the workshop's unit of this dimension, for messages: 0.0866 -> "86.6 mm". Angles in deg, pressures
/// in bar.
std::string in_words(double value, Dimension dimension);

/// The value in SI. `key` is named in messages. Throws Error (case_file) with both what was found and what is wanted.
double parse_quantity(std::string_view text, Dimension dimension, std::string_view key);

/// "36 mm x 28 mm" -> its two halves, trimmed (x, X, a star or the multiplication sign); the second is empty if there
/// is no x.
std::pair<std::string_view, std::string_view> split_by_x(std::string_view text);

/// "36 mm x 28 mm", or "36 x 28 mm": two values of one dimension.
std::pair<double, double> parse_pair(std::string_view text, Dimension dimension, std::string_view key);

}  // namespace pulsewright
