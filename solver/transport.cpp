#include <array>
#include <cmath>

#include "solver/composition.hpp"

namespace pulsewright {
namespace {

// ln(eta) or ln(lambda) = A ln T + B/T + C/T^2 + D; eta in 1e-7 Pa s, lambda in 1e-4 W/(m K).
struct TransportFit {
  double A, B, C, D;
};

// Viscosity and conductivity of one species below and above the temperature `joins`.
struct TransportData {
  double joins;  // K
  std::array<TransportFit, 2> viscosity, conductivity;
};

// S. Gordon, B. J. McBride and F. J. Zeleznik, NASA TM-86885, 1984, with the coefficients of R. A. Svehla, NASA
// TM-4647, 1995, as NASA distributes them. CO has the coefficients of N2 there.
// clang-format off
constexpr std::array<TransportData, species_count> table{{
  /* N2  */ {1000.0, {{{0.62526577, -31.779652, -1640.7983, 1.7454992}, {0.87395209, 561.52222, -173948.09, -0.39335958}}},
                     {{{0.85439436, 105.73224, -12347.848, 0.47793128}, {0.88407146, 133.57293, -11429.640, 0.24417019}}}},
  /* O2  */ {1000.0, {{{0.60916180, -52.244847, -599.74009, 2.0410801}, {0.72216486, 175.50839, -57974.816, 1.0901044}}},
                     {{{0.77229167, 6.8463210, -5893.3377, 1.2210365}, {0.90917351, 291.24182, -79650.171, 0.064851631}}}},
  /* Ar  */ {1000.0, {{{0.61205763, -67.714354, 190.40660, 2.1588272}, {0.69357334, 70.953943, -28386.007, 1.4856447}}},
                     {{{0.60968928, -70.892249, 584.20624, 1.9337152}, {0.69075463, 62.676058, -25667.413, 1.2664189}}}},
  /* CO2 */ {1000.0, {{{0.51137258, -229.51321, 13710.678, 2.7075538}, {0.63978285, -42.637076, -15522.605, 1.6628843}}},
                     {{{0.48056568, -507.86720, 35088.811, 3.6747794}, {0.69857277, -118.30477, -50688.859, 1.8650551}}}},
  /* H2O */ {1073.2, {{{0.50019557, -697.12796, 88163.892, 3.0836508}, {0.58988538, -537.69814, 54263.513, 2.3386375}}},
                     {{{1.0966389, -555.13429, 106234.08, -0.24664550}, {0.39367933, -2252.4226, 612174.58, 5.8011317}}}},
  /* CO  */ {1000.0, {{{0.62526577, -31.779652, -1640.7983, 1.7454992}, {0.87395209, 561.52222, -173948.09, -0.39335958}}},
                     {{{0.85439436, 105.73224, -12347.848, 0.47793128}, {0.88407146, 133.57293, -11429.640, 0.24417019}}}},
  /* H2  */ {1000.0, {{{0.74553182, 43.555109, -3257.9340, 0.13556243}, {0.96730605, 679.31897, -210251.79, -1.8251697}}},
                     {{{1.0059461, 279.51262, -29792.018, 1.1996252}, {1.0582450, 248.75372, 11736.907, 0.82758695}}}},
}};
// clang-format on

double value(const TransportFit& f, double T) { return std::exp(f.A * std::log(T) + (f.C / T + f.B) / T + f.D); }

double species_viscosity(std::size_t i, double T) {
  return 1e-7 * value(table[i].viscosity[T < table[i].joins ? 0 : 1], T);
}
double species_conductivity(std::size_t i, double T) {
  return 1e-4 * value(table[i].conductivity[T < table[i].joins ? 0 : 1], T);
}

// Equation   mixed = sum_i x_i q_i / sum_j x_j phi_ij,
//            phi_ij = (1 + (eta_i/eta_j)^1/2 (M_j/M_i)^1/4)^2 / (8 (1 + M_i/M_j))^1/2
// Source     C. R. Wilke, J. Chem. Phys. 18 (1950) 517, eq. 14; for conductivity with the same phi (Mason and Saxena's
//            factor 1)
// Symbols    q a species' viscosity or conductivity; x mole fraction; eta viscosity; M molar mass
// Valid for  dilute gases, frozen composition, 250 to 5000 K (water from 373 K, below by extrapolation)
// Tested by  tests/solver/transport_test.cpp, tests/verification/gas_checks.cpp
double phi(std::size_t i, std::size_t j, double T) {
  const double mass_ratio =
      species_data(static_cast<Species>(i)).molar_mass / species_data(static_cast<Species>(j)).molar_mass;
  const double root = 1 + std::sqrt(species_viscosity(i, T) / species_viscosity(j, T) / std::sqrt(mass_ratio));
  return root * root / std::sqrt(8 * (1 + mass_ratio));
}

template <class Property>
double mixed(const Composition& c, double T, Property property) {
  double sum = 0;
  for (std::size_t i = 0; i < species_count; ++i) {
    double crowd = 0;
    for (std::size_t j = 0; j < species_count; ++j) crowd += c.mole_fraction[j] * phi(i, j, T);
    sum += c.mole_fraction[i] * property(i, T) / crowd;
  }
  return sum;
}

}  // namespace

double viscosity(const Composition& c, double T) { return mixed(c, T, species_viscosity); }
double conductivity(const Composition& c, double T) { return mixed(c, T, species_conductivity); }

}  // namespace pulsewright
