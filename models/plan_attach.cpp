// Which end of which duct stands where: joints, rig ends, turbine entries, cylinders, air.

#include <algorithm>

#include "models/drawing_edit.hpp"
#include "models/plan_draft.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

std::string and_line(const Draft& draft, Place place) { return " (" + draft.faults.line_of(place) + ")"; }

void put(Draft& draft, DraftPort port, int node) {
  draft.run(port.run).ends[static_cast<std::size_t>(port.end)].node = node;
}

void make_cylinders(Draft& draft) {
  int cylinder = 0;
  for (const DuctDrawing& drawing : draft.sketch.ports) {
    const std::string number = std::to_string(cylinder + 1);
    DraftNode valve{.name = "cylinder " + number, .kind = CylinderNode{cylinder}};
    DraftNode flange{.name = "flange " + number, .kind = JointNode{}, .flange = true};
    DraftRun run;
    run.names = {{"port " + number, 0, drawing.length(), -1, 0, false}};
    run.drawing = drawing;
    run.initial = {{drawing.length(), draft.sketch.air}};
    run.ends[at_start].node = draft.add_node(std::move(valve));
    run.ends[at_finish].node = draft.add_node(std::move(flange));
    draft.port.push_back(run.ends[at_finish].node);
    draft.runs.push_back(std::move(run));
    ++cylinder;
  }
}

/// The port of a joint that its `outlet` means, where that is a duct.
std::optional<DraftPort> outlet_end(Draft& draft, const JointSketch& joint, int duct_index) {
  const auto k = static_cast<std::size_t>(duct_index);
  const DuctSketch& duct = draft.sketch.ducts[k];
  const DraftPort start{draft.first_run[k], at_start}, finish{draft.last_run[k], at_finish};
  if (duct.from.address.text == joint.name) return start;
  if (duct.to.address.text == joint.name) return finish;
  if (duct.from.address.text.empty() && duct.cylinder < 0 && draft.run(start.run).ends[at_start].node < 0) return start;
  if (duct.to.address.text.empty() && draft.run(finish.run).ends[at_finish].node < 0) return finish;
  draft.fault("joint " + in_quotes(joint.name) + " has the outlet " + in_quotes(duct.name) +
                  ", but that duct runs from " + in_quotes(duct.from.address.text) + " to " +
                  in_quotes(duct.to.address.text) + and_line(draft, duct.from.address.place),
              joint.outlet.place, "say each end of a duct once, or twice alike");
  return std::nullopt;
}

void attach_outlet(Draft& draft, const JointSketch& joint, int node) {
  if (const auto entry = turbine_address(draft, joint.outlet.text)) {
    const int run = add_volute(draft, *entry, joint.outlet, node);
    if (run >= 0) draft.node(node).outlet = DraftPort{run, at_start};
    return;
  }
  const NameEntry* entry = find_name(draft, joint.outlet.text);
  if (!entry || entry->kind != NameKind::duct) {
    if (!entry) return unknown_address(draft, joint.outlet, "outlet");
    return draft.fault("outlet: " + in_quotes(joint.outlet.text) + " is no duct and no turbine entry",
                       joint.outlet.place);
  }
  if (const auto port = outlet_end(draft, joint, entry->index)) {
    put(draft, *port, node);
    draft.node(node).outlet = port;
  }
}

int air_node(Draft& draft, const DuctSketch& duct, const PlacedText& address) {
  if (!draft.sketch.engine()) {
    draft.fault("'air' is for engines; in a rig name an [[end]] with kind = \"open\"", address.place);
    return -1;
  }
  return draft.add_node(
      {.name = "air at " + duct.name, .place = address.place, .kind = AirNode{draft.sketch.air, duct.silenced}});
}

int turbine_end(Draft& draft, const TurbineAddress& entry, const DuctSketch& duct, DraftPort port) {
  const PlacedText& address = port.end == at_start ? duct.from.address : duct.to.address;
  if (entry.outlet) {
    if (port.end == at_start) return draft.turbine_node[static_cast<std::size_t>(entry.turbine)];
    draft.fault("a duct cannot end at " + in_quotes(address.text), address.place,
                "let it start there: from = " + in_quotes(address.text));
    return -1;
  }
  if (port.end == at_start) {
    draft.fault("gas runs into " + in_quotes(address.text) + ", no duct starts there", address.place,
                "the downpipe starts at " + in_quotes(address.text + ".out"));
    return -1;
  }
  const int flange =
      draft.add_node({.name = duct.name + " flange", .place = address.place, .kind = JointNode{}, .flange = true});
  return add_volute(draft, entry, address, flange) < 0 ? -1 : flange;
}

int end_node_at(Draft& draft, const NameEntry& entry, const PlacedText& address) {
  const int node = draft.end_node[static_cast<std::size_t>(entry.index)];
  for (const DraftRun& run : draft.runs)
    for (const DraftEnd& end : run.ends)
      if (end.node == node) {
        draft.fault("two ducts stand at the end " + in_quotes(entry.name) + and_line(draft, end.place), address.place,
                    "an [[end]] takes one duct; use a [[joint]]");
        return -1;
      }
  return node;
}

int node_for(Draft& draft, const DuctSketch& duct, DraftPort port) {
  const bool start = port.end == at_start;
  const PlacedText& address = start ? duct.from.address : duct.to.address;
  const std::string_view key = start ? "from" : "to";
  if (const auto tap = draft.taps.find(address.text); tap != draft.taps.end()) return tap->second;
  if (address.text == "air") return air_node(draft, duct, address);
  if (const auto entry = turbine_address(draft, address.text)) return turbine_end(draft, *entry, duct, port);
  const NameEntry* entry = find_name(draft, address.text);
  if (entry && entry->kind == NameKind::joint) return draft.joint_node[static_cast<std::size_t>(entry->index)];
  if (entry && entry->kind == NameKind::end) return end_node_at(draft, *entry, address);
  unknown_address(draft, address, key);
  return -1;
}

void attach_end(Draft& draft, const DuctSketch& duct, DraftPort port) {
  const bool start = port.end == at_start;
  const DuctEndSketch& said = start ? duct.from : duct.to;
  DraftEnd& end = draft.run(port.run).ends[static_cast<std::size_t>(port.end)];
  end.meeting = said.meeting;
  if (end.node >= 0) return;  // its joint has named it as outlet
  if (start && duct.cylinder >= 0) {
    end.node = draft.port[static_cast<std::size_t>(duct.cylinder)];
  } else if (said.address.text.empty()) {
    draft.fault("duct " + in_quotes(duct.name) + " has no `" + (start ? "from" : "to") + "`", duct.place);
  } else {
    const int node = node_for(draft, duct, port);  // may add runs: `end` is not to be used any more
    put(draft, port, node);
  }
}

}  // namespace

void make_nodes(Draft& draft) {
  for (const JointSketch& joint : draft.sketch.joints)
    draft.joint_node.push_back(
        draft.add_node({.name = joint.name, .place = joint.place, .kind = JointNode{}, .joint = joint}));
  for (const EndSketch& end : draft.sketch.ends)
    draft.end_node.push_back(draft.add_node({.name = end.name, .place = end.place, .kind = end.kind}));
  int index = 0;
  for (const TurbineSketch& turbine : draft.sketch.turbines)
    draft.turbine_node.push_back(
        draft.add_node({.name = turbine.name, .place = turbine.place, .kind = TurbineNode{index++, {}, -1}}));
  make_cylinders(draft);
}

void attach_outlets(Draft& draft) {
  for (std::size_t k = 0; k < draft.sketch.joints.size(); ++k)
    if (!draft.sketch.joints[k].outlet.text.empty()) attach_outlet(draft, draft.sketch.joints[k], draft.joint_node[k]);
}

void attach_ends(Draft& draft) {
  for (std::size_t k = 0; k < draft.sketch.ducts.size(); ++k) {
    attach_end(draft, draft.sketch.ducts[k], {draft.first_run[k], at_start});
    attach_end(draft, draft.sketch.ducts[k], {draft.last_run[k], at_finish});
  }
}

/// The throat of a turbine entry: what stands right before its volute.
int throat_of(Draft& draft, const TurbineAddress& entry, const PlacedText& address, std::string_view key) {
  const TurbineSketch& turbine = draft.sketch.turbines[static_cast<std::size_t>(entry.turbine)];
  const int node = draft.turbine_node[static_cast<std::size_t>(entry.turbine)];
  const int scroll = entry.scroll < 0 && turbine.scrolls == 1 ? 0 : entry.scroll;
  for (const DraftRun& run : draft.runs)
    if (run.ends[at_finish].node == node && run.ends[at_finish].scroll == scroll && !entry.outlet && scroll >= 0)
      return run.ends[at_start].node;
  std::string what = " is no entry of this turbine that something leads to";
  if (entry.outlet) what = " is the turbine's outlet";
  if (!entry.outlet && entry.scroll < 0) what = " has " + std::to_string(turbine.scrolls) + " scrolls: say which";
  draft.fault(std::string(key) + ": " + in_quotes(address.text) + what, address.place,
              entry.outlet ? "name a place along the downpipe, such as 'downpipe:50mm'"
                           : "for example " + in_quotes(turbine.name + ".a"));
  return -1;
}

int joint_at(Draft& draft, const PlacedText& address, std::string_view key) {
  if (const auto entry = turbine_address(draft, address.text)) return throat_of(draft, *entry, address, key);
  if (const auto tap = draft.taps.find(address.text); tap != draft.taps.end()) return tap->second;
  const NameEntry* entry = find_name(draft, address.text);
  if (entry && entry->kind == NameKind::joint) return draft.joint_node[static_cast<std::size_t>(entry->index)];
  if (entry && entry->kind != NameKind::duct) {
    draft.fault(std::string(key) + ": " + in_quotes(address.text) + " is neither a joint nor a place along a duct",
                address.place);
  } else {
    unknown_address(draft, address, key);
  }
  return -1;
}

void attach_gates(Draft& draft) {
  int index = 0;
  for (const GateSketch& gate : draft.sketch.gates) {
    DraftGate result{index++, joint_at(draft, gate.at, "at"), -1};
    if (gate.to.text != "air") result.to = joint_at(draft, gate.to, "to");
    if (result.from >= 0 && result.from == result.to)
      draft.fault("gate " + in_quotes(gate.name) + " leads back to where it is: " + in_quotes(gate.to.text),
                  gate.to.place, "to = \"air\", or a place along the downpipe such as 'downpipe:250mm'");
    for (int node : {result.from, result.to})
      if (node >= 0) ++draft.node(node).gates;
    draft.gates.push_back(result);
  }
}

}  // namespace pulsewright
