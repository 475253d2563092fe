#include "models/balance_search.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

constexpr double flattest = 0.15;  // of the steepest slope: what a secant of the wrong sign or too flat a one counts as
constexpr double least_bracket = 1e-3;  // of the range: narrower ones come from answers that were not settled yet

}  // namespace

// Equation   x' = x - f/s, s the secant's slope through the last two answers, between the steepest and the flattest
// Source     secant method, safeguarded by a bracket
// Symbols    x position, f balance
// Valid for  balances that fall through 0 where the answer is sought
// Tested by  tests/models/balance_search_test.cpp
double BalanceSearch::slope(const Answer& now) const {
  const double steep = -range_.steepest;
  if (!last_ || last_->position == now.position) return steep;
  const double middle = 0.5 * (last_->position + now.position);
  for (double kink : range_.kinks)
    if ((kink - now.position) * (kink - last_->position) < 0) return steep;
  // Landed on a kink: what lies beyond has a slope of its own.
  for (double kink : range_.kinks)
    if (now.position == kink && (now.balance > 0) == (middle < kink)) return steep;
  const double secant = (now.balance - last_->balance) / (now.position - last_->position);
  return std::clamp(secant, 2 * steep, flattest * steep);
}

double BalanceSearch::kept_between(double next, const Answer& now) {
  (now.balance > 0 ? above_ : below_) = now.position;
  if (!above_ || !below_) return next;
  const double low = std::min(*above_, *below_), high = std::max(*above_, *below_);
  if (*above_ > *below_ || high - low < least_bracket * (range_.high - range_.low)) {
    above_.reset(), below_.reset();
    return next;
  }
  return next > low && next < high ? next : 0.5 * (low + high);
}

double BalanceSearch::short_of_kinks(double next) const {
  for (double kink : range_.kinks)
    if ((kink - position_) * (next - kink) > 0) next = kink;
  return next;
}

bool BalanceSearch::answer(double balance) {
  const Answer now{position_, balance};
  moved_ = 0;
  if (std::abs(balance) > range_.closeness) {
    const double step = std::clamp(-balance / slope(now), -range_.longest, range_.longest);
    const double next = std::clamp(kept_between(position_ + step, now), range_.low, range_.high);
    moved_ = short_of_kinks(next) - position_;
  }
  last_ = now;
  position_ += moved_;
  if (moved_ != 0) {  // exactly on a kink or an end, whatever rounding says
    for (double place : range_.kinks)
      if (std::abs(position_ - place) < 1e-12) position_ = place;
  }
  return moved_ != 0;
}

}  // namespace pulsewright
