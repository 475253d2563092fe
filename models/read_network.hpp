#pragma once
// The tables of a network that rigs and engines have in common.

#include <string>
#include <vector>

#include "models/sketch.hpp"
#include "shared/case_table.hpp"

namespace pulsewright {

/// The name of a table, or the one given where it has none.
std::string read_name(const CaseTable& table, const std::string& otherwise = {});

std::vector<JointSketch> read_joints(const CaseTable& root);

/// [[end]] of a rig; signal files lie beside the case. `burned`: fraction of the gas outside an end that does
/// not say, the rig's own.
std::vector<EndSketch> read_ends(const CaseTable& root, double burned);

}  // namespace pulsewright
