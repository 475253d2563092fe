#include "models/wall_heat.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {

// Equation   h = 129.8 B^-0.2 p^0.8 T^-0.53 w^0.8
// Source     G. Woschni, A universally applicable equation for the instantaneous heat transfer coefficient in the
//            internal combustion engine, SAE 670931, 1967; second hand. Exponent -0.53 as in 1967; the other printed
//            form, -0.55, is 13 % lower
// Symbols    B bore m; p bar; T K; w gas speed m/s; h W/(m2 K)
// Valid for  four-stroke engines without strong swirl; +-25 % between engines (common practice, no source)
// Tested by  tests/models/wall_heat_test.cpp, tests/verification/engine_checks.cpp
double woschni(double p, double T, double bore, double gas_speed) {
  return 129.8 * std::exp(0.8 * std::log(p * 1e-5 * gas_speed) - 0.53 * std::log(T) - 0.2 * std::log(bore));
}

// Equation   w = 6.18 Sp in the gas exchange; 2.28 Sp + 3.24e-3 (V_d T_r/(p_r V_r)) (p - p_m) with shut valves
// Source     Woschni 1967, as above; T_r/(p_r V_r) of any state of the trapped charge is 1/(m R)
// Symbols    Sp mean piston speed m/s; V_d displacement m3; p_m motored pressure Pa; m R of the charge J/K
// Valid for  p above p_m; the combustion term is zero below
// Tested by  tests/models/wall_heat_test.cpp
double woschni_speed_gas_exchange(double mean_piston_speed) { return 6.18 * mean_piston_speed; }
double woschni_speed_closed(double mean_piston_speed) { return 2.28 * mean_piston_speed; }
double woschni_speed_burning(double displacement, double mR, double excess) {
  return 3.24e-3 * displacement / mR * std::max(excess, 0.0);
}

// Equation   h = 130 V^-0.06 p^0.8 T^-0.4 (Sp + 1.4)^0.8
// Source     G. F. Hohenberg, Advanced approaches for heat transfer calculations, SAE 790825, 1979; second hand
// Symbols    V volume m3; p bar; T K; Sp mean piston speed m/s; h W/(m2 K)
// Valid for  whole cycle; derived on diesel engines
// Tested by  tests/models/wall_heat_test.cpp, tests/verification/engine_checks.cpp
double hohenberg(double p, double T, double volume, double mean_piston_speed) {
  return 130 *
         std::exp(0.8 * std::log(p * 1e-5 * (mean_piston_speed + 1.4)) - 0.4 * std::log(T) - 0.06 * std::log(volume));
}

double wall_coefficient(WallHeatLaw law, const WallContact& c) {
  switch (law) {
    case WallHeatLaw::woschni:
      return woschni(c.p, c.T, c.bore, c.gas_speed);
    case WallHeatLaw::hohenberg:
      return hohenberg(c.p, c.T, c.volume, c.piston_speed);
    case WallHeatLaw::none:
      break;
  }
  return 0;
}

}  // namespace pulsewright
