#include "models/intake_port.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

// Equation   mdot = A p0/sqrt(R T0) Psi(p/p0), Psi the flow function of an ideal nozzle, choked branch included
// Source     Heywood 1988, appendix C
// Symbols    A effective area m2; index 0 the upstream gas at rest; p pressure downstream Pa
// Valid for  p <= p0; gamma frozen at T0
// Tested by  tests/models/intake_port_test.cpp, tests/verification/orifice_turbine_checks.cpp
double mass_flow(const Reservoir& upstream, double p, double area) {
  return area * upstream.p / std::sqrt(upstream.R * upstream.T) * flow_function(p / upstream.p, upstream.gamma);
}

// Half of the mass that, crossing at the upstream enthalpy, brings the cylinder to the other pressure.
double levelling_mass(const Reservoir& upstream, double p, double volume) {
  return 0.5 * (upstream.p - p) * volume / (upstream.gamma * upstream.R * upstream.T);
}

double crossing_mass(const Reservoir& upstream, double p, const IntakePort::Valve& valve, double dt) {
  return std::min(dt * mass_flow(upstream, p, valve.area), levelling_mass(upstream, p, valve.volume));
}

Content stream(double mass, double h, double Y) { return {mass, mass * h, mass * Y}; }

}  // namespace

Reservoir IntakePort::next_in(const Gas& gas) const {
  if (held_.mass <= 0) return make_reservoir(gas, plenum_.pressure, plenum_.temperature, 0);
  const double Y = held_.burned / held_.mass;
  return make_reservoir(gas, plenum_.pressure, temperature_from_enthalpy(gas, held_.energy / held_.mass, Y), Y);
}

IntakePort::Crossed IntakePort::flow(const Reservoir& cylinder, const Valve& valve, double dt, const Gas& gas) {
  if (valve.area <= 0) return {};
  if (cylinder.p >= plenum_.pressure) {
    const Content back = stream(crossing_mass(cylinder, plenum_.pressure, valve, dt), cylinder.h, cylinder.Y);
    held_ += back;
    return {-1.0 * back, {}};
  }
  const double mass = crossing_mass(next_in(gas), cylinder.p, valve, dt);
  if (mass < held_.mass) {
    const Content in = (mass / held_.mass) * held_;
    held_ = held_ - in;
    return {in, {}};
  }
  const Content fresh = stream(mass - held_.mass, enthalpy(gas, plenum_.temperature, 0), 0);
  const Content in = held_ + fresh;
  held_ = {};
  return {in, fresh};
}

}  // namespace pulsewright
