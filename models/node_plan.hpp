#pragma once
// What stands at the ends of the ducts of a plan: one plain struct for each kind of node. SI, absolute static pressure.

#include <Eigen/Core>
#include <string>
#include <variant>
#include <vector>

#include "solver/end_wave.hpp"
#include "solver/joint_port.hpp"

namespace pulsewright {

/// Gas as a case states it. Velocity along the duct, from its start to its finish.
struct GasState {
  double pressure = 101325;  // Pa, static, absolute
  double temperature = 293;  // K
  double velocity = 0;       // m/s
  double burned = 0;         // burned mass fraction, 0..1
};

// Rig ends.
struct ClosedNode {};
struct OpenNode {
  GasState outside;  // inflow takes pressure and temperature as stagnation values
};
struct SupplyNode {
  GasState total;  // total pressure and temperature
};
struct NozzleNode {
  double bore;       // m
  double discharge;  // discharge coefficient
  GasState outside;
};
struct AnechoicNode {};
struct SignalNode {
  std::string file;
  std::vector<SignalPoint> points;  // the incoming wave's state, time rising
};
struct VesselNode {
  double volume;  // m3
  GasState inside;
  double bore, discharge;
  double opens;  // time, s; shut before
};

/// A port of a joint, in the joint's own axes: x along the outlet, pointing out of the joint.
struct JointMouth {
  Eigen::Vector3d n;  // unit vector along the duct, pointing out of the joint
  bool smooth;        // s = 1: the outlet's mouth, or a duct of the same bore in line with it
};

struct JointNode {
  JointLaw law = JointLaw::momentum;
  double volume = 0;              // m3
  double contraction_loss = 0.1;  // kc
  double angle_factor = 1;        // on the angles of the jets
  int outlet = 0;                 // port that sets the axis
  std::vector<JointMouth> ports;  // in the order of NodePlan::ports
};

/// The exhaust valves of a cylinder; the duct that stands here starts at the valve seat.
struct CylinderNode {
  int cylinder;  // from 0
};

/// A turbine: every port but the outlet is the end of a volute at a scroll's throat.
struct TurbineNode {
  int turbine;              // from 0
  std::vector<int> scroll;  // for each port the scroll it enters, from 0; -1 for the outlet
  int outlet = -1;          // port of the downpipe; -1: none drawn, the assumed restriction stands there
};

/// The open end of a downpipe, or of any duct that runs to air.
struct AirNode {
  GasState air;
  bool silencer = false;  // the assumed restriction stands between the duct and the air
};

/// A narrow place between two ducts.
struct ThrottleNode {
  double jet_area = 0;   // of the contracted jet, m2
  double pipe_area = 0;  // of the narrower duct, m2
  std::string at;        // "downpipe:400 mm"
};

using NodeKind = std::variant<ClosedNode, OpenNode, SupplyNode, NozzleNode, AnechoicNode, SignalNode, VesselNode,
                              JointNode, CylinderNode, TurbineNode, AirNode, ThrottleNode>;

}  // namespace pulsewright
