#include "models/outside_heat.hpp"

#include <cmath>

namespace pulsewright {
namespace {

constexpr double gravity = 9.80665;                  // m/s2
constexpr double stefan_boltzmann = 5.670374419e-8;  // W/(m2 K4)

double power_4(double x) { return x * x * x * x; }

}  // namespace

// Equation   Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2
// Source     S. W. Churchill and H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049
// Symbols    Nu = h d/k; Ra = g |dT| d^3 / (T_film nu a); air at the film temperature, the mean of skin and air
// Valid for  Ra from 1e-5 to 1e12, a long horizontal cylinder in still air; upright or sloping tubes lose somewhat less
// Tested by  tests/models/outside_heat_test.cpp, tests/verification/metal_checks.cpp
double natural_nusselt(double rayleigh, double prandtl) {
  const double root =
      0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6) / std::pow(1 + std::pow(0.559 / prandtl, 9.0 / 16), 8.0 / 27);
  return root * root;
}

// Equation   Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) (1 + (0.4/Pr)^(2/3))^(-1/4) (1 + (Re/282000)^(5/8))^(4/5)
// Source     S. W. Churchill and M. Bernstein, J. Heat Transfer 99 (1977) 300
// Symbols    Nu = h d/k; Re = w d/nu; air at the film temperature
// Valid for  Re Pr above 0.2, air straight across a free cylinder
// Tested by  tests/models/outside_heat_test.cpp, tests/verification/metal_checks.cpp
double blown_nusselt(double reynolds, double prandtl) {
  return 0.3 + 0.62 * std::sqrt(reynolds) * std::cbrt(prandtl) / std::pow(1 + std::pow(0.4 / prandtl, 2.0 / 3), 0.25) *
                   std::pow(1 + std::pow(reynolds / 282000, 0.625), 0.8);
}

// Equation   Nu^4 = Nu_natural^4 + Nu_blown^4
// Source     F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, section on combined convection
//            (exponent 4 for flow across cylinders), from memory
// Symbols    Nu = h d/k
// Valid for  either alone exactly; where both matter, to some 20 %
// Tested by  tests/models/outside_heat_test.cpp, tests/verification/metal_checks.cpp
double outside_coefficient(double diameter, double skin_temperature, const EngineBay& bay, const Gas& gas) {
  const double film = 0.5 * (skin_temperature + bay.temperature),
               difference = std::abs(skin_temperature - bay.temperature);
  const double rho = bay.pressure / (gas_constant(gas, 0) * film), k = conductivity(gas, film, 0),
               heat_capacity = cp(gas, film, 0), nu = viscosity(gas, film, 0) / rho, spread = k / (rho * heat_capacity);
  const double rayleigh = gravity * difference * diameter * diameter * diameter / (film * nu * spread);
  const double still = natural_nusselt(rayleigh, nu / spread);
  if (bay.air_speed <= 0) return still * k / diameter;
  const double blown = blown_nusselt(bay.air_speed * diameter / nu, nu / spread);
  return std::sqrt(std::sqrt(power_4(still) + power_4(blown))) * k / diameter;
}

// Equation   q = h (T - T_bay) + e s (T^4 - T_bay^4)
// Source     Newton's and Stefan-Boltzmann's laws; a small grey body in large surroundings
// Symbols    q W/m2; T skin K; e emissivity; s 5.670e-8 W/(m2 K4)
// Valid for  tubes that do not see each other: among hot neighbours they give off less and run hotter
// Tested by  tests/models/outside_heat_test.cpp, tests/verification/metal_checks.cpp
double outside_heat_flux(double diameter, double skin_temperature, double emissivity, const EngineBay& bay,
                         const Gas& gas) {
  return outside_coefficient(diameter, skin_temperature, bay, gas) * (skin_temperature - bay.temperature) +
         emissivity * stefan_boltzmann * (power_4(skin_temperature) - power_4(bay.temperature));
}

}  // namespace pulsewright
