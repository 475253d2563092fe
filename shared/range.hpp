#pragma once
// What a value may be: a range that knows how to say itself.

#include <limits>

namespace pulsewright {

struct Range {
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
  bool low_itself = true;  // is low allowed?
  bool high_itself = true;

  /// NaN and infinity are in no range.
  bool holds(double value) const {
    if (!(value > -std::numeric_limits<double>::infinity() && value < std::numeric_limits<double>::infinity()))
      return false;
    return (low_itself ? value >= low : value > low) && (high_itself ? value <= high : value < high);
  }

  /// A value inside, to go on with after a fault.
  double some_value() const {
    const bool has_low = low > -std::numeric_limits<double>::infinity();
    const bool has_high = high < std::numeric_limits<double>::infinity();
    if (has_low && has_high) return low + 0.5 * (high - low);
    if (has_low) return low + 1;
    return has_high ? high - 1 : 1;
  }
};

constexpr Range between(double low, double high) { return {low, high}; }
constexpr Range above(double low, double high = std::numeric_limits<double>::infinity()) {
  return {low, high, false, true};
}
constexpr Range at_least(double low, double high = std::numeric_limits<double>::infinity()) { return {low, high}; }

}  // namespace pulsewright
