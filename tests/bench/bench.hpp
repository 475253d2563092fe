#pragma once
// What the benchmark programs share: counters that machines can be compared by.

#include <benchmark/benchmark.h>

#include <chrono>

#include "solver/fma_peak.hpp"

namespace pulsewright {

/// Seconds since it was made.
class Stopwatch {
 public:
  double seconds() const { return std::chrono::duration<double>(std::chrono::steady_clock::now() - begun_).count(); }

 private:
  std::chrono::steady_clock::time_point begun_ = std::chrono::steady_clock::now();
};

/// Cell-updates a second, nanoseconds for one, and that time in the core's own double FMA peak, measured in the same run.
inline void count_cell_updates(benchmark::State& state, double cell_updates, double seconds) {
  const double ns = 1e9 * seconds / cell_updates, peak = measure_fma_peak();
  state.counters["cell_updates_per_s"] = 1e9 / ns;
  state.counters["ns_per_cell_update"] = ns;
  state.counters["fma_peak_gflops"] = peak;
  state.counters["peak_flops_per_cell_update"] = ns * peak;
}

}  // namespace pulsewright
