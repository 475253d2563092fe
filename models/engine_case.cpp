#include "models/engine_case.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "models/plan_builder.hpp"
#include "models/read_boost.hpp"
#include "models/read_duct.hpp"
#include "models/read_engine.hpp"
#include "models/read_manifold.hpp"
#include "models/read_metal.hpp"
#include "models/read_turbine.hpp"
#include "models/read_turbo.hpp"
#include "solver/composition.hpp"
#include "solver/gas.hpp"

namespace pulsewright {
namespace {

constexpr Range cell_range{5e-4, 0.1};
constexpr double most_cells = 20000;  // an eight with 1 mm cells; a cycle of one speed then takes a gigabyte
constexpr std::size_t most_speeds = 200;

/// Speeds in the order of the case; each once.
std::vector<double> read_speeds(const CaseTable& run, const EngineParts& engine) {
  if (!run.has("rpm")) return {0.4 * engine.redline, 0.6 * engine.redline, 0.8 * engine.redline, engine.redline};
  const auto speeds = run.numbers("rpm", rpm_range);
  if (!speeds) return {};
  if (speeds->size() > most_speeds) {
    run.fault("rpm", fmt::format("{} speeds, and at most {} are computed at once", speeds->size(), most_speeds));
    return {};
  }
  for (auto at = speeds->begin(); at != speeds->end(); ++at)
    if (std::find(speeds->begin(), at, *at) != at) run.fault("rpm", fmt::format("the speed {:g} is said twice", *at));
  return *speeds;
}

RunCase read_run(const CaseTable& root, const EngineParts& engine, AssumedList& assumed) {
  const CaseTable t = root.table("run");
  RunCase run;
  run.rpm = read_speeds(t, engine);
  run.cell = t.quantity("cell", Dimension::length, cell_range).value_or(0.005);
  run.warm_up = t.quantity("warm_up", Dimension::time, between(0, 3600)).value_or(0);
  run.wall_heat_factor = assumed.given_or(t.number("wall_heat_factor", between(0, 10)), "run.wall_heat_factor");
  run.boost = read_boost_mode(root);
  return run;
}

/// Air at redline, target boost and volumetric efficiency 0.95, kg/s.
double full_flow(const EngineCase& engine, const Gas& gas) {
  const EngineParts& e = engine.engine;
  constexpr double volumetric_efficiency = 0.95;  // part of the silencer's and the cooler's definition
  const double density =
      (engine.ambient.pressure + engine.charge.boost_gauge) / (gas_constant(gas, 0) * engine.charge.temperature);
  return volumetric_efficiency * e.displacement() * density * e.redline / 120;
}

double with_fuel(double air, const EngineParts& e) {
  return air * (1 + 1 / (e.lambda * stoichiometric_air_fuel_ratio(e.fuel)));
}

void check_size(const CaseTable& root, const Sketch& sketch) {
  double length = 0;
  for (const DuctSketch& duct : sketch.ducts) length += duct.drawing.length();
  if (length / sketch.cell > most_cells)
    root.table("run").fault("cell", fmt::format("that is more than {:.0f} cells", most_cells),
                            "make the cell longer, or the ducts shorter");
}

/// Tables of later work, so that they are not called unknown.
void refuse_what_comes_later(const CaseTable& root) {
  for (const char* key : {"jig", "keep_clear", "shop", "log"})
    if (root.has(key))
      root.fault(key, "[" + std::string(key) + "] is not possible yet",
                 key == std::string_view("log") ? "take it out; a log manifold is drawn with joints and ducts"
                                                : "take it out");
}

}  // namespace

EngineCase read_engine_case(CaseFile& file, double cell, const std::vector<double>& rpm) {
  const CaseTable root = file.root();
  AssumedList assumed;
  EngineCase result{};
  result.title = root.text("title").value_or(file.name());
  result.ambient = read_ambient(root, assumed);
  result.engine = read_engine(root, assumed);
  result.charge = read_charge(root, result.ambient, assumed);
  const Gas gas = mixture_gas(result.engine.fuel, result.engine.lambda);
  result.turbines = read_turbines(root, gas, assumed);
  result.charge.compressors = std::max(1, static_cast<int>(result.turbines.size()));
  result.silencer = read_silencer(root, assumed);
  result.charge.full_flow = full_flow(result, gas);
  result.silencer.mass_flow = with_fuel(result.charge.full_flow, result.engine);
  result.run = read_run(root, result.engine, assumed);
  read_load_step(root, result, assumed);
  result.run.cell = chosen_cell(cell, result.run.cell, cell_range);
  if (!rpm.empty()) result.run.rpm = rpm;
  refuse_what_comes_later(root);
  const Sketch sketch = read_manifold(root, {result.engine, result.turbines, result.ambient, result.run.cell}, assumed);
  check_size(root, sketch);
  result.plan = build_plan(sketch, assumed, file.faults());
  result.bay = read_bay(root, result.plan, result.ambient.pressure, assumed);
  choose_holding_gates(root, result);
  file.finish();
  result.assumed = assumed.entries();
  return result;
}

}  // namespace pulsewright
