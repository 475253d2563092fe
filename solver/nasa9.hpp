#pragma once
// Heat capacity, enthalpy and entropy of the species that air and burned gas are made of, as NASA tabulates them.
// Too slow for a loop over cells: it is what the fits of solver/mixture.hpp are made from and checked against.

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace pulsewright {

constexpr double molar_gas_constant = 8.314462618;  // J/(mol K), exact to the digits given (SI, 2019)

enum class Species { N2, O2, Ar, CO2, H2O, CO, H2 };
constexpr std::size_t species_count = 7;

/// cp/R = a0 T^-2 + a1 T^-1 + a2 + a3 T + a4 T^2 + a5 T^3 + a6 T^4 between T_low and T_high.
struct Nasa9Range {
  double T_low, T_high;
  std::array<double, 7> a;
  double b1, b2;  // constants of enthalpy and entropy
};

struct SpeciesData {
  std::string_view name;
  double molar_mass;  // kg/mol
  std::array<Nasa9Range, 2> ranges;
};

const SpeciesData& species_data(Species s);

// All for 200..6000 K; beyond, the nearest range is extrapolated. T in K, results per mole.
double molar_heat_capacity(Species s, double T);  // at constant pressure, J/(mol K)
double molar_enthalpy(Species s, double T);       // with the enthalpy of formation at 298.15 K, J/mol
double molar_entropy(Species s, double T);        // at 1 bar, J/(mol K)

}  // namespace pulsewright
