#pragma once
// What a rig run and the time it took look like on a terminal.

#include <string>

#include "cli/loaded_case.hpp"
#include "models/results.hpp"
#include "models/rig_run.hpp"

namespace pulsewright {

std::string rig_text(const LoadedCase& loaded, const RigResult& result);

/// fma_peak: of this core, GFLOP/s.
std::string timing_text(const Timing& timing, double fma_peak);
std::string timing_text(const EngineResult& result, double fma_peak);

}  // namespace pulsewright
