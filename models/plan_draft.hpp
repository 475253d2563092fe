#pragma once
// The plan while it is being built: runs of gas between nodes, cut at taps and grown together where nothing happens.
// Each phase of the building is one function on it, in the order in which build_plan calls them. Faults are collected,
// never thrown: the user gets all of them at once.

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "models/assumed.hpp"
#include "models/plan.hpp"
#include "models/sketch.hpp"
#include "shared/case_faults.hpp"

namespace pulsewright {

/// What a name of the case stands for.
enum class NameKind { duct, joint, end, gate, restriction, turbine, word };

struct NameEntry {
  std::string name;
  Place place;
  NameKind kind;
  int index;  // into the sketch's list of that kind
};

enum { at_start = 0, at_finish = 1 };  // the two ends of a run

struct DraftEnd {
  int node = -1;
  MeetingSketch meeting;
  Place place;
  bool in_line = false;  // the run of a tap: straight on without a word
  int scroll = -1;       // of the turbine that it enters
};

/// A duct, or a part of one, or several grown together.
struct DraftRun {
  std::vector<NamedStretch> names;  // in order along the run; their `duct` is not yet set
  DuctDrawing drawing;
  std::vector<InitialStretch> initial;
  std::array<DraftEnd, 2> ends;
  Place place;
  bool gone = false;  // grown into another
};

struct DraftPort {
  int run, end;
};

struct DraftNode {
  std::string name{};
  Place place{};
  NodeKind kind{};
  std::optional<JointSketch> joint{};  // what was said about a joint
  bool tap = false, flange = false;    // made by us: a tap in a duct, or port against primary
  std::optional<DraftPort> outlet{};   // of a joint
  int restriction = -1;                // of the sketch, that stands here
  int gates = 0;                       // gates that leave or enter here
  std::optional<double> volume{};      // of joints and a run too short that have become one, m3
  bool gone = false;
};

struct DraftGate {
  int sketch, from = -1, to = -1;                // nodes; to -1: air
  Eigen::Vector3d n = Eigen::Vector3d::UnitY();  // of its mouth, out of the joint
};

struct Draft {
  const Sketch& sketch;
  AssumedList& assumed;
  CaseFaults& faults;
  std::vector<NameEntry> names{};
  std::vector<DraftRun> runs{};
  std::vector<DraftNode> nodes{};
  std::vector<DraftGate> gates{};
  std::vector<int> first_run{}, last_run{};        // of each duct of the sketch
  std::map<std::string, int, std::less<>> taps{};  // address as written -> node; -1: faulty
  std::vector<int> joint_node{}, end_node{}, turbine_node{},
      port{};  // of the sketch's lists; flange node of each cylinder
  std::vector<std::string> notes{};

  bool sound = true;  // nothing wrong so far

  void fault(std::string what, Place place, std::string hint = {}) {
    sound = false;
    faults.add(place, std::move(what), std::move(hint));
  }
  int add_node(DraftNode node) {
    nodes.push_back(std::move(node));
    return static_cast<int>(nodes.size()) - 1;
  }
  DraftRun& run(int index) { return runs[static_cast<std::size_t>(index)]; }
  DraftNode& node(int index) { return nodes[static_cast<std::size_t>(index)]; }
};

/// Duct ends that meet in a node, in file order.
std::vector<DraftPort> ports_at(const Draft& draft, int node);

/// Flow area at an end of a run, m2.
double area_of(const Draft& draft, DraftPort port);

/// Names of the case: fills draft.names; two things of one name are a fault.
void gather_names(Draft& draft);

/// The entry of a name, or none.
const NameEntry* find_name(const Draft& draft, std::string_view name);

/// One primary for each cylinder.
void check_primaries(Draft& draft);

/// A fault for an address that names nothing, with the nearest name.
void unknown_address(Draft& draft, const PlacedText& address, std::string_view key);

/// Runs from the ducts of the sketch, cut at every tap; a node for each tap.
void cut_at_taps(Draft& draft);

/// A node for each joint, end, turbine and cylinder of the sketch; a run for each exhaust port.
void make_nodes(Draft& draft);

/// Outlets of the joints, then every end of a duct put to its node.
void attach_outlets(Draft& draft);
void attach_ends(Draft& draft);

/// "turbine.a", "left.out": the turbine's index and what of it; none where the address is no turbine's.
struct TurbineAddress {
  int turbine;
  int scroll;   // from 0; -1 where none is named
  bool outlet;  // .out
};
std::optional<TurbineAddress> turbine_address(const Draft& draft, std::string_view text);

/// A volute run from a node into an entry of a turbine; its first bore comes with shape_mouths. Faults where the entry
/// does not exist or is taken; then -1.
int add_volute(Draft& draft, const TurbineAddress& entry, const PlacedText& address, int from_node);

/// The node that an address names where gas can enter or leave sideways: a joint or a tap; -1 after a fault.
int joint_at(Draft& draft, const PlacedText& address, std::string_view key);

/// Gates put to their joints.
void attach_gates(Draft& draft);

/// Restrictions put to their taps; each alone there.
void attach_restrictions(Draft& draft);

/// The jet of every restriction, from what its duct is there.
void resolve_restrictions(Draft& draft);

/// Throats and their tapers, and a volute before every turbine entry.
void shape_mouths(Draft& draft);

/// Two ends of one bore in line become one run; too short runs go into a joint.
void grow_together(Draft& draft);
void absorb_short_runs(Draft& draft);

/// Everything that a finished network must be: joints with ducts, all of it in one piece, a turbine for each cylinder.
void check_network(Draft& draft);

/// An axis for every joint, and for all that meets it a direction in the joint's axes (MeetingSketch::direction).
void resolve_directions(Draft& draft);

/// A meeting's own direction in the joint's axes; the clock where it states none.
Eigen::Vector3d meeting_direction(const MeetingSketch& meeting, double default_clock);

/// The unit vector of a port in its joint's axes, out of the joint; directions must be resolved.
Eigen::Vector3d port_normal(const Draft& draft, DraftPort port);

/// What a joint holds, m3: stated, or assumed from the ducts that meet there.
double joint_volume(Draft& draft, int node);

/// Mouths, contraction loss and volume of every joint: its NodeKind, ports in the order of ports_at.
void resolve_joints(Draft& draft);

}  // namespace pulsewright
