#pragma once
// The valve on a joint: a compressible orifice between the joint and the air or another joint.

#include <array>
#include <string>

#include "solver/element.hpp"

namespace pulsewright {

class Joint;

/// Draws from the joint's static pressure plus the head of the streams that point at it (none under the law of constant
/// pressure, which knows no angle); gas that comes back brings its enthalpy and no momentum. Lets out to `sink` if there is one, else to gas at p, T, Y.
struct JointGate {
  std::string name{};
  double effective_area = 0;          // discharge coefficient times open area, m2; may change between steps
  std::array<double, 3> n{1, 0, 0};   // unit vector into the gate, pointing out of the joint
  double p = 101325, T = 293, Y = 0;  // outside, where there is no sink
  Joint* sink = nullptr;              // must outlive this joint's steps
  Content passed{};                   // out of the joint since the start; negative: came back
  double mass_flow = 0;               // kg/s, in the last step, out of the joint
  double total_pressure = 0;          // before the valve, open or shut, at the start of the last step, Pa
  double behind = 0;                  // pressure behind it, likewise, Pa
};

/// One side of an orifice.
struct OrificeSide {
  double p;  // total pressure upstream, static downstream, Pa
  double T;  // K
  double R, gamma;
};

/// Mass flow from `in` to `out` per unit of effective area, kg/(m2 s), negative for the other way, and its change with
/// in.p. Within 1 % of equal pressures the flow is linear in their difference: the slope of the true law has no end
/// there.
struct OrificeFlow {
  double mass, slope;
};
OrificeFlow orifice_flow(const OrificeSide& in, const OrificeSide& out);

}  // namespace pulsewright
