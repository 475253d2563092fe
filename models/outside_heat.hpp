#pragma once
// What a hot tube gives off: to the air around it and by radiation.

#include "solver/gas.hpp"

namespace pulsewright {

/// What the tubes see: air and surfaces of one temperature, air that stands still or blows across them.
struct EngineBay {
  double temperature = 330;  // K
  double air_speed = 0;      // m/s
  double pressure = 101325;  // of the air, Pa
};

double natural_nusselt(double rayleigh, double prandtl);
double blown_nusselt(double reynolds, double prandtl);

/// Heat transfer coefficient from a horizontal cylinder to the air of the bay, W/(m2 K). `gas` gives the air its data.
double outside_coefficient(double diameter, double skin_temperature, const EngineBay& bay, const Gas& gas);

/// By air and radiation together, W per m2 of skin.
double outside_heat_flux(double diameter, double skin_temperature, double emissivity, const EngineBay& bay,
                         const Gas& gas);

}  // namespace pulsewright
