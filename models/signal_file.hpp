#pragma once
// A prescribed wave in a file: comma separated, a heading line, then time, pressure and temperature row by row.

#include <string>
#include <vector>

#include "solver/end_wave.hpp"

namespace pulsewright {

/// From the text of the file `name`: heading "time_s,pressure_Pa,temperature_K", lines that begin with # left out.
/// Throws Error (case_file) with the line of the file: a wrong heading, not three numbers, times that do not rise,
/// values that are not positive.
std::vector<SignalPoint> parse_signal(const std::string& text, const std::string& name);

}  // namespace pulsewright
