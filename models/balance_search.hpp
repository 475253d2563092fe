#pragma once
// A root of a balance that answers late: one safeguarded secant step each time that an answer is in.

#include <optional>
#include <vector>

namespace pulsewright {

struct SearchRange {
  double low, high;
  std::vector<double> kinks;  // between them, rising: places where the balance changes its slope
  double steepest;            // how fast the balance falls at most, per unit of the position: sets the first steps
  double longest;             // step
  double closeness;           // a balance this near to 0 is left alone
};

/// Goes up while the balance is above 0 and down while it is below, so that, begun at the low end, it stops at the lowest
/// place where the balance falls through 0. No step passes a kink: it is landed on first.
class BalanceSearch {
 public:
  BalanceSearch(SearchRange range, double start) : range_(std::move(range)), position_(start) {}

  /// The balance at position(); moves on. True where it moved.
  bool answer(double balance);

  double position() const { return position_; }
  bool close() const { return last_ && moved_ == 0; }  // the last answer moved nothing
  /// At an end of the range, and the balance wants it further.
  bool at_low_end() const { return close() && position_ == range_.low && last_->balance < -range_.closeness; }
  bool at_high_end() const { return close() && position_ == range_.high && last_->balance > range_.closeness; }

 private:
  struct Answer {
    double position, balance;
  };
  double slope(const Answer& now) const;
  double kept_between(double next, const Answer& now);
  double short_of_kinks(double next) const;

  SearchRange range_;
  double position_, moved_ = 0;
  std::optional<Answer> last_;
  std::optional<double> above_, below_;  // positions with a balance above and below 0
};

}  // namespace pulsewright
