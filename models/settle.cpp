#include "models/settle.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace pulsewright {

// Equation   still to come = |dx| r/(1 - r), r = |dx| / |dx before|, never below 0.3; settled where it is < 0.1 % of |x|
// Source     geometric extrapolation of a linearly converging sequence (A. C. Aitken, 1926); the floor 0.3 guards against
//            a chance r near zero; assumed
// Symbols    dx change of the figure from cycle to cycle
// Valid for  r < 0.95; slower figures count as settled only when |dx| itself is below 0.005 %
// Tested by  tests/models/settle_test.cpp
void SettleWatch::add(const std::vector<Watched>& figures) {
  std::vector<double> change(figures.size());
  double worst = 0;
  bool quiet = cycles_ >= 2;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const double size = std::max(std::abs(figures[i].value), figures[i].floor);
    change[i] = last_.empty() ? size : std::abs(figures[i].value - last_[i]);
    if (change_.empty() || size == 0) continue;
    const double r = std::max(change_[i] > 0 ? change[i] / change_[i] : 0.0, 0.3);
    const bool slow = r >= slow_ratio;
    const double left = slow ? change[i] / size * tolerance / slow_tolerance : change[i] / size * r / (1 - r);
    if (!(left < tolerance)) quiet = false;
    if (left > worst || std::isnan(left)) {
      worst = left;
      worst_ = slow ? fmt::format("{} (from cycle to cycle by {:.2g} %)", figures[i].name, 100 * change[i] / size)
                    : fmt::format("{} ({:.2g} % still to come)", figures[i].name, 100 * left);
    }
  }
  last_.resize(figures.size());
  std::transform(figures.begin(), figures.end(), last_.begin(), [](const Watched& w) { return w.value; });
  change_ = std::move(change);
  ++cycles_;
  quiet_ = quiet ? quiet_ + 1 : 0;
}

}  // namespace pulsewright
