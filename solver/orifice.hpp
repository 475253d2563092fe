#pragma once
// Quasi-steady flow through an orifice between a duct's end and gas at rest (a cylinder, a vessel, the open air),
// solved together with the exact wave that it sends into the duct: both directions, choked branch, total enthalpy of
// the true upstream side. Open ends, nozzles, vessels and poppet valves are this relation with their own area.

#include "solver/element.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

/// Gas at rest beside a duct's end.
struct Reservoir {
  double p;      // Pa, absolute
  double T;      // K
  double Y;      // burned mass fraction
  double h;      // enthalpy, J/kg
  double R;      // gas constant, J/(kg K)
  double gamma;  // heat ratio at T
};

Reservoir make_reservoir(const Gas& gas, double p, double T, double Y);

/// Mass flow of an ideal nozzle over A p0 / sqrt(R T0), for throat over total pressure; choked below the critical
/// ratio.
double flow_function(double pressure_ratio, double gamma);

/// Throat over total pressure at which a nozzle of ideal gas chokes.
double critical_pressure_ratio(double gamma);

/// Fills flux and face of the port. effective_area is discharge coefficient times area, m2: 0 or less is a closed end,
/// the port's area or more an open one. The port's last face, if any, is where the search starts. Returns the mass flow
/// toward the reservoir, kg/s.
double flow_through_orifice(const Reservoir& reservoir, double effective_area, const Gas& gas, Port& port);

/// The same for one who asks more than once in a step and knows the pressure of the port's gas brought to rest, Pa.
double flow_through_orifice(const Reservoir& reservoir, double effective_area, const Gas& gas, double rest_pressure,
                            Port& port);

/// Fills flux and face of a port that nothing leaves: the pressure of the gas brought to rest. The closed end.
void close_port(Port& port);

/// Flux of a face state that moves toward the element, with its own total enthalpy.
EndFlux flux_of(const EndState& face, const Gas& gas);

}  // namespace pulsewright
