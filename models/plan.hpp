#pragma once
// A manifold or a rig with everything resolved: which duct joins what, in which direction, with which drawing and which
// gas in it at the start. Built from what the user drew (models/sketch.hpp); a simulation is assembled from it without
// asking anything more.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "models/duct_drawing.hpp"
#include "models/gate_spring.hpp"
#include "models/node_plan.hpp"

namespace pulsewright {

/// One end of one duct.
struct PlanPort {
  int duct;
  bool at_finish;  // else at its start
};

/// Which port of which node.
struct NodePort {
  int node = -1;
  int port = -1;
};

/// Gas at the start of the run over one stretch of a duct.
struct InitialStretch {
  double to;  // distance from the duct's start at which the stretch ends, m
  GasState gas;
};

struct DuctPlan {
  std::string name;     // of its pieces, from start to finish: "port 1 + primary 1"
  DuctDrawing drawing;  // all of it, one section behind the other
  std::vector<InitialStretch> initial;
  NodePort start, finish;
};

struct NodePlan {
  std::string name;
  NodeKind kind;
  std::vector<PlanPort> ports;  // attach the duct ends in this order
};

/// A wastegate, or any orifice that leaves a joint sideways.
struct GatePlan {
  std::string name;
  int joint;               // node
  Eigen::Vector3d n;       // of its mouth, in the joint's axes, pointing out
  double bore, full_lift;  // m
  double flow_coefficient;
  double opening;        // share of full lift, 0..1
  int destination = -1;  // node of the joint that it blows into (no momentum enters there); -1: air
  bool holds = false;    // opens as far as the boost target asks for
  std::optional<GateSpring> spring{};
  std::string no_spring{};  // what the case leaves out, where there is none: "spring", "diaphragm"
  bool cut_out = false;     // nothing moves it: whoever holds the boost leaves it alone
};

/// A stretch of a duct that has a name of its own: what the user calls "downpipe" may be two ducts with a tap between,
/// and "port 1" and "primary 1" may be one duct.
struct NamedStretch {
  std::string name;
  double name_from, name_to;  // distance along what the user named, m
  int duct;
  double duct_at_from;    // distance along the duct of name_from, m
  bool reversed = false;  // the duct runs the other way; velocities change sign
};

/// A place along a duct.
struct PlanPlace {
  int duct;
  double distance;  // from the duct's start, m
  bool reversed;
};

struct ManifoldPlan {
  std::vector<DuctPlan> ducts;
  std::vector<NodePlan> nodes;
  std::vector<GatePlan> gates;
  std::vector<NamedStretch> names;
  GasState air;                    // what gates to air blow into
  std::vector<std::string> notes;  // what was done that the drawing does not show, for `check`
};

/// The stretches of one name, in order of distance. Empty when there is none.
std::vector<NamedStretch> stretches(const ManifoldPlan& plan, std::string_view name);

/// Where "NAME:DISTANCE" is (the distance alone defaults to 0). Throws Error (usage) naming the nearest name, or the
/// length when the distance lies beyond it.
PlanPlace locate(const ManifoldPlan& plan, std::string_view name, double distance);

/// Flow area of a gate at its opening: the curtain under the valve, never more than its bore; m2, without coefficient.
double gate_area(const GatePlan& gate);

/// What is not computed for want of the gate's spring, as a sentence; empty where it is given.
std::string no_spring_sentence(const GatePlan& gate);

}  // namespace pulsewright
