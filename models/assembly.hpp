#pragma once
// From a plan to a network that runs: ducts cut into cells, an element for every node, gates on their joints.

#include <functional>
#include <memory>
#include <vector>

#include "models/plan.hpp"
#include "solver/joint.hpp"
#include "solver/network.hpp"

namespace pulsewright {

/// Ducts of the network have the plan's numbers.
struct Assembly {
  std::unique_ptr<Network> network;
  std::vector<Element*> elements;  // of each node of the plan
  std::vector<Joint*> joints;      // of each node; nullptr where it is none
  struct GateSeat {
    Joint* joint;
    std::size_t number;  // in that joint
  };
  std::vector<GateSeat> gates;  // of each gate of the plan

  JointGate& gate(std::size_t i) { return gates[i].joint->gate(gates[i].number); }
  const JointGate& gate(std::size_t i) const { return gates[i].joint->gate(gates[i].number); }
};

/// Makes the element of a node that belongs to the engine: cylinder, turbine, silenced end. Rigs have none.
using MachineMaker = std::function<std::unique_ptr<Element>(const NodePlan&)>;

/// Cuts and joins. Throws Error: unphysical start states, an impossible geometry.
Assembly assemble(const ManifoldPlan& plan, const Gas& gas, const NetworkOptions& options, double cell,
                  const MachineMaker& machine = {});

/// The solver's primitive of a stated gas.
Primitive primitive_of(const GasState& state, const Gas& gas);

/// Joint axes as the solver takes them.
std::array<double, 3> axis(const Eigen::Vector3d& n);

}  // namespace pulsewright
