#pragma once
// One port of a joint: the flow through a duct's end face for a given joint pressure, with the slopes that Newton
// needs.

#include "solver/element.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

enum class JointLaw { momentum, constant_pressure };

/// The gas of the joint that an outflow is made of, at rest.
struct JointGas {
  double p;  // static, Pa
  double h;  // stagnation enthalpy, J/kg
  double T;  // of that enthalpy, K
  double Y;  // burned mass fraction
  double R, cp, gamma;
  double c;  // sound speed, m/s
};

struct JointPort {
  // given for the step
  EndState duct{};
  double area = 0;           // m2
  double rest_pressure = 0;  // of the wave that brings the duct's gas to rest: gas comes in below it, goes out above it
  double jet = 0;            // velocity of the joint's streams toward this port, m/s
  double mixing_area = 0;    // m2, at least area
  double contraction_loss = 0;

  // static pressure in the face: the unknown of an outflow, kept from step to step; Pa
  double p = 0;

  // the answer; flows per unit of area, u positive into the joint for an inflow, out of it for an outflow
  bool inflow = false;
  double rho = 0, u = 0, T = 0;  // in the face
  double mass = 0, h0 = 0;       // rho u, kg/(m2 s), and stagnation enthalpy, J/kg
  double mass_slope = 0;         // d(mass)/dp: p the joint's pressure for an inflow, the face's for an outflow
  double energy_slope = 0;       // d(mass h0)/dp of an inflow
  double residual = 0;           // of an outflow: p minus the pressure that the joint's momentum gives
  double residual_slope = 1;     // by p
  double pressure_gain = 1;      // d(that pressure)/d(joint's pressure)
};

/// Fills the answer of a port that lets gas into a joint at pressure p.
void let_in(JointPort& port, double p, const Gas& gas);

/// Fills the answer of a port that lets gas out, for its present p (one look, no search).
void let_out(JointPort& port, const JointGas& joint, JointLaw law, const Gas& gas);

/// Searches port.p within a bracket until the residual is nothing. Throws Error (unphysical) if there is no root.
void settle_outflow(JointPort& port, const JointGas& joint, JointLaw law, const Gas& gas);

}  // namespace pulsewright
