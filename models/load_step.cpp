#include "models/load_step.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/compressor.hpp"
#include "models/threshold.hpp"

namespace pulsewright {
namespace {

constexpr int cycles_before = 8;     // at the boost that the step begins from
constexpr long steps_a_move = 32;    // the boost follows the shaft that often
constexpr double longest = 12;       // s
constexpr double standstill = 2e-4;  // of the target a cycle: less is no gain

double boost_after(const EngineModel& model, const ShaftEnergy& shaft, double energy_per_work) {
  return boost_from_work(model.engine_case(), model.network().gas(), shaft.value() / energy_per_work, model.air_flow());
}

}  // namespace

// Equation   E = I w^2/2, dE/dt = P - k E with k = m/K, K = E/dh0; E(t + dt) = P/k + (E - P/k) exp(-k dt)
// Source     kinetic energy of a rotor; Euler's turbine equation gives the compressor's work, dh0 = psi (w d/2)^2
// Symbols    P turbine power behind the bearings W; m air flow kg/s; psi work coefficient; d compressor exducer m
// Valid for  constant P and k over dt
// Tested by  tests/models/load_step_test.cpp
void ShaftEnergy::advance(double dt, double power, double take) {
  const double x = take * dt;
  energy_ = std::max(0.0, energy_ * std::exp(-x) + power * dt * (x > 0 ? -std::expm1(-x) / x : 1));
}

double shaft_energy_per_work(const EngineCase& engine) {
  double sum = 0;
  for (const TurbineCase& t : engine.turbines) {
    const double exducer = t.wheel_ratio * t.inducer.value();
    sum += 2 * t.inertia.value() / (engine.charge.work_coefficient * exducer * exducer);
  }
  return sum;
}

LoadStep run_load_step(EngineModel& model, const std::function<void()>& each_step) {
  const EngineCase& engine = model.engine_case();
  const double target = engine.charge.boost_gauge, goal = share_that_counts_as_there * target;
  model.set_gate_opening(0);
  model.set_boost(engine.run.step_from * target);
  for (int cycle = 0; cycle < cycles_before; ++cycle) model.cycle(each_step);
  model.metal().hold(true);

  const double per_work = shaft_energy_per_work(engine), begun = model.network().time();
  ShaftEnergy shaft(model.compressor_work() * per_work);
  LoadStep result;
  double now = begun, last_boost = model.boost(), last_time = 0;
  while (!result.time) {
    const double air = model.air_flow(), pressure = model.intake_pressure(), at_start = model.boost();
    model.cycle([&] {
      const double dt = model.network().time() - now, flow = air * model.intake_pressure() / pressure;
      now += dt;
      shaft.advance(dt, model.power_now(), flow / per_work);
      each_step();
      if (model.network().steps() % steps_a_move != 0) return;
      const double boost = std::min(target, boost_after(model, shaft, per_work)), time = now - begun;
      if (!result.time && boost >= goal)
        result.time = last_time + (time - last_time) * (goal - last_boost) / (boost - last_boost);
      last_boost = boost, last_time = time;
      model.set_boost(boost);
    });
    result.times.push_back(now - begun), result.boost.push_back(model.boost());
    if (!result.time && (now - begun > longest || model.boost() - at_start < standstill * target)) break;
  }
  model.metal().hold(false);
  if (!result.time)
    result.why = fmt::format("the boost stood at {:.2f} bar after {:.1f} s", model.boost() / 1e5, now - begun);
  return result;
}

}  // namespace pulsewright
