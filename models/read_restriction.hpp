#pragma once
// What stands in a downpipe: [[restriction]], a plate, a butterfly valve or a stated loss; [[cut_out]], a way to the air.

#include <vector>

#include "models/assumed.hpp"
#include "models/sketch.hpp"
#include "shared/case_table.hpp"

namespace pulsewright {

std::vector<RestrictionSketch> read_restrictions(const CaseTable& root);

/// Cut-outs are gates: an opening to the air that nothing moves.
std::vector<GateSketch> read_cut_outs(const CaseTable& root, AssumedList& assumed);

}  // namespace pulsewright
