#pragma once
// Writes into a starter case what the program assumes where it says nothing: value and range, behind a #.

#include <vector>

#include "models/case_block.hpp"
#include "models/engine_case.hpp"

namespace pulsewright {

/// A line "# rod = ..." in the table that it belongs to, for every assumed value that a case can say in one line; what it
/// cannot (a curve, a rule) becomes a remark there. Tables left without anything are taken out.
void note_assumed(std::vector<CaseBlock>& blocks, const EngineCase& engine);

}  // namespace pulsewright
