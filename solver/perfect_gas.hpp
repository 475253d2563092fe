#pragma once
// The perfect gas: constant heat capacities and one gas constant, whatever the burned fraction Y says. Viscosity and
// conductivity are those of air.

#include "solver/thermal_state.hpp"
#include "solver/transport_fit.hpp"

namespace pulsewright {

struct PerfectGas {
  double gas_constant;  // R, J/(kg K)
  double cv;            // J/(kg K)
  double per_cv;        // 1/cv
  double per_cp;        // 1/(cv + R)
  double heat_ratio;    // gamma
  TransportFit transport;
};

// Equation   e = cv T,  cv = R/(gamma - 1)
// Source     definition of the perfect gas
// Symbols    e J/kg; T K; cv, R J/(kg K)
// Valid for  any T; R > 0 and gamma > 1, which perfect_gas() in solver/gas.hpp makes sure of
// Tested by  tests/solver/gas_test.cpp
inline double gas_constant(const PerfectGas& g, double /*Y*/) { return g.gas_constant; }
inline double cv(const PerfectGas& g, double /*T*/, double /*Y*/) { return g.cv; }
inline double heat_ratio(const PerfectGas& g, double /*T*/, double /*Y*/) { return g.heat_ratio; }
inline double internal_energy(const PerfectGas& g, double T, double /*Y*/) { return g.cv * T; }
inline double temperature_from_energy(const PerfectGas& g, double e, double /*Y*/) { return e * g.per_cv; }
inline double temperature_from_enthalpy(const PerfectGas& g, double h, double /*Y*/) { return h * g.per_cp; }
inline ThermalState thermal_state(const PerfectGas& g, double e, double /*Y*/, double /*T_nearby*/) {
  return {e * g.per_cv, g.heat_ratio};
}
inline double viscosity(const PerfectGas& g, double T, double Y) { return viscosity(g.transport, T, Y); }
inline double conductivity(const PerfectGas& g, double T, double Y) { return conductivity(g.transport, T, Y); }

}  // namespace pulsewright
