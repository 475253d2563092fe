#pragma once

namespace pulsewright {

/// What a cell needs of its energy, found in one go.
struct ThermalState {
  double T;           // K
  double heat_ratio;  // gamma = cp/cv = c^2 rho/p
};

}  // namespace pulsewright
