#pragma once
// An engine with its manifold at one speed, assembled and ready to be turned over.

#include <cmath>
#include <memory>
#include <vector>

#include "models/assembly.hpp"
#include "models/cylinder.hpp"
#include "models/engine_case.hpp"
#include "models/gate_forces.hpp"
#include "models/metal.hpp"
#include "models/turbine.hpp"

namespace pulsewright {

/// The network of an engine with hands on its parts.
class EngineModel {
 public:
  EngineModel(const EngineCase& engine, double rpm);

  /// Boost from now on: pressure and temperature of the plenum, burn, speed of the wheel. The case's target at the start.
  /// Pa above ambient.
  void set_boost(double gauge);
  double boost() const { return boost_; }

  /// All gates that hold share one opening, 0..1: shut at the start.
  void set_gate_opening(double share);
  double gate_opening() const { return gate_opening_; }

  /// Bore and lift of the gates that hold, times the case's; 1 at the start.
  void set_gate_scale(double scale);

  /// A gate of the plan as it stands now: never further shut than the forces on its valve let it.
  GatePlan gate_now(std::size_t i) const;
  const GateForces& gate_forces() const { return forces_; }

  /// One whole cycle, ending on the instant that cylinder 1 fires again. each_step is called after every step.
  template <class EachStep>
  void cycle(EachStep each_step) {
    Network& net = *assembly_.network;
    const double end = static_cast<double>(++cycles_) * cycle_time_;
    net.refresh_with_next_step();
    const double air = air_drawn(), work = shaft_work();
    while (net.time() < end - 1e-9 * cycle_time_) {
      const double left = end - net.time(), steps = std::ceil(left / net.allowed_step());
      const double dt = left / std::max(1.0, steps);
      net.step(dt);
      forces_.add(assembly_, dt);
      each_step();
    }
    metal_.after_cycle(cycle_time_);
    end_cycle(air, work);
  }

  Network& network() { return *assembly_.network; }
  const Network& network() const { return *assembly_.network; }
  const Assembly& assembly() const { return assembly_; }
  const std::vector<Cylinder*>& cylinders() const { return cylinders_; }
  const std::vector<Turbine*>& turbines() const { return turbines_; }
  Metal& metal() { return metal_; }
  const Metal& metal() const { return metal_; }
  const EngineCase& engine_case() const { return case_; }
  double rpm() const { return rpm_; }
  double cycle_time() const { return cycle_time_; }
  int cycles() const { return cycles_; }

  double intake_pressure() const;                   // Pa
  double intake_temperature() const;                // K
  double compressor_work() const;                   // J/kg
  double tip_speed(std::size_t turbine = 0) const;  // of the turbine wheel, m/s; 0 without boost

  // Means of the last whole cycle; before the first a guess of the air, and no power.
  double air_flow() const { return air_flow_; }                              // kg/s
  double compressor_power() const { return air_flow_ * compressor_work(); }  // that this boost takes, W
  double power_now() const;                                                  // of all turbines in the last step, W
  double turbine_power() const { return turbine_power_; }                    // of all, behind their bearings, W

 private:
  void end_cycle(double air_before, double work_before);
  double air_drawn() const;   // since the start, kg
  double shaft_work() const;  // of all turbines, behind their bearings, since the start, J
  void follow_boost();
  void seat_gates();
  std::unique_ptr<Element> machine(const NodePlan& node);
  CylinderSpec cylinder_spec(int cylinder) const;
  TurbineSpec turbine_spec(const TurbineNode& node, const std::string& name) const;
  double exit_area() const;

  const EngineCase& case_;
  Gas gas_;
  double rpm_, cycle_time_;
  double boost_, air_flow_, turbine_power_ = 0;
  double gate_opening_ = 0, gate_scale_ = 1;
  std::vector<Cylinder*> cylinders_;  // 1, 2, ...
  std::vector<Turbine*> turbines_;
  Assembly assembly_;
  GateForces forces_;
  Metal metal_;
  int cycles_ = 0;
};

}  // namespace pulsewright
