#pragma once
// An engine with its manifold at one speed, assembled and ready to be turned over.

#include <cmath>
#include <memory>
#include <vector>

#include "models/assembly.hpp"
#include "models/cylinder.hpp"
#include "models/engine_case.hpp"
#include "models/metal.hpp"
#include "models/turbine.hpp"

namespace pulsewright {

/// The network of an engine with hands on its parts.
class EngineModel {
 public:
  EngineModel(const EngineCase& engine, double rpm);

  /// One whole cycle, ending on the instant that cylinder 1 fires again. each_step is called after every step.
  template <class EachStep>
  void cycle(EachStep each_step) {
    Network& net = *assembly_.network;
    const double end = static_cast<double>(++cycles_) * cycle_time_;
    net.refresh_with_next_step();
    while (net.time() < end - 1e-9 * cycle_time_) {
      const double left = end - net.time(), steps = std::ceil(left / net.allowed_step());
      net.step(left / std::max(1.0, steps));
      each_step();
    }
    metal_.after_cycle(cycle_time_);
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
  double compressor_work() const;                   // J/kg
  double tip_speed(std::size_t turbine = 0) const;  // of the turbine wheel, m/s; 0 without boost

 private:
  std::unique_ptr<Element> machine(const NodePlan& node);
  CylinderSpec cylinder_spec(int cylinder) const;
  TurbineSpec turbine_spec(const TurbineNode& node, const std::string& name) const;
  double exit_area() const;

  const EngineCase& case_;
  Gas gas_;
  double rpm_, cycle_time_;
  std::vector<Cylinder*> cylinders_;  // 1, 2, ...
  std::vector<Turbine*> turbines_;
  Assembly assembly_;
  Metal metal_;
  int cycles_ = 0;
};

}  // namespace pulsewright
