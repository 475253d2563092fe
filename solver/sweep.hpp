#pragma once
// The three loops of a step over the whole arena: MUSCL-Hancock prediction, HLLC fluxes, conservative update. Each is
// branch-free and vectorised by the compiler; the file is compiled twice, for x86-64-v3 and for any x86-64, and
// pick_sweep() chooses at run time.

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

struct Sweep {
  void (*predict)(Arena&, const Gas&, double dt);
  void (*fluxes)(Arena&);
  SweepReport (*update)(Arena&, const Gas&, double dt);
  const char* name;  // "x86-64-v3" or "x86-64"
};

const Sweep& pick_sweep();

/// The portable build of the same source, for tests that compare the two.
const Sweep& plain_sweep();

}  // namespace pulsewright
