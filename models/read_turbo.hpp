#pragma once
// Everything around the engine block: air, charge, turbine, silencer.

#include "models/engine_case.hpp"

namespace pulsewright {

/// [ambient]: altitude, or pressure and temperature.
AmbientCase read_ambient(const CaseTable& root, AssumedList& assumed);

/// [charge], [compressor], [cooler]; needs ambient.
ChargeCase read_charge(const CaseTable& root, const AmbientCase& ambient, AssumedList& assumed);

/// [turbine] or [[turbine]]; its areas are those that pass its point of flow, of exhaust gas.
std::vector<TurbineCase> read_turbines(const CaseTable& root, const Gas& gas, AssumedList& assumed);

SilencerCase read_silencer(const CaseTable& root, AssumedList& assumed);

}  // namespace pulsewright
