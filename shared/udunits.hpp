#pragma once
// The fence round UDUNITS-2: the only file that sees it is udunits.cpp.

#include <string>

namespace pulsewright {

struct Conversion {
  bool known = false;       // the unit exists
  bool comparable = false;  // and measures what `to` measures
  double value = 0;         // in unit `to`
  double difference = 0;    // in unit `to`, taken as a difference: 18 degF is 10 K
};

/// Throws Error (internal) if the unit data base is missing or `to`, which is ours, is not a unit.
Conversion converted(double value, const std::string& from, const std::string& to);

}  // namespace pulsewright
