#pragma once
// One cylinder of a two-litre four of our own, and a port that behaves like an endless duct in one state.

#include <limits>

#include "models/cylinder.hpp"

namespace pulsewright::test {

inline CrankAngle deg(double degrees) { return CrankAngle::from_degrees(degrees); }

inline CylinderSpec sample_cylinder(double rpm = 4000) {
  CylinderSpec s;
  s.name = "cylinder 1";
  s.crank = {0.086, 0.086, 0.145, 9};
  s.crank_speed = rpm * std::numbers::pi / 30;
  s.firing_at = {0};
  s.exhaust_cam = {deg(126), deg(378), 1e-4, 0.009, 2};
  s.intake_cam = {deg(346), deg(590), 1e-4, 0.0095, 2};
  s.exhaust_valves = {2, 0.029};
  s.intake_valves = {2, 0.034};
  s.burn = {deg(20), deg(25)};
  s.fuel = {12.4, 43.5e6, 0.82};
  s.plenum = {2e5, 323};
  return s;
}

inline CylinderSpec motored_cylinder(double rpm = 4000) {
  CylinderSpec s = sample_cylinder(rpm);
  s.fuel.air_fuel_ratio = std::numeric_limits<double>::infinity();
  return s;
}

/// Gas of an endless duct at the exhaust port.
struct EndlessPort {
  Port port;
  Content crossed;  // into the duct

  EndlessPort(const Gas& gas, double p, double T, double area = 1.0e-3) {
    const double R = gas_constant(gas, 1);
    port.state = {p / (R * T), 0, p, 1, T, heat_ratio(gas, T, 1), sound_speed(gas, T, 1)};
    port.area = area;
  }
  void advance(Cylinder& cylinder, const Step& step) {
    cylinder.advance({&port, 1}, step);
    crossed += (-step.dt * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
  }
};

/// Runs the cylinder over whole cycles in equal steps.
inline double run_cycles(Cylinder& cylinder, EndlessPort& duct, const Gas& gas, int cycles, int steps_each,
                         double from = 0) {
  const double dt = cylinder.cycle_time() / steps_each;
  for (int i = 0; i < cycles * steps_each; ++i) duct.advance(cylinder, {from + i * dt, dt, gas});
  return from + cycles * cylinder.cycle_time();
}

}  // namespace pulsewright::test
