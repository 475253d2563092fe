#pragma once
// From what the user drew to a plan with everything resolved.

#include "models/assumed.hpp"
#include "models/plan.hpp"
#include "models/sketch.hpp"
#include "shared/case_faults.hpp"

namespace pulsewright {

/// Adds to `faults` whatever is wrong with the network (the plan is then not to be used) and to `assumed` what was left
/// open. Never throws for a fault of the case.
ManifoldPlan build_plan(const Sketch& sketch, AssumedList& assumed, CaseFaults& faults);

}  // namespace pulsewright
