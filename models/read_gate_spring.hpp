#pragma once
// What an external wastegate's maker or a bench tells about its forces.

#include "models/assumed.hpp"
#include "models/sketch.hpp"
#include "shared/case_table.hpp"

namespace pulsewright {

/// spring, fully_open, diaphragm, valve_area, controller of one [[wastegate]]; needs the gate's bore. All may be left out.
void read_gate_spring(const CaseTable& table, GateSketch& gate, AssumedList& assumed);

}  // namespace pulsewright
