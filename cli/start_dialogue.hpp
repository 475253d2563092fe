#pragma once
// The ten questions of start on a terminal.

#include <iosfwd>
#include <optional>

#include "models/starter.hpp"

namespace pulsewright {

/// Asks every question that `known` leaves open, on `out`, and reads the answers from `in`, a line each: Enter alone
/// assumes, "?" explains, a bad answer is asked again with the reason. Nothing where `in` ends before the last answer.
std::optional<StarterOptions> ask_for_starter(std::istream& in, std::ostream& out, const StarterOptions& known);

}  // namespace pulsewright
