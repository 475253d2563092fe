#include "solver/arena.hpp"

namespace pulsewright {

void Arena::resize(std::size_t n) {
  for (Lane* lane : {&momentum,
                     &energy,
                     &burned,
                     &rho,
                     &u,
                     &p,
                     &Y,
                     &T,
                     &c,
                     &p_mid,
                     &inv_dx,
                     &inv_volume,
                     &flare,
                     &loss,
                     &heat_exchange,
                     &wall_temperature,
                     &heat_given,
                     &heat_taken,
                     &exchange_sum,
                     &roughness_term,
                     &loss_forward,
                     &loss_backward})
    lane->resize(n, 0.0);
  hydraulic_diameter.resize(n, 1e6);  // ghosts feel no wall
  for (EdgeStates* edge : {&start, &finish})
    for (Lane* lane : {&edge->rho, &edge->u, &edge->p, &edge->Y, &edge->energy}) lane->resize(n, 1.0);
  for (Lane* lane : {&flux_mass, &flux_momentum, &flux_energy, &flux_burned, &face_area}) lane->resize(n + 1, 0.0);
}

}  // namespace pulsewright
