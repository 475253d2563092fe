#include "solver/friction.hpp"

namespace pulsewright {

double roughness_term(double relative_roughness) { return std::pow(relative_roughness / 3.7, 1.11); }

double darcy_factor(double reynolds, double relative_roughness) {
  if (reynolds <= laminar_up_to) return 64 / reynolds;
  return blended_darcy(reynolds, std::log10(roughness_term(relative_roughness) + 6.9 / reynolds));
}

}  // namespace pulsewright
