#pragma once
// Who sets the boost: run.boost and the gates that hold.

#include "models/engine_case.hpp"

namespace pulsewright {

/// run.boost; left out: "hold" where a gate says hold = true, else "given".
BoostMode read_boost_mode(const CaseTable& root);

/// What a load step needs beyond that, in mode "step": run.step_from, inertia and size of every wheel. Records a fault
/// where neither an inertia nor an exducer says how heavy a wheel is.
void read_load_step(const CaseTable& root, EngineCase& engine, AssumedList& assumed);

/// Marks the gates of the plan that open for the boost target: those that say so; where none does and the mode is not
/// "given", every one. Mode given: none. Records a fault where "hold" has no gate to hold with.
void choose_holding_gates(const CaseTable& root, EngineCase& engine);

}  // namespace pulsewright
