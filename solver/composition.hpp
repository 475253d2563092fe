#pragma once
// What air and burned gas are made of, and their exact properties (slow; for start-up and checks).

#include <array>

#include "solver/fuel.hpp"
#include "solver/nasa9.hpp"

namespace pulsewright {

struct Composition {
  std::array<double, species_count> mole_fraction{};  // sums to 1

  double operator[](Species s) const { return mole_fraction[static_cast<std::size_t>(s)]; }
  double& operator[](Species s) { return mole_fraction[static_cast<std::size_t>(s)]; }
};

/// Dry air.
Composition air();

/// Products of complete burning of the fuel with air at lambda (air over stoichiometric air, 0.6..100): lean, with the
/// oxygen left over; rich, CO and H2 by the water-gas equilibrium. Not dissociated. Throws Error (internal) outside.
Composition burned_composition(const Fuel& fuel, double lambda);

/// Share of the heating value that burning at lambda sets free: all of it lean; rich, what carbon monoxide and hydrogen
/// would still give is missing.
double heat_set_free(const Fuel& fuel, double lambda);

/// Mass of air per mass of fuel for lambda = 1.
double stoichiometric_air_fuel_ratio(const Fuel& fuel);

double molar_mass(const Composition& c);               // kg/mol
double gas_constant(const Composition& c);             // J/(kg K)
double heat_capacity(const Composition& c, double T);  // cp, J/(kg K)
double entropy(const Composition& c, double T);        // at 1 bar, without mixing, J/(kg K)
double enthalpy(const Composition& c, double T);       // with formation at 298.15 K, J/kg
double viscosity(const Composition& c, double T);      // Pa s
double conductivity(const Composition& c, double T);   // W/(m K), frozen

}  // namespace pulsewright
