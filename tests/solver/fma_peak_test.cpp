#include "solver/fma_peak.hpp"

#include <gtest/gtest.h>

namespace pulsewright {
namespace {

// Bounds that any machine keeps, also one that is busy or whose build is slowed by sanitizers: a core does more than
// 10 MFLOP/s and less than 10 TFLOP/s. Nothing finer can be asked of a machine that is not known.
TEST(FmaPeak, IsThatOfACore) {
  const double peak = measure_fma_peak();
  EXPECT_GT(peak, 0.01);
  EXPECT_LT(peak, 1e4);  // false for infinity and for NaN
}

}  // namespace
}  // namespace pulsewright
