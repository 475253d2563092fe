#pragma once
// The loops of a step over the whole arena: MUSCL-Hancock prediction, HLLC fluxes, conservative update; and, every some
// steps, friction and heat factors. Each is branch-free and vectorised by the compiler; the file is compiled three
// times, for x86-64-v4, x86-64-v3 and any machine, and pick_sweep() chooses at run time.

#include <span>

#include "solver/arena.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

/// What the update loop reports. courant_rate = max (|u| + c)/dx, 1/s. check is finite exactly when every state is.
struct SweepReport {
  double courant_rate;
  double lowest_energy;   // lowest internal energy met, J/kg
  double lowest_density;  // kg/m3
  double check;
};

/// Which sources act on the gas; a factor of 0 is off.
struct SourceSwitches {
  bool rough_wall;      // friction by Reynolds number and roughness, else
  double darcy_factor;  // this constant
  bool losses;          // loss_forward, loss_backward
  double heat_factor;   // on the Nusselt number
};

struct Sweep {
  void (*predict)(Arena&, const Gas&, double dt);
  void (*fluxes)(Arena&);
  SweepReport (*update)(Arena&, const Gas&, double dt);
  void (*sources)(Arena&, const Gas&, const SourceSwitches&);  // loss and heat_exchange from the present state
  const char* name;                                            // "v4", "v3" or "plain"
};

/// The builds that this machine can run, the fastest first, the plain one last.
std::span<const Sweep* const> available_sweeps();

/// The first of them.
const Sweep& pick_sweep();

}  // namespace pulsewright
