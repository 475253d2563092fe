#include "solver/duct.hpp"

#include <numbers>

namespace pulsewright {

DuctSpec straight_duct(std::string name, double length, double bore, int cells, const Primitive& state) {
  const auto n = static_cast<std::size_t>(cells);
  const double area = std::numbers::pi / 4 * bore * bore;
  DuctSpec d;
  d.name = std::move(name);
  d.dx = length / cells;
  d.face_area.assign(n + 1, area);
  d.cell_volume.assign(n, area * d.dx);
  d.hydraulic_diameter.assign(n, bore);
  d.roughness.assign(n, 0);
  d.wall_temperature.assign(n, 300);
  d.loss_forward.assign(n, 0);
  d.loss_backward.assign(n, 0);
  d.initial.assign(n, state);
  return d;
}

}  // namespace pulsewright
