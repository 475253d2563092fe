#include "solver/nasa9.hpp"

#include <cmath>

namespace pulsewright {
namespace {

// B. J. McBride, M. J. Zehe and S. Gordon, NASA Glenn Coefficients for Calculating Thermodynamic Properties of
// Individual Species, NASA/TP-2002-211556, 2002. Molar mass kg/mol; then per range of temperature a0..a6, b1, b2.
// clang-format off
constexpr std::array<SpeciesData, species_count> table{{
    {"N2", 0.0280134, {{
      {200.0, 1000.0, {22103.71497, -381.846182, 6.08273836, -0.00853091441, 1.384646189e-05, -9.62579362e-09, 2.519705809e-12},
       710.846086, -10.76003744},
      {1000.0, 6000.0, {587712.406, -2239.249073, 6.06694922, -0.00061396855, 1.491806679e-07, -1.923105485e-11, 1.061954386e-15},
       12832.10415, -15.86640027},
    }}},
    {"O2", 0.0319988, {{
      {200.0, 1000.0, {-34255.6342, 484.700097, 1.119010961, 0.00429388924, -6.83630052e-07, -2.0233727e-09, 1.039040018e-12},
       -3391.45487, 18.4969947},
      {1000.0, 6000.0, {-1037939.022, 2344.830282, 1.819732036, 0.001267847582, -2.188067988e-07, 2.053719572e-11, -8.19346705e-16},
       -16890.10929, 17.38716506},
    }}},
    {"Ar", 0.039948, {{
      {200.0, 1000.0, {0.0, 0.0, 2.5, 0.0, 0.0, 0.0, 0.0},
       -745.375, 4.37967491},
      {1000.0, 6000.0, {20.10538475, -0.0599266107, 2.500069401, -3.99214116e-08, 1.20527214e-11, -1.819015576e-15, 1.078576636e-19},
       -744.993961, 4.37918011},
    }}},
    {"CO2", 0.0440095, {{
      {200.0, 1000.0, {49436.5054, -626.411601, 5.30172524, 0.002503813816, -2.127308728e-07, -7.68998878e-10, 2.849677801e-13},
       -45281.9846, -7.04827944},
      {1000.0, 6000.0, {117696.2419, -1788.791477, 8.29152319, -9.22315678e-05, 4.86367688e-09, -1.891053312e-12, 6.33003659e-16},
       -39083.5059, -26.52669281},
    }}},
    {"H2O", 0.01801528, {{
      {200.0, 1000.0, {-39479.6083, 575.573102, 0.931782653, 0.00722271286, -7.34255737e-06, 4.95504349e-09, -1.336933246e-12},
       -33039.7431, 17.24205775},
      {1000.0, 6000.0, {1034972.096, -2412.698562, 4.64611078, 0.002291998307, -6.83683048e-07, 9.42646893e-11, -4.82238053e-15},
       -13842.86509, -7.97814851},
    }}},
    {"CO", 0.0280101, {{
      {200.0, 1000.0, {14890.45326, -292.2285939, 5.72452717, -0.00817623503, 1.456903469e-05, -1.087746302e-08, 3.027941827e-12},
       -13031.31878, -7.85924135},
      {1000.0, 6000.0, {461919.725, -1944.704863, 5.91671418, -0.000566428283, 1.39881454e-07, -1.787680361e-11, 9.62093557e-16},
       -2466.261084, -13.87413108},
    }}},
    {"H2", 0.00201588, {{
      {200.0, 1000.0, {40783.2321, -800.918604, 8.21470201, -0.01269714457, 1.753605076e-05, -1.20286027e-08, 3.36809349e-12},
       2682.484665, -30.43788844},
      {1000.0, 6000.0, {560812.801, -837.150474, 2.975364532, 0.001252249124, -3.74071619e-07, 5.9366252e-11, -3.6069941e-15},
       5339.82441, -2.202774769},
    }}},
}};
// clang-format on

const Nasa9Range& range_at(Species s, double T) {
  const auto& ranges = species_data(s).ranges;
  return T < ranges[1].T_low ? ranges[0] : ranges[1];
}

}  // namespace

const SpeciesData& species_data(Species s) { return table[static_cast<std::size_t>(s)]; }

// Equation   cp/R = a0/T^2 + a1/T + a2 + a3 T + a4 T^2 + a5 T^3 + a6 T^4
//            h/RT = -a0/T^2 + a1 ln T/T + a2 + a3 T/2 + a4 T^2/3 + a5 T^3/4 + a6 T^4/5 + b1/T
//            s/R  = -a0/(2 T^2) - a1/T + a2 ln T + a3 T + a4 T^2/2 + a5 T^3/3 + a6 T^4/4 + b2
// Source     NASA/TP-2002-211556, 2002, equations (1) to (3)
// Symbols    cp, s J/(mol K); h J/mol; R = 8.314462618 J/(mol K); T K
// Valid for  200 to 6000 K; outside, the end ranges are extrapolated
// Tested by  tests/solver/composition_test.cpp, tests/verification/gas_checks.cpp
double molar_heat_capacity(Species s, double T) {
  const auto& a = range_at(s, T).a;
  const double power_series = a[2] + T * (a[3] + T * (a[4] + T * (a[5] + T * a[6])));
  return molar_gas_constant * ((a[0] / T + a[1]) / T + power_series);
}

double molar_enthalpy(Species s, double T) {
  const auto& [low, high, a, b1, b2] = range_at(s, T);
  const double power_series = T * (a[2] + T * (a[3] / 2 + T * (a[4] / 3 + T * (a[5] / 4 + T * a[6] / 5))));
  return molar_gas_constant * (-a[0] / T + a[1] * std::log(T) + power_series + b1);
}

double molar_entropy(Species s, double T) {
  const auto& [low, high, a, b1, b2] = range_at(s, T);
  const double power_series = T * (a[3] + T * (a[4] / 2 + T * (a[5] / 3 + T * a[6] / 4)));
  return molar_gas_constant * (-(a[0] / (2 * T) + a[1]) / T + a[2] * std::log(T) + power_series + b2);
}

}  // namespace pulsewright
