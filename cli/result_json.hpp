#pragma once
// Results as JSON, the contract with scripts: units stand in the keys, pressures are absolute unless the key says gauge,
// what cannot be given is null with a reason.

#include <nlohmann/json.hpp>
#include <optional>

#include "cli/loaded_case.hpp"
#include "models/results.hpp"
#include "models/rig_run.hpp"
#include "shared/json.hpp"

namespace pulsewright {

/// What every document begins with: schema, version, title, file, hash, assumed.
Json case_json(const LoadedCase& loaded, const std::vector<AssumedEntry>& assumed);

/// fma_peak_gflops: of this core, where timing is asked for.
Json engine_json(const LoadedCase& loaded, const EngineResult& result, std::optional<double> fma_peak_gflops);
Json rig_json(const LoadedCase& loaded, const RigResult& result, std::optional<double> fma_peak_gflops);

/// cells, steps, cell updates, seconds, and what a cell-update costs in the core's own double FMA peak.
Json timing_json(const Timing& timing, double fma_peak_gflops);

}  // namespace pulsewright
