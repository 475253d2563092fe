#include "models/valve_lift.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace pulsewright {
namespace {

constexpr double half_pi = std::numbers::pi / 2;

void refuse_impossible(const CamCard& card) {
  const double duration = card.closes.radians - card.opens.radians;
  if (!(card.lift > card.stated_at && card.stated_at > 0 && card.lift > open_lift))
    throw Error(ErrorKind::case_file,
                "the valve's lift must be above 0.1 mm and above the lift at which its timing is stated");
  if (!(duration > 0)) throw Error(ErrorKind::case_file, "the valve closes before it opens");
  if (!(duration < cycle_angle)) throw Error(ErrorKind::case_file, "the valve stays open for a whole cycle or longer");
  if (!(card.exponent >= 1)) throw Error(ErrorKind::case_file, "the exponent of the lift curve must be 1 or above");
}

}  // namespace

// Equation   L(t) = L_max cos^n(pi/2 (t - t_c)/D), t_c midway; L(t_c +- h) = s: D = h (pi/2)/acos((s/L_max)^(1/n))
// Source     assumed shape (our own), fitted to the card
// Symbols    t angle, h half the card's duration, D half from seat to seat, rad; s stated_at, L m; n exponent
// Valid for  0 < s < L_max; symmetric cams; zero outside t_c +- D
// Tested by  tests/models/valve_lift_test.cpp
LiftCurve::LiftCurve(const CamCard& card) : lift_(card.lift), exponent_(card.exponent) {
  refuse_impossible(card);
  const auto share = [&](double lift) { return std::acos(std::pow(lift / lift_, 1 / exponent_)) / half_pi; };
  centre_ = (card.opens.radians + card.closes.radians) / 2;
  half_ = (card.closes.radians - card.opens.radians) / 2 / share(card.stated_at);
  half_open_ = half_ * share(open_lift);
  if (!(2 * half_ < cycle_angle))
    throw Error(ErrorKind::case_file, "the valve stays off its seat for a whole cycle or longer");
}

double LiftCurve::operator()(CrankAngle angle) const {
  const double turns = (angle.radians - centre_) / cycle_angle;
  const double from_centre = (turns - std::floor(turns + 0.5)) * cycle_angle;
  if (std::abs(from_centre) >= half_) return 0;
  const double cosine = std::cos(half_pi * from_centre / half_);
  return lift_ * (exponent_ == 2 ? cosine * cosine : std::pow(cosine, exponent_));
}

Overlap overlap(const LiftCurve& exhaust, const LiftCurve& intake) {
  const CrankAngle to = wrapped(exhaust.closes(), exhaust.centre());
  return {wrapped(intake.opens(), exhaust.centre()), to};
}

double throat_area(const ValveShape& v) {
  return v.count * std::numbers::pi / 4 * v.head * v.head * (v.throat * v.throat - v.stem * v.stem);
}

// Equation   A = min(C(L/d) pi d L, A_throat) per valve; C linear in L/d between 0.05 and 0.25, constant outside
// Source     curtain area and its coefficient: form of Heywood 1988, section 6.3.2; coefficients assumed, from memory
// Symbols    d head diameter, L lift m; A effective area m2
// Valid for  any lift >= 0; one coefficient for both directions of flow
// Tested by  tests/models/valve_lift_test.cpp
double flow_area(const ValveShape& v, double lift) {
  if (lift <= 0) return 0;
  const double share = std::clamp((lift / v.head - 0.05) / 0.20, 0.0, 1.0);
  const double coefficient = v.coefficient_low + share * (v.coefficient_high - v.coefficient_low);
  return std::min(v.count * coefficient * std::numbers::pi * v.head * lift, throat_area(v));
}

}  // namespace pulsewright
