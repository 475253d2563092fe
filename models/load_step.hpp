#pragma once
// Full load at once at a constant engine speed: how the shaft gains speed and the boost with it.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "models/engine_model.hpp"

namespace pulsewright {

/// Kinetic energy of a shaft that gets a steady power and whose compressor takes power in proportion to that energy.
class ShaftEnergy {
 public:
  explicit ShaftEnergy(double energy) : energy_(energy) {}
  double value() const { return energy_; }  // J

  /// dt of `power` W from the turbine, `take` times the energy per second to the compressor, 1/s. Exact for constants.
  void advance(double dt, double power, double take);

 private:
  double energy_;
};

/// All shafts of an engine: their compressors do one work per mass, so that one energy says what boost they make.
/// Energy over compressor work, kg: sum of 2 I/(psi d^2).
double shaft_energy_per_work(const EngineCase& engine);

struct LoadStep {
  std::optional<double> time;        // until 90 % of the target, s
  std::string why;                   // where there is none
  std::vector<double> times, boost;  // at the end of every cycle from the step on; s, Pa gauge
};

/// From the boost that run.step_from says to 90 % of the target, gates shut, metal as it is. Leaves the model where it
/// got to. Needs inertia and size of every wheel (read_boost.hpp sees to that). each_step is called after every step.
LoadStep run_load_step(EngineModel& model, const std::function<void()>& each_step);

}  // namespace pulsewright
