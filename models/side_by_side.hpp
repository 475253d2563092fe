#pragma once
// Independent runs side by side on all cores: one simulation per thread, results in the order of the jobs, the same
// numbers at any thread count.

#include <functional>
#include <vector>

#include "models/engine_case.hpp"
#include "models/results.hpp"

namespace pulsewright {

/// Share of all runs done, 0..1; called from any thread, never from two at once; false stops with Error (internal)
/// "interrupted".
using ShareProgress = std::function<bool(double share)>;

struct SideBySideOptions {
  int threads = 0;            // 0: one for each core
  bool measure_time = false;  // fill timing.shares
};

/// The silencer of a comparison: where another case states the same pressure drop as the first, it gets the very same
/// restriction, not one sized for its own flow.
void share_silencer(const EngineCase& first, EngineCase& other);

/// Every speed of every case. The first Error thrown by a run comes through, naming the case's title and the speed.
std::vector<EngineResult> run_engines(const std::vector<const EngineCase*>& cases,
                                      const SideBySideOptions& options = {}, const ShareProgress& progress = {});

}  // namespace pulsewright
