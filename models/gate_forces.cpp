#include "models/gate_forces.hpp"

#include <algorithm>

namespace pulsewright {
namespace {

// Share of the way to the balance that a cycle goes: a gate that opens lowers the pressure that opens it, so a step may go
// too far; then the next ones are half as long.
constexpr double longest_way = 0.5, shortest_way = 0.02, longer = 1.1;

}  // namespace

GateForces::GateForces(const std::vector<GatePlan>& gates) : gates_(gates), loads_(gates.size()) {}

void GateForces::add(const Assembly& assembly, double dt) {
  time_ += dt;
  for (std::size_t i = 0; i < loads_.size(); ++i) {
    const JointGate& gate = assembly.gate(i);
    loads_[i].before_sum += dt * gate.total_pressure;
    loads_[i].behind_sum += dt * gate.behind;
  }
}

void GateForces::end_cycle(double boost_gauge) {
  if (!(time_ > 0)) return;
  for (std::size_t i = 0; i < loads_.size(); ++i) {
    Load& load = loads_[i];
    load.before = load.before_sum / time_;
    load.behind = load.behind_sum / time_;
    load.before_sum = load.behind_sum = 0;
    if (!gates_[i].spring) continue;
    const double to = forced_opening(*gates_[i].spring, boost_gauge, load.before - load.behind);
    const double way = to - load.least;
    load.share = std::clamp(load.share * (way * load.way < 0 ? 0.5 : longer), shortest_way, longest_way);
    load.way = way;
    load.least += load.share * way;
    if (load.least < 1e-6) load.least = 0;  // a millionth of the lift is shut
  }
  time_ = 0;
}

bool GateForces::any_spring() const {
  return std::ranges::any_of(gates_, [](const GatePlan& gate) { return gate.spring.has_value(); });
}

}  // namespace pulsewright
