#include "models/gate_spring.hpp"

#include <algorithm>

namespace pulsewright {
namespace {

double on_port(const GateSpring& spring, double boost_gauge) {
  return spring.controller ? 0 : std::max(boost_gauge, 0.0);
}

double lift_share(const GateSpring& spring, double port_pressure, double drive_over_behind) {
  const double force = port_pressure * spring.diaphragm_area + drive_over_behind * spring.valve_area;
  const double preload = spring.cracks * spring.diaphragm_area;
  const double to_full_lift = (spring.fully_open - spring.cracks) * spring.diaphragm_area;
  return std::clamp((force - preload) / to_full_lift, 0.0, 1.0);
}

}  // namespace

// Equation   x = (p_b A_d + dp A_v - p_c A_d)/((p_f - p_c) A_d), held to 0..1
// Source     balance of forces on the valve's stem; a spring of constant rate, assumed
// Symbols    p_b boost at the port; p_c, p_f where the valve cracks and stands fully open without drive pressure, Pa gauge;
//            dp cycle mean of the total pressure before the valve less that behind, Pa; A_d diaphragm, A_v valve, m2
// Valid for  steady pressures: a diaphragm does not follow pulses; dp acts on all of A_v at every lift; friction left out
// Tested by  tests/models/gate_spring_test.cpp
double forced_opening(const GateSpring& spring, double boost_gauge, double drive_over_behind) {
  return lift_share(spring, on_port(spring, boost_gauge), drive_over_behind);
}

double opening_by_boost(const GateSpring& spring, double boost_gauge) {
  return lift_share(spring, on_port(spring, boost_gauge), 0);
}

double cracking_boost(const GateSpring& spring, double drive_over_behind) {
  return std::max(0.0, spring.cracks - drive_over_behind * spring.valve_area / spring.diaphragm_area);
}

double blowing_open_pressure(const GateSpring& spring) {
  return spring.cracks * spring.diaphragm_area / spring.valve_area;
}

}  // namespace pulsewright
