#pragma once
// The turbines of a case: housing, wheel, shaft.

#include "models/engine_case.hpp"

namespace pulsewright {

/// [turbine] or [[turbine]]; its areas are those that pass its point of flow, of exhaust gas.
std::vector<TurbineCase> read_turbines(const CaseTable& root, const Gas& gas, AssumedList& assumed);

}  // namespace pulsewright
