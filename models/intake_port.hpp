#pragma once
// The intake side of a cylinder: a plenum at fixed pressure and temperature, and the gas that a cylinder has pushed
// back into its own port.

#include "solver/element.hpp"
#include "solver/gas.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {

/// Charge air (with port fuel's vapour) in front of the intake valves; total state.
struct Plenum {
  double pressure;     // Pa, absolute
  double temperature;  // K
};

/// Both directions of flow. Gas that runs back stays in the port, at the plenum's pressure and with the enthalpy that
/// it brought, mixed as one; it goes in first when the flow turns. Nothing mixes into the plenum, nothing is lost: the
/// simplest treatment that conserves mass, energy and burned mass and lets a cylinder breathe its own exhaust again.
class IntakePort {
 public:
  explicit IntakePort(const Plenum& plenum) : plenum_(plenum) {}

  struct Crossed {
    Content into_cylinder;  // net, energy as total enthalpy
    Content from_plenum;    // fresh
  };

  struct Valve {
    double area;    // effective, m2
    double volume;  // of the cylinder behind it, m3
  };

  /// What crosses the valve in dt. Near equal pressures never more than half of what would level them, so that steps do
  /// not swing.
  Crossed flow(const Reservoir& cylinder, const Valve& valve, double dt, const Gas& gas);

  const Content& held() const { return held_; }  // energy = enthalpy: the port's gas stands at constant pressure
  const Plenum& plenum() const { return plenum_; }
  void set_plenum(const Plenum& plenum) { plenum_ = plenum; }

 private:
  Reservoir next_in(const Gas& gas) const;

  Plenum plenum_;
  Content held_;
};

}  // namespace pulsewright
