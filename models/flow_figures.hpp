#pragma once
// Figures of one place over one cycle: what a gauge shows, what the gas carries.

#include "models/records.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

/// Stagnation pressure of gas at p moving at u, frozen gamma; Pa.
double stagnation_pressure(double p, double u, double rho, double c);

struct PlaceFigures {
  double pressure_mean, stagnation_mean, pressure_peak, pressure_valley;  // Pa
  double temperature_time_mean;                                           // static, K
  double temperature_flow_mean;                                           // of all gas that passes, brought to rest, K
  double mass_flow;                                                       // kg/s, along the duct
};

/// area: of the duct at the place, m2.
PlaceFigures place_figures(const PlaceRecord& place, double area, const Gas& gas);

/// Flow of enthalpy above 298 K with its kinetic energy, W, along the duct; back-flow is paid back before forward flow
/// counts, so that gas sloshing in a quiet primary is no pulse. Never negative.
Series forward_energy_flow(const PlaceRecord& place, double area, const Gas& gas);

/// Share of two energy flows that run at the same time, per cent: 2 integral min(a, b) / integral (a + b).
double overlap_percent(const Series& a, const Series& b);

}  // namespace pulsewright
