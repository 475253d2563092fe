#include "models/read_manifold.hpp"

#include <algorithm>
#include <numbers>

#include "models/read_duct.hpp"
#include "models/read_gate_spring.hpp"
#include "models/read_metal.hpp"
#include "models/read_network.hpp"
#include "models/read_restriction.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

/// A port of one cylinder: from the throats of its valves to the exit in the head face.
DuctDrawing port_drawing(const EngineParts& engine, const CrossSection& exit) {
  DuctSection section = straight_section(engine.port.length, exit, engine.port.roughness, engine.port.wall_temperature);
  section.start = round_section(equal_area_bore(throat_area(engine.exhaust.shape)));
  return {{section}, true};
}

bool same_section(const CrossSection& a, const CrossSection& b) {
  return std::abs(a.area - b.area) < 1e-9 && std::abs(a.perimeter - b.perimeter) < 1e-7;
}

/// The first stretch of a primary leads from the port's exit to the round tube.
double transition_length(const Layered& t, const CrossSection& exit, const CrossSection& tube, double length,
                         AssumedList& assumed) {
  const auto said = t.with("transition").quantity("transition", Dimension::length, between(0, 0.5));
  if (same_section(exit, tube)) return 0;
  return std::min(length, assumed.given_or(said, "each_primary.transition"));
}

void bend_primary(const Layered& t, DuctSection& section, AssumedList& assumed) {
  const BendReading bends = read_bends(t);
  const double angle = assumed.given_or(bends.angle, "primary.bends");
  if (angle > 0) lay_bends(section, angle, assumed.given_or(bends.radius, "primary.bend_radius"));
}

DuctDrawing primary_drawing(const Layered& t, const EngineParts& engine, AssumedList& assumed) {
  const DuctShape shape = read_shape(t);
  const DuctWall wall = read_tube_wall(t, shape.wall, assumed);
  assumed.facts().primary_bore = shape.first_bore;
  if (!shape.table.empty()) return {with_wall(sections_from_table(shape.table, 0, 0), wall), true};
  const CrossSection tube = round_section(shape.first_bore);
  const CrossSection exit = engine.port.exit.value_or(tube);
  DuctDrawing drawing;
  const double transition = transition_length(t, exit, tube, shape.length, assumed);
  if (transition > 0) {
    drawing.sections.push_back(straight_section(transition, exit, wall.roughness, wall.temperature));
    drawing.sections.back().finish = tube;
  }
  if (shape.length - transition > 1e-6) {
    drawing.sections.push_back(straight_section(shape.length - transition, tube, wall.roughness, wall.temperature));
    drawing.sections.back().finish = round_section(shape.last_bore);
    bend_primary(t, drawing.sections.back(), assumed);
  }
  drawing.sections = with_wall(std::move(drawing.sections), wall);
  return drawing;
}

void refuse_pieces(const CaseTable& t) {
  if (t.has("pieces"))
    t.fault("pieces", "pieces is not possible yet", "give length, and bends as the sum of the bends' angles");
}

/// The cylinder's number from 0; -1 where it is faulty.
int read_cylinder(const CaseTable& t, int cylinders) {
  if (!t.need("cylinder")) return -1;
  const auto number = t.count("cylinder", 1, 99);
  if (number && *number > cylinders)
    t.fault("cylinder", "cylinder is " + std::to_string(*number) + ", but the engine has " + std::to_string(cylinders));
  return number && *number <= cylinders ? *number - 1 : -1;
}

DuctSketch read_primary(const CaseTable& own, const CaseTable& each, const EngineParts& engine, AssumedList& assumed) {
  const Layered t(own, each);
  refuse_pieces(own);
  DuctSketch primary;
  primary.cylinder = read_cylinder(own, engine.cylinders());
  primary.name = read_name(own, primary.cylinder < 0 ? own.path() : "primary " + std::to_string(primary.cylinder + 1));
  primary.place = own.place();
  primary.to.address = read_address(t.with("to"), "to");
  primary.to.meeting = read_meeting(t, {"angle", "clock", "direction"});
  primary.drawing = primary_drawing(t, engine, assumed);
  return primary;
}

/// Every port as wide at its exit as its primary begins, where the case does not say the exit.
std::vector<DuctDrawing> port_drawings(const EngineParts& engine, const std::vector<DuctSketch>& ducts,
                                       AssumedList& assumed) {
  std::vector<DuctDrawing> ports;
  for (int c = 0; c < engine.cylinders(); ++c) {
    const auto primary = std::ranges::find(ducts, c, &DuctSketch::cylinder);
    const CrossSection begin = primary == ducts.end() ? round_section(0.04) : primary->drawing.sections.front().start;
    if (!engine.port.exit) {
      assumed.facts().primary_bore = equal_area_bore(begin.area);
      assumed.take("exhaust_port.exit");
    }
    ports.push_back(port_drawing(engine, engine.port.exit.value_or(begin)));
  }
  return ports;
}

DuctSketch read_duct(const CaseTable& t, const GasState& air, AssumedList& assumed) {
  refuse_pieces(t);
  DuctSketch duct;
  duct.name = read_name(t);
  duct.place = t.place();
  read_duct_ends(t, duct);
  const DuctShape shape = read_shape(Layered(t));
  const DuctWall wall = read_tube_wall(Layered(t), shape.wall, assumed);
  duct.drawing = {with_wall(read_sections(t, shape, assumed), wall), true};
  duct.initial = air;
  duct.silenced = !t.choice("silencer", {"none"});
  return duct;
}

GateSketch read_gate(const CaseTable& t, int number, AssumedList& assumed) {
  GateSketch gate;
  gate.name = read_name(t, number == 0 ? "gate" : "gate " + std::to_string(number + 1));
  gate.place = t.place();
  gate.at = t.need("at") ? read_address(t, "at") : PlacedText{"?", t.place()};
  gate.to = t.has("to") ? read_address(t, "to") : PlacedText{"air", t.place()};
  gate.meeting = read_meeting(Layered(t), {"angle", "clock", "direction"});
  gate.bore = assumed.given_or(t.quantity("bore", Dimension::length, above(0, 0.3)), "wastegate.bore", gate.name);
  assumed.facts().wastegate_bore = gate.bore;
  gate.full_lift =
      assumed.given_or(t.quantity("full_lift", Dimension::length, above(0, 0.1)), "wastegate.full_lift", gate.name);
  gate.flow_coefficient = assumed.given_or(t.number("flow_coefficient", above(0, 1)), "wastegate.flow_coefficient");
  gate.opening = t.number("opening", between(0, 1)).value_or(0);
  gate.holds = t.boolean("hold").value_or(false);
  read_gate_spring(t, gate, assumed);
  return gate;
}

TurbineSketch turbine_sketch(const TurbineCase& turbine) {
  TurbineSketch sketch;
  sketch.name = turbine.name;
  sketch.place = turbine.place;
  sketch.scrolls = turbine.scrolls;
  sketch.volute_length = turbine.volute_length;
  sketch.throat_area = turbine.areas.scroll_throat;
  sketch.roughness = turbine.roughness;
  sketch.wall_temperature = turbine.wall_temperature;
  sketch.metal = turbine.metal;
  return sketch;
}

}  // namespace

Sketch read_manifold(const CaseTable& root, const ManifoldSurroundings& around, AssumedList& assumed) {
  Sketch sketch;
  sketch.cell = around.cell;
  sketch.air = {around.ambient.pressure, around.ambient.temperature, 0, 0};
  const CaseTable each = root.table("each_primary");
  refuse_pieces(each);
  for (const CaseTable& t : root.tables("primary")) {
    sketch.ducts.push_back(read_primary(t, each, around.engine, assumed));
    sketch.ducts.back().initial = sketch.air;
  }
  for (const CaseTable& t : root.tables("duct")) sketch.ducts.push_back(read_duct(t, sketch.air, assumed));
  sketch.joints = read_joints(root);
  int number = 0;
  for (const CaseTable& t : root.tables("wastegate")) sketch.gates.push_back(read_gate(t, number++, assumed));
  for (GateSketch& cut_out : read_cut_outs(root, assumed)) sketch.gates.push_back(std::move(cut_out));
  sketch.restrictions = read_restrictions(root);
  for (const TurbineCase& turbine : around.turbines) sketch.turbines.push_back(turbine_sketch(turbine));
  sketch.ports = port_drawings(around.engine, sketch.ducts, assumed);
  if (root.has("end"))
    root.fault("end", "[[end]] belongs to a rig", "in an engine case ducts end at joints, turbine entries or air");
  return sketch;
}

}  // namespace pulsewright
