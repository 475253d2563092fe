#pragma once
// One duct as the solver takes it: cut in equal cells, with area, losses, walls and first state along it.

#include <string>
#include <vector>

namespace pulsewright {

/// Gas in a cell at rest or moving along the duct (positive from start to finish).
struct Primitive {
  double rho;  // density, kg/m3
  double u;    // velocity along the duct, m/s
  double p;    // static pressure, Pa
  double Y;    // burned mass fraction, 0..1
};

/// n cells of length dx. Vectors per cell have n entries, face_area has n + 1.
struct DuctSpec {
  std::string name;
  double dx = 0;                           // cell length, m
  std::vector<double> face_area;           // m2, faces 0..n from start to finish
  std::vector<double> cell_volume;         // m3
  std::vector<double> hydraulic_diameter;  // m
  std::vector<double> roughness;           // m, absolute; 0 = smooth
  std::vector<double> wall_temperature;    // K; used where heat is on
  std::vector<double> loss_forward;  // loss coefficient per metre for u > 0, 1/m (bends, tapers; friction not included)
  std::vector<double> loss_backward;  // the same for u < 0
  std::vector<Primitive> initial;     // first state of each cell

  std::size_t cells() const { return cell_volume.size(); }
  double length() const { return dx * static_cast<double>(cells()); }
};

/// A smooth, adiabatic straight duct of one bore in one state.
DuctSpec straight_duct(std::string name, double length, double bore, int cells, const Primitive& state);

enum class Side { start, finish };

/// One end of one duct of a network.
struct DuctEnd {
  int duct;
  Side side;
};

}  // namespace pulsewright
