#pragma once
// Numbers as the trade writes them: 36.6, 1e-3, 3/4, 1-1/4, 1 1/4.

#include <string_view>

namespace pulsewright {

struct LeadingNumber {
  double value;
  std::string_view rest;  // what follows the number, trimmed
};

/// Reads the number at the start of a text. Throws Error (case_file) for: no number, a decimal comma, a fraction with
/// zero below, NaN, infinity, and what a double cannot hold (1e400, 1e-400).
LeadingNumber leading_number(std::string_view text);

}  // namespace pulsewright
