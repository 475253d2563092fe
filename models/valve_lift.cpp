#include "models/valve_lift.hpp"

#include <math.h>  // this Boost's pchip calls isnan without a namespace

#include <algorithm>
#include <boost/math/interpolators/pchip.hpp>
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

LiftCurve::LiftCurve(const CamCard& card) { card.table.empty() ? fit(card) : take(card.table); }

// Equation   L(t) = L_max cos^n(pi/2 (t - t_c)/D), t_c midway; L(t_c +- h) = s: D = h (pi/2)/acos((s/L_max)^(1/n))
// Source     assumed shape (our own), fitted to the card
// Symbols    t angle, h half the card's duration, D half from seat to seat, rad; s stated_at, L m; n exponent
// Valid for  0 < s < L_max; symmetric cams; zero outside t_c +- D
// Tested by  tests/models/valve_lift_test.cpp
void LiftCurve::fit(const CamCard& card) {
  refuse_impossible(card);
  lift_ = card.lift;
  exponent_ = card.exponent;
  const auto share = [&](double lift) { return std::acos(std::pow(lift / lift_, 1 / exponent_)) / half_pi; };
  centre_ = (card.opens.radians + card.closes.radians) / 2;
  half_ = (card.closes.radians - card.opens.radians) / 2 / share(card.stated_at);
  if (!(2 * half_ < cycle_angle))
    throw Error(ErrorKind::case_file, "the valve stays off its seat for a whole cycle or longer");
  const double half_open = half_ * share(open_lift);
  from_ = centre_ - half_;
  to_ = centre_ + half_;
  opens_ = centre_ - half_open;
  closes_ = centre_ + half_open;
}

// Equation   piecewise cubic through all points; slopes by Fritsch and Carlson's rule, zero at peaks
// Source     F. N. Fritsch, R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238
// Symbols    lift m over crank angle rad
// Valid for  a table that check_lift_table lets pass; zero outside it
// Tested by  tests/models/valve_lift_test.cpp
void LiftCurve::take(const std::vector<LiftPoint>& table) {
  check_lift_table(table);
  std::vector<double> angles, lifts;
  for (const LiftPoint& point : table) angles.push_back(point.angle.radians), lifts.push_back(point.lift);
  const auto highest = std::ranges::max_element(lifts);
  const auto peak = static_cast<std::size_t>(highest - lifts.begin());
  lift_ = *highest;
  centre_ = angles[peak];
  std::size_t first = 0, last = lifts.size() - 1;  // next to the seat
  while (lifts[first + 1] <= 0) ++first;
  while (lifts[last - 1] <= 0) --last;
  from_ = angles[first];
  to_ = angles[last];
  while (lifts[first + 1] <= open_lift) ++first;
  while (lifts[last - 1] <= open_lift) --last;
  const double before = angles[first], after = angles[first + 1], late = angles[last], early = angles[last - 1];
  using boost::math::interpolators::pchip;
  table_ = pchip<std::vector<double>>(std::move(angles), std::move(lifts), 0, 0);
  opens_ = crossing(before, after);
  closes_ = crossing(late, early);
}

/// Where the table's curve passes open_lift, between an angle where it is shut and one where it is open.
double LiftCurve::crossing(double shut, double open) const {
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = (shut + open) / 2;
    (table_(middle) > open_lift ? open : shut) = middle;
  }
  return open;
}

double LiftCurve::operator()(CrankAngle angle) const {
  const double turns = (angle.radians - centre_) / cycle_angle;
  const double from_centre = (turns - std::floor(turns + 0.5)) * cycle_angle, at = centre_ + from_centre;
  if (at <= from_ || at >= to_) return 0;
  if (table_) return table_(at);
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

namespace {

double coefficient(const ValveShape& v, double lift) {
  if (v.coefficients.empty()) {
    const double share = std::clamp((lift / v.head - 0.05) / 0.20, 0.0, 1.0);
    return v.coefficient_low + share * (v.coefficient_high - v.coefficient_low);
  }
  const auto above = std::ranges::lower_bound(v.coefficients, lift, {}, &std::pair<double, double>::first);
  if (above == v.coefficients.begin()) return above->second;
  if (above == v.coefficients.end()) return v.coefficients.back().second;
  const auto below = above - 1;
  return below->second + (lift - below->first) / (above->first - below->first) * (above->second - below->second);
}

}  // namespace

// Equation   A = min(C pi d L, A_throat) per valve; C linear in L/d between 0.05 and 0.25, constant outside; or linear
//            between the points of a table over L
// Source     curtain area and its coefficient: form of Heywood 1988, section 6.3.2; coefficients assumed, from memory
// Symbols    d head diameter, L lift m; A effective area m2
// Valid for  any lift >= 0; one coefficient for both directions of flow
// Tested by  tests/models/valve_lift_test.cpp
double flow_area(const ValveShape& v, double lift) {
  if (lift <= 0) return 0;
  return std::min(v.count * coefficient(v, lift) * std::numbers::pi * v.head * lift, throat_area(v));
}

}  // namespace pulsewright
