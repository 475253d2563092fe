#pragma once
// Everything around the engine block: air, charge, silencer.

#include "models/engine_case.hpp"

namespace pulsewright {

/// [ambient]: altitude, or pressure and temperature.
AmbientCase read_ambient(const CaseTable& root, AssumedList& assumed);

/// [charge], [compressor], [cooler]; needs ambient.
ChargeCase read_charge(const CaseTable& root, const AmbientCase& ambient, AssumedList& assumed);

SilencerCase read_silencer(const CaseTable& root, AssumedList& assumed);

}  // namespace pulsewright
