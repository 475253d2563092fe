#pragma once
// From which engine speed the turbo makes its boost.

#include <vector>

#include "models/engine_case.hpp"
#include "models/results.hpp"

namespace pulsewright {

inline constexpr double share_that_counts_as_there = 0.9;  // of the target

/// Interpolated between the settled speeds, in the order of their rpm; the two around it are its band. None, with the
/// reason, where the boost was not balanced or no two speeds lie on either side.
Threshold boost_threshold(const EngineCase& engine, const std::vector<SpeedResult>& speeds);

}  // namespace pulsewright
