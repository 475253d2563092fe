#pragma once
// When a periodic run has settled: every watched figure's remaining change, extrapolated from its last two changes, is
// below a share of its value, two cycles running.

#include <string>
#include <vector>

namespace pulsewright {

struct Watched {
  std::string name;
  double value;
  double floor = 0;  // the change is measured against max(|value|, floor)
};

class SettleWatch {
 public:
  static constexpr int least_cycles = 4, most_cycles = 60;
  static constexpr double tolerance = 1e-3;       // of the value, what is still to come
  static constexpr double slow_ratio = 0.95;      // changes that shrink slower than this ...
  static constexpr double slow_tolerance = 5e-5;  // ... count only when they are this small

  /// The figures of one more cycle, always the same ones in the same order.
  void add(const std::vector<Watched>& figures);

  bool settled() const { return cycles_ >= least_cycles && quiet_ >= 2; }
  int cycles() const { return cycles_; }
  /// The figure that is furthest from settled, with what is still to come of it in per cent, or, where the changes do
  /// not shrink, with the change itself.
  const std::string& worst() const { return worst_; }

 private:
  std::vector<double> last_, change_;
  std::string worst_;
  int cycles_ = 0, quiet_ = 0;
};

}  // namespace pulsewright
