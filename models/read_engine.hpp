#pragma once
// The table [engine] of a case.

#include "models/engine_case.hpp"

namespace pulsewright {

/// Fills in the facts of the engine that other assumed values hang on, bore, stroke, redline and boost among them.
EngineParts read_engine(const CaseTable& root, AssumedList& assumed);

/// Both valves; needs the bore among the facts. Faults an impossible cam.
ValveCase read_exhaust_valve(const CaseTable& table, AssumedList& assumed);
ValveCase read_intake_valve(const CaseTable& table, AssumedList& assumed);

/// Arrangement or cylinders, firing order and angles.
void read_firing(const CaseTable& engine, EngineParts& parts);

}  // namespace pulsewright
