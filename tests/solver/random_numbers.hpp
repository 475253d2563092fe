#pragma once
// Repeatable random numbers for tests: the same on every machine.

#include <cmath>
#include <cstdint>
#include <random>

namespace pulsewright {

class RandomNumbers {
 public:
  explicit RandomNumbers(std::uint64_t seed) : engine_(seed) {}

  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  /// Every decade alike.
  double spread(double low, double high) { return low * std::pow(high / low, between(0, 1)); }
  int whole(int low, int high) {  // both included
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  bool chance(double share) { return between(0, 1) < share; }

 private:
  std::mt19937_64 engine_;
};

}  // namespace pulsewright
