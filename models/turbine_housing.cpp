#include "models/turbine_housing.hpp"

#include <cmath>
#include <numbers>

namespace pulsewright {

// Equation   A_v = (A/R) R_c / scrolls; A_r = pi/4 (d_ex^2 - d_hub^2) cos(beta2)
// Source     geometry: A/R is constant along a volute of free vortex; the rotor's throat lies square to its flow (N. Watson
//            and M. S. Janota, Turbocharging the Internal Combustion Engine, 1982, from memory)
// Symbols    A_v throat of one scroll m2; R_c m; A_r rotor m2; d_ex exducer, d_hub hub m; beta2 from axial rad
// Valid for  radial wheels in a housing without vanes
// Tested by  tests/models/turbine_housing_test.cpp
TurbineAreas housing_areas(const TurbineHousing& h, int scrolls) {
  const double ring = std::numbers::pi / 4 * h.exducer * h.exducer * (1 - hub_share * hub_share);
  return {h.a_over_r * h.centroid_radius / scrolls, ring * std::cos(h.rotor_exit_angle)};
}

// Equation   flow = A_throats p psi/sqrt(R T) at the reference state, psi of the pair at the ratio
// Source     pair_flow in models/nozzle_pair.hpp
// Symbols    corrected flow kg/s; heat ratio of burned gas at capacity_temperature
// Valid for  ratio above 1
// Tested by  tests/models/turbine_housing_test.cpp
CapacityPoint capacity_of(const TurbineAreas& areas, int scrolls, double ratio, const Gas& gas) {
  CapacityPoint point{0, ratio, 288.15, 101325};
  const double throat = scrolls * areas.scroll_throat;
  const PairFlow pair = pair_flow(1 / ratio, areas.rotor / throat, heat_ratio(gas, capacity_temperature, 1));
  point.flow = throat * point.pressure / std::sqrt(gas_constant(gas, 1) * point.temperature) * pair.flow;
  return point;
}

TurbineAreas scaled_to(const TurbineAreas& areas, int scrolls, const CapacityPoint& point, const Gas& gas) {
  return areas_from_capacity(point, areas.rotor / (scrolls * areas.scroll_throat), scrolls, gas);
}

}  // namespace pulsewright
