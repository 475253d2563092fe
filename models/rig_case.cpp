#include "models/rig_case.hpp"

#include "models/plan_builder.hpp"
#include "models/read_duct.hpp"
#include "models/read_network.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr Range cell_range{5e-5, 1};
constexpr double most_cells = 1e6;
constexpr double most_stored = 1e8;  // cells times instants: four gigabytes

Gas read_gas_table(const CaseTable& t) {
  const double gamma = t.need_number("gamma", between(1.01, 2));
  const double R = t.need_number("R", between(10, 10000));
  return perfect_gas(gamma, R);
}

/// { gamma, R }, "air" or "burned": the mixture of air and burned products; `burned` of each duct says which.
Gas read_gas(const CaseTable& rig) {
  if (rig.kind("gas") == CaseKind::table) return read_gas_table(rig.table("gas"));
  if (rig.need("gas")) rig.choice("gas", {"air", "burned"});
  return mixture_gas(*find_fuel("petrol"), 1.0);
}

void read_friction(const CaseTable& rig, NetworkOptions& options) {
  using Friction = NetworkOptions::Friction;
  const CaseKind kind = rig.kind("friction");
  if (kind == CaseKind::integer || kind == CaseKind::number) {
    options.friction = Friction::constant;
    options.darcy_factor = rig.number("friction", between(0, 1)).value_or(0);
  } else if (rig.boolean("friction").value_or(false)) {
    options.friction = Friction::rough_wall;
  }
  options.losses = options.friction != Friction::none;
}

void read_heat(const CaseTable& rig, NetworkOptions& options) {
  if (rig.kind("heat") == CaseKind::text)
    options.heat_flux = rig.quantity("heat", Dimension::heat_flux, between(-1e9, 1e9)).value_or(0);
  else
    options.wall_heat = rig.boolean("heat").value_or(false);
  if (const auto factor = rig.number("wall_heat_factor", between(0, 10))) options.wall_heat_factor = *factor;
}

DuctSketch read_duct(const CaseTable& t, const NetworkOptions& options, bool all_burned, AssumedList& assumed) {
  DuctSketch duct;
  duct.name = read_name(t);
  duct.place = t.place();
  read_duct_ends(t, duct);
  const DuctShape shape = read_shape(Layered(t));
  const DuctWall wall = read_wall(Layered(t), assumed);
  duct.drawing = {with_wall(read_sections(t, shape, assumed), wall), options.losses};
  duct.initial.pressure = t.need_quantity("pressure", Dimension::pressure_absolute, pressure_range());
  duct.initial.temperature = t.need_quantity("temperature", Dimension::temperature, gas_temperature_range());
  duct.initial.velocity = t.quantity("velocity", Dimension::velocity, between(-3000, 3000)).value_or(0);
  duct.initial.burned = t.number("burned", between(0, 1)).value_or(all_burned ? 1 : 0);
  return duct;
}

/// Walls matter only where friction or heat is on: else nothing about them is assumed.
AssumedList& wall_list(const NetworkOptions& options, AssumedList& assumed, AssumedList& unused) {
  return options.wall_heat || options.friction == NetworkOptions::Friction::rough_wall ? assumed : unused;
}

void check_size(const CaseTable& root, const Sketch& sketch, double instants) {
  double cells = 0;
  for (const DuctSketch& duct : sketch.ducts) cells += duct.drawing.length() / sketch.cell;
  if (cells > most_cells)
    root.table("rig").fault("cell", "that is more than a million cells", "make the cell longer, or the ducts shorter");
  else if (cells * instants > most_stored)
    root.table("rig").fault("record", "that is more to store than there is memory for",
                            "store fewer instants: make record longer, or the cell");
}

Sketch read_sketch(CaseFile& file, const RigSetup& setup, AssumedList& assumed) {
  const CaseTable root = file.root();
  const bool all_burned = root.table("rig").kind("gas") == CaseKind::text && root.table("rig").text("gas") == "burned";
  AssumedList unused;
  Sketch sketch;
  sketch.cell = setup.cell;
  for (const CaseTable& t : root.tables("duct"))
    sketch.ducts.push_back(read_duct(t, setup.options, all_burned, wall_list(setup.options, assumed, unused)));
  if (sketch.ducts.empty()) root.fault_here("a rig needs a [[duct]]");
  check_size(root, sketch, setup.duration / setup.record);
  sketch.joints = read_joints(root);
  sketch.ends = read_ends(root, all_burned ? 1 : 0);
  return sketch;
}

RigSetup read_setup(const CaseTable& rig, double cell) {
  RigSetup setup{{}, read_gas(rig), {}, 0, 0, 0};
  setup.duration = rig.need_quantity("duration", Dimension::time, above(0, 1000));
  setup.cell = rig.need_quantity("cell", Dimension::length, cell_range);
  setup.record = rig.quantity("record", Dimension::time, above(0, 1000)).value_or(setup.duration / 100);
  if (setup.duration / setup.record > 1e6)
    rig.fault("record", "that is more than a million stored instants: " + in_words(setup.record, Dimension::time) +
                            " in " + in_words(setup.duration, Dimension::time));
  setup.cell = chosen_cell(cell, setup.cell, cell_range);
  read_friction(rig, setup.options);
  read_heat(rig, setup.options);
  return setup;
}

}  // namespace

bool is_rig(CaseFile& file) { return file.root().has("rig"); }

RigCase read_rig_case(CaseFile& file, double cell) {
  const CaseTable root = file.root();
  AssumedList assumed;
  RigCase result{root.text("title").value_or(file.name()), read_setup(root.table("rig"), cell), {}};
  const Sketch sketch = read_sketch(file, result.setup, assumed);
  result.setup.plan = build_plan(sketch, assumed, file.faults());
  file.finish();
  result.assumed = assumed.entries();
  return result;
}

}  // namespace pulsewright
