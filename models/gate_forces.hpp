#pragma once
// How far the gates of a running model are held open by what acts on their valves, cycle by cycle. A diaphragm is too slow
// for single pulses: the mean of a cycle counts. Every cycle the opening goes part of the way to where the forces
// balance, so that gate and drive pressure settle together.

#include <vector>

#include "models/assembly.hpp"

namespace pulsewright {

class GateForces {
 public:
  explicit GateForces(const std::vector<GatePlan>& gates);

  /// After every step of dt seconds.
  void add(const Assembly& assembly, double dt);

  /// After a cycle at that boost, Pa gauge.
  void end_cycle(double boost_gauge);

  /// Share of full lift below which the forces do not let the gate go, 0..1; 0 without a spring, or with it strong enough.
  double least_opening(std::size_t gate) const { return loads_[gate].least; }

  /// Cycle means: total pressure before the valve, and what lies behind; Pa.
  double before(std::size_t gate) const { return loads_[gate].before; }
  double behind(std::size_t gate) const { return loads_[gate].behind; }

  bool any_spring() const;

 private:
  struct Load {
    double before_sum = 0, behind_sum = 0, before = 0, behind = 0, least = 0;
    double way = 0, share = 0.5;  // to the balance, last cycle; how much of it a cycle goes
  };
  std::vector<GatePlan> gates_;
  std::vector<Load> loads_;
  double time_ = 0;
};

}  // namespace pulsewright
