#pragma once
// The flows of a joint at one trial pressure.

#include "solver/joint.hpp"

namespace pulsewright {

struct Joint::Balance {
  JointGas gas{};                                 // what flows out
  Content in;                                     // per second: through ducts, and back through gates
  double in_mass_slope = 0, in_energy_slope = 0;  // by the joint's pressure
  double out_mass = 0, out_mass_slope = 0;        // kg/s through ducts and gates
  double out_mass_lag = 0;                        // what the faces of the outflows still lack, kg/s
  double unsettled = 0;                           // the largest step that a face's pressure still has to go, relative
  double residual = 0, slope = 1;                 // of the energy balance, J and J/Pa
};

}  // namespace pulsewright
