#pragma once
// Values on the command line: what is wrong with one is an Error of usage that names its option.

#include <string>
#include <vector>

#include "shared/units.hpp"

namespace pulsewright {

/// "5 mm" -> SI. Throws Error (usage).
double option_quantity(const std::string& text, Dimension dimension, const std::string& option);

/// --rpm: "2500,3500" -> revolutions per minute. Throws Error (usage).
std::vector<double> parse_rpm(const std::string& text);

/// --cell: "5 mm" -> m, above 0; the case knows its own limits. Throws Error (usage).
double parse_cell(const std::string& text);

}  // namespace pulsewright
