#pragma once
// What the core that we run on can do at best: times are told as multiples of it, so that machines compare.

namespace pulsewright {

/// Double-precision fused multiply-adds on this core in GFLOP/s (an FMA is two), measured now in some 20 ms: 12 independent
/// chains of vectors of four, as x86-64-v3 has them: one yardstick, whatever build of the sweep runs.
double measure_fma_peak();

}  // namespace pulsewright
