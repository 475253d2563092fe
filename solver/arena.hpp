#pragma once
// All cells of all ducts in one flat structure of arrays. A duct owns a run of cells with one ghost cell before and one
// behind it; ghosts have no volume share (inv_volume = 0), so that every loop runs over the whole arena without a branch.
//
//   index   | ghost | cell cell ... cell | ghost || ghost | cell ...
//   faces: start face of cell i is face i; the finish face of a duct's last cell is the start face of the ghost behind it.

#include <cstddef>
#include <vector>

namespace pulsewright {

using Lane = std::vector<double>;  // one number per cell of the arena

/// States of one edge of every cell, half a step ahead.
struct EdgeStates {
  Lane rho, u, p, Y;  // kg/m3, m/s, Pa, -
  Lane energy;        // total energy per volume, J/m3
};

struct Arena {
  // Conserved, per volume: rho kg/m3 (below), rho u, rho E, rho Y.
  Lane momentum, energy, burned;
  // Primitive, kept in step with the conserved: density kg/m3, velocity m/s, pressure Pa, burned fraction, temperature K,
  // sound speed m/s.
  Lane rho, u, p, Y, T, c;
  // Half a step ahead: edge states toward the start and the finish of the duct, pressure in the middle of the cell.
  EdgeStates start, finish;
  Lane p_mid;
  // Flux through the start face of each cell, per unit area.
  Lane flux_mass, flux_momentum, flux_energy, flux_burned;
  // Geometry: cell length inverted 1/m, area of the start face m2, 1/volume 1/m3 (0 in ghosts), (dA/dx)/A 1/m.
  Lane inv_dx, face_area, inv_volume, flare;
  // Sources: loss per metre for the present direction 1/m; wall exchange W/(m3 K); wall temperature K; given heat W/m3;
  // heat taken from the walls since the start J/m3;
  // wall exchange summed over time since the start J/(m3 K).
  Lane loss, heat_exchange, wall_temperature, heat_given, heat_taken, exchange_sum;
  // What the sources are refreshed from: see solver/friction.hpp.
  Lane hydraulic_diameter, roughness_term, loss_forward, loss_backward;

  std::size_t size() const { return rho.size(); }
  void resize(std::size_t cells);
};

}  // namespace pulsewright
