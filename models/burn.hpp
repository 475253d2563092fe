#pragma once
// How fast the charge burns: the Wiebe curve, set by the figures a combustion analyst reads off an engine.

#include "models/crank.hpp"

namespace pulsewright {

/// Burned share by Wiebe's curve; y from 0 (start) to 1 (end), zero before.
double wiebe(double a, double m, double y);
double wiebe_slope(double a, double m, double y);  // d(wiebe)/dy

struct BurnTiming {
  CrankAngle centre;    // half of the charge is burned here
  CrankAngle duration;  // from 10 to 90 % burned
  double wiebe_a = 6.908;
  double wiebe_m = 2;
};

/// Burned share over the crank angle, cut off and scaled so that it ends at exactly 1: everything trapped burns.
class BurnCurve {
 public:
  /// Throws Error (case file) when the duration or a constant is not above zero.
  explicit BurnCurve(const BurnTiming& timing);

  CrankAngle start() const { return {start_}; }
  CrankAngle end() const { return {start_ + length_}; }
  double fraction(CrankAngle angle) const;

 private:
  double a_, m_, whole_, start_, length_;
};

/// How much later with boost the burn's centre is assumed to stand, rad/Pa: 8 degrees for each bar.
inline constexpr double assumed_burn_later = 8 * std::numbers::pi / 180 / 1e5;

}  // namespace pulsewright
