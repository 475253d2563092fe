#pragma once
// What the user drew, value by value, before anything is resolved: addresses are still text, what he left out is still
// open. The readers of cases write it; build_plan (models/plan_builder.hpp) resolves it.

#include <optional>
#include <string>
#include <vector>

#include "models/duct_drawing.hpp"
#include "models/gate_spring.hpp"
#include "models/node_plan.hpp"
#include "shared/case_value.hpp"

namespace pulsewright {

/// A text of the case and where it stands, for messages.
struct PlacedText {
  std::string text;
  Place place;
};

/// How something meets a joint, in the joint's axes. Angles in rad.
struct MeetingSketch {
  std::optional<double> angle;  // between its own direction and the joint's axis x
  std::optional<double> clock;  // azimuth about x
  std::optional<Eigen::Vector3d> direction;
  bool stated() const { return angle || direction; }
};

/// One end of a duct: an address and how it meets what stands there.
struct DuctEndSketch {
  PlacedText address;
  MeetingSketch meeting;
};

struct DuctSketch {
  std::string name;
  Place place;
  DuctEndSketch from, to;
  DuctDrawing drawing;  // as drawn; mouth and taper come with the joint
  GasState initial;
  bool silenced = true;  // where it ends in the air behind a turbine, the silencer stands there
  int cylinder = -1;     // an engine's primary: it starts at this cylinder's port, from 0
};

struct JointSketch {
  std::string name;
  Place place;
  PlacedText outlet;
  JointLaw law = JointLaw::momentum;
  std::optional<double> throat, taper, volume, angle_factor;
};

struct GateSketch {
  std::string name;
  Place place;
  PlacedText at, to;
  MeetingSketch meeting;
  double bore = 0, full_lift = 0, flow_coefficient = 0, opening = 0;
  std::optional<GateSpring> spring;
  std::string no_spring;  // what the case leaves out, where there is none: "spring", "diaphragm"
  bool cut_out = false;   // an opening that nothing moves: no gate of the boost
  bool holds = false;     // the boost, in the modes that hold it
};

/// Something that narrows a duct at a place along it.
struct RestrictionSketch {
  enum class Kind { plate, butterfly, loss };
  std::string name;
  Place place;
  PlacedText at;
  Kind kind = Kind::plate;
  double value = 0;  // bore of the hole, m; share of the quarter turn; velocity heads
};

struct EndSketch {
  std::string name;
  Place place;
  NodeKind kind;
};

/// A turbine: what every scroll begins with.
struct TurbineSketch {
  std::string name;
  Place place;
  int scrolls = 1;
  double volute_length = 0, throat_area = 0;      // of each scroll, m and m2
  double roughness = 0, wall_temperature = 1050;  // of the volute, m and K
  std::optional<TubeMetal> metal;                 // of the housing, where its temperature is computed
};

struct Sketch {
  std::vector<DuctSketch> ducts;  // in file order
  std::vector<JointSketch> joints;
  std::vector<GateSketch> gates;
  std::vector<RestrictionSketch> restrictions;
  std::vector<EndSketch> ends;
  std::vector<TurbineSketch> turbines;
  std::vector<DuctDrawing> ports;  // exhaust port of each cylinder, seat to head face; empty in a rig
  GasState air;                    // ambient, and what engine ducts hold at the start
  double cell = 0;                 // m
  bool engine() const { return !ports.empty(); }
};

}  // namespace pulsewright
