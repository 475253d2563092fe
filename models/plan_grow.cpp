// Where nothing happens there is no joint: two ends of one bore in line grow together to one run. What is shorter than
// half a cell is no run: its volume goes into a joint.

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "models/drawing_edit.hpp"
#include "models/plan_draft.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double straight_on = 1e-9;  // rad

bool in_line(const MeetingSketch& meeting) {
  if (meeting.direction) return std::abs(meeting.direction->normalized().x() - 1) < straight_on;
  return std::abs(meeting.angle.value_or(0)) < straight_on;
}

DraftEnd& end_of(Draft& draft, DraftPort port) { return draft.run(port.run).ends[static_cast<std::size_t>(port.end)]; }

const DuctSection& section_at(Draft& draft, DraftPort port) {
  const auto& sections = draft.run(port.run).drawing.sections;
  return port.end == at_start ? sections.front() : sections.back();
}

/// Nothing happens here: two ends of two runs, one bore, in line, no volume stated, no gate.
bool passes_straight_through(Draft& draft, int node, const std::vector<DraftPort>& ports) {
  const DraftNode& n = draft.node(node);
  if (!std::holds_alternative<JointNode>(n.kind) || ports.size() != 2 || ports[0].run == ports[1].run || n.gates > 0)
    return false;
  if (n.joint && (n.joint->law != JointLaw::momentum || n.joint->volume.value_or(0) > 0)) return false;
  if (!in_line(end_of(draft, ports[0]).meeting) || !in_line(end_of(draft, ports[1]).meeting)) return false;
  DuctSection one = section_at(draft, ports[0]), other = section_at(draft, ports[1]);
  one.finish = ports[0].end == at_finish ? one.finish : one.start;
  other.start = ports[1].end == at_start ? other.start : other.finish;
  return !steps(one, other);
}

void turn_round(DraftRun& run) {
  const double length = run.drawing.length();
  run.drawing = turned_round(run.drawing);
  std::ranges::reverse(run.names);
  for (NamedStretch& name : run.names) name.reversed = !name.reversed;
  std::vector<InitialStretch> turned;
  for (std::size_t k = run.initial.size(); k-- > 0;) {
    GasState gas = run.initial[k].gas;
    gas.velocity = -gas.velocity;
    turned.push_back({length - (k == 0 ? 0 : run.initial[k - 1].to), gas});
  }
  run.initial = std::move(turned);
  std::swap(run.ends[at_start], run.ends[at_finish]);
}

/// Outlets that name an end of a run, after that end has become another.
void rename_port(Draft& draft, DraftPort old, DraftPort now) {
  for (DraftNode& node : draft.nodes)
    if (node.outlet && node.outlet->run == old.run && node.outlet->end == old.end) node.outlet = now;
}

void turn_round(Draft& draft, int index) {
  turn_round(draft.run(index));
  const DraftPort parked{-1, 0};
  rename_port(draft, {index, at_start}, parked);
  rename_port(draft, {index, at_finish}, {index, at_start});
  rename_port(draft, parked, {index, at_finish});
}

/// The run behind a node joined to the one before it; the merged run keeps the lower index (file order).
void grow(Draft& draft, int node, DraftPort before, DraftPort behind) {
  if (before.end == at_start && behind.end == at_finish) std::swap(before, behind);
  if (before.end == at_start) turn_round(draft, before.run);
  if (behind.end == at_finish) turn_round(draft, behind.run);
  const int keep = std::min(before.run, behind.run), lost = std::max(before.run, behind.run);
  DraftRun merged = draft.run(before.run);
  const DraftRun& second = draft.run(behind.run);
  const double offset = merged.drawing.length();
  merged.drawing = joined(merged.drawing, second.drawing);
  merged.names.insert(merged.names.end(), second.names.begin(), second.names.end());
  for (InitialStretch stretch : second.initial) merged.initial.push_back({offset + stretch.to, stretch.gas});
  merged.ends[at_finish] = second.ends[at_finish];
  rename_port(draft, {before.run, at_start}, {keep, at_start});
  rename_port(draft, {behind.run, at_finish}, {keep, at_finish});
  draft.run(keep) = std::move(merged);
  draft.run(lost).gone = true;
  draft.node(node).gone = true;
}

std::string name_of(const DraftRun& run) { return run.names.front().name; }

/// What meets one joint, turned into the axes of the joint that takes it in.
void move_ports(Draft& draft, int from, int into, const Eigen::Matrix3d& turn) {
  for (const DraftPort port : ports_at(draft, from)) {
    DraftEnd& end = end_of(draft, port);
    end.meeting.direction = turn * *end.meeting.direction;
    end.node = into;
  }
  for (DraftGate& gate : draft.gates) {
    if (gate.from == from) gate = {gate.sketch, into, gate.to, turn * gate.n};
    if (gate.to == from) gate.to = into;
  }
}

/// Two joints with next to nothing between become one, in the axes of the second (whose outlet stays).
void merge_joints(Draft& draft, int short_run) {
  DraftRun& run = draft.run(short_run);
  int gives = run.ends[at_start].node, takes = run.ends[at_finish].node;
  int gives_end = at_start;
  if (draft.node(takes).outlet && draft.node(takes).outlet->run == short_run) {
    std::swap(gives, takes);
    gives_end = at_finish;
  }
  const Eigen::Vector3d out = port_normal(draft, {short_run, gives_end});
  const Eigen::Vector3d in = -port_normal(draft, {short_run, 1 - gives_end});
  const double volume = joint_volume(draft, gives) + joint_volume(draft, takes) + drawn_volume(run.drawing);
  run.gone = true;
  move_ports(draft, gives, takes, Eigen::Quaterniond::FromTwoVectors(out, in).toRotationMatrix());
  DraftNode& node = draft.node(takes);
  node.gates += draft.node(gives).gates;
  node.volume = volume;
  draft.node(gives).gone = true;
  draft.notes.push_back(name_of(run) + " is only " + in_words(run.drawing.length(), Dimension::length) +
                        " long, less than half a cell: its volume stands in joint " + node.name);
}

bool is_joint(Draft& draft, int node) { return node >= 0 && std::holds_alternative<JointNode>(draft.node(node).kind); }

void absorb(Draft& draft, int index) {
  DraftRun& run = draft.run(index);
  const double length = run.drawing.length();
  if (!draft.sketch.engine()) {
    if (length < draft.sketch.cell)
      draft.fault("duct " + in_quotes(name_of(run)) + " is " + in_words(length, Dimension::length) +
                      " long, shorter than one cell of " + in_words(draft.sketch.cell, Dimension::length),
                  run.place, "make the cell shorter, or leave the duct out");
    return;
  }
  if (length >= draft.sketch.cell / 2) return;
  const int a = run.ends[at_start].node, b = run.ends[at_finish].node;
  if (is_joint(draft, a) && is_joint(draft, b) && a != b) return merge_joints(draft, index);
  draft.fault("duct " + in_quotes(name_of(run)) + " is " + in_words(length, Dimension::length) +
                  " long, shorter than half a cell of " + in_words(draft.sketch.cell, Dimension::length) +
                  ", and does not run between two joints",
              run.place, "leave it out, draw it longer, or make the cell shorter");
}

}  // namespace

void grow_together(Draft& draft) {
  const int count = static_cast<int>(draft.nodes.size());
  for (int k = 0; k < count; ++k) {
    const auto ports = ports_at(draft, k);
    if (passes_straight_through(draft, k, ports)) grow(draft, k, ports[0], ports[1]);
  }
}

void absorb_short_runs(Draft& draft) {
  const int count = static_cast<int>(draft.runs.size());
  for (int k = 0; k < count; ++k)
    if (!draft.run(k).gone) absorb(draft, k);
}

}  // namespace pulsewright
