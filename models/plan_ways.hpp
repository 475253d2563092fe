#pragma once
// Ways through the pipes of a plan, without asking how the gas runs: what a pulse from one place can reach.

#include <string>
#include <vector>

#include "models/plan.hpp"

namespace pulsewright {

/// The node of a cylinder's exhaust valves; cylinder from 0.
int valve_node(const ManifoldPlan& plan, int cylinder);

/// Nodes that gas of a node can reach without passing a turbine, the node itself first, turbines left out.
std::vector<int> before_turbine(const ManifoldPlan& plan, int start);

/// The turbine entries that these nodes blow into: "turbine", "turbine.a", "left.b"; each once.
std::vector<std::string> entries_of(const ManifoldPlan& plan, const std::vector<int>& nodes);

/// Where the ways of two nodes to the turbine come together: of the nodes between them the one that is the fewest ducts
/// from a turbine; empty where they do not before the wheel.
std::string meeting_place(const ManifoldPlan& plan, int one, int other);

}  // namespace pulsewright
