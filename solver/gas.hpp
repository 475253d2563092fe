#pragma once
// The gas: a perfect gas, or air and burned products mixed by the burned mass fraction Y. Plain data, cheap to copy.
// SI; temperatures in kelvin. Energies are sensible: zero at 0 K, no enthalpies of formation.
//
// Every function takes a Gas or one of its laws. In a loop over cells choose the law once, outside:
//   with_law(gas, [&](const auto& law) { for (...) T[i] = temperature_from_energy(law, e[i], Y[i]); });
// so that the loop has no branch and vectorises.

#include <cmath>

#include "solver/fuel.hpp"
#include "solver/mixture.hpp"
#include "solver/perfect_gas.hpp"

namespace pulsewright {

struct Gas {
  bool perfect;         // which of the two laws holds
  PerfectGas constant;  // the law if perfect
  Mixture mixture;      // the law if not
};

/// A perfect gas. Throws Error (internal) unless gamma > 1 and R > 0, both finite.
Gas perfect_gas(double gamma, double R);

/// Air (Y = 0) and the burned products of the fuel at this lambda (Y = 1), thermally perfect. Makes the fits: some ms,
/// once. Throws Error (internal) for a lambda outside 0.6..100.
Gas mixture_gas(const Fuel& fuel, double lambda);

/// use(law), law being the one that holds.
template <class Use>
inline auto with_law(const Gas& gas, Use use) {
  return gas.perfect ? use(gas.constant) : use(gas.mixture);
}

inline double gas_constant(const Gas& g, double Y) {  // R, J/(kg K)
  return with_law(g, [=](const auto& law) { return gas_constant(law, Y); });
}
inline double cv(const Gas& g, double T, double Y) {  // J/(kg K)
  return with_law(g, [=](const auto& law) { return cv(law, T, Y); });
}
inline double internal_energy(const Gas& g, double T, double Y) {  // J/kg
  return with_law(g, [=](const auto& law) { return internal_energy(law, T, Y); });
}
inline double temperature_from_energy(const Gas& g, double e, double Y) {  // K
  return with_law(g, [=](const auto& law) { return temperature_from_energy(law, e, Y); });
}
inline double temperature_from_enthalpy(const Gas& g, double h, double Y) {  // K
  return with_law(g, [=](const auto& law) { return temperature_from_enthalpy(law, h, Y); });
}
inline double heat_ratio(const Gas& g, double T, double Y) {  // gamma = cp/cv = c^2 rho/p
  return with_law(g, [=](const auto& law) { return heat_ratio(law, T, Y); });
}
/// T and gamma from e and a temperature nearby, in one correction: what the loop over cells takes.
inline ThermalState thermal_state(const Gas& g, double e, double Y, double T_nearby) {
  return with_law(g, [=](const auto& law) { return thermal_state(law, e, Y, T_nearby); });
}
inline double viscosity(const Gas& g, double T, double Y) {  // dynamic, Pa s
  return with_law(g, [=](const auto& law) { return viscosity(law, T, Y); });
}
inline double conductivity(const Gas& g, double T, double Y) {  // W/(m K)
  return with_law(g, [=](const auto& law) { return conductivity(law, T, Y); });
}

// What follows from these for any law.
template <class Law>
inline double enthalpy(const Law& g, double T, double Y) {  // e + p/rho, J/kg
  return internal_energy(g, T, Y) + gas_constant(g, Y) * T;
}
template <class Law>
inline double cp(const Law& g, double T, double Y) {  // J/(kg K)
  return cv(g, T, Y) + gas_constant(g, Y);
}
template <class Law>
inline double sound_speed(const Law& g, double T, double Y) {  // m/s
  return std::sqrt(heat_ratio(g, T, Y) * gas_constant(g, Y) * T);
}

// For elements and start-up, not for a loop over cells: these use log and exp.

/// Temperature after an isentropic change from p to pressure_ratio p at constant Y; pressure_ratio > 0.
double isentropic_temperature(const Gas& gas, double T, double Y, double pressure_ratio);

/// The pressure ratio p'/p that brings T to T_after without a change of entropy: the inverse of the above. Both T above
/// 0.
double isentropic_pressure_ratio(const Gas& gas, double T, double T_after, double Y);

}  // namespace pulsewright
