#pragma once
// One engine at one speed: cycle after cycle until it repeats, then one more cycle written down and read.

#include <functional>

#include "models/engine_case.hpp"
#include "models/results.hpp"

namespace pulsewright {

struct SpeedOptions {
  bool measure_time = false;  // fill timing.shares
};

/// Asked every some hundred steps; false stops the run with Error (internal) "interrupted".
using CycleProgress = std::function<bool(double rpm, int cycle)>;

/// Runs one speed. Never throws for "not settled": the result says so.
SpeedResult run_speed(const EngineCase& engine, double rpm, const SpeedOptions& options = {},
                      const CycleProgress& progress = {});

}  // namespace pulsewright
