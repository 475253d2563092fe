#include "models/engine_run.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

#include "models/boost_control.hpp"
#include "models/engine_figures.hpp"
#include "models/load_step.hpp"
#include "models/settle.hpp"
#include "models/warm_up.hpp"
#include "shared/error.hpp"

namespace pulsewright {
namespace {

/// Mean and peak of the pressure in one cell over a cycle.
struct PressureWatch {
  std::string name;
  std::size_t cell;  // of the arena
  double sum = 0, peak = 0;
};

std::size_t arena_cell(const Network& net, const RayTarget& at) {
  const auto cell = static_cast<std::size_t>(std::max(0.0, at.distance / net.dx(at.duct)));
  return net.first(at.duct) + std::min(cell, net.cells(at.duct) - 1);
}

std::vector<PressureWatch> pressure_watches(const EngineModel& model) {
  std::vector<PressureWatch> watches;
  for (const PortPlace& port : port_places(model))
    watches.push_back({fmt::format("pressure at port {}", port.cylinder + 1), arena_cell(model.network(), port.at)});
  for (const TurbineEntry& entry : turbine_entries(model.engine_case()))
    watches.push_back({"pressure at " + entry.name, arena_cell(model.network(), entry.plane)});
  return watches;
}

std::vector<Watched> figures(const EngineModel& model, const std::vector<PressureWatch>& watches) {
  std::vector<Watched> all;
  for (const PressureWatch& w : watches) {
    all.push_back({"mean " + w.name, w.sum / model.cycle_time()});
    all.push_back({"peak " + w.name, w.peak});
  }
  for (const Cylinder* cylinder : model.cylinders()) {
    if (!cylinder->last_cycle()) continue;
    all.push_back({"charge of " + cylinder->spec().name, cylinder->last_cycle()->charge.mass});
    all.push_back({"mean pressure of " + cylinder->spec().name, cylinder->last_cycle()->imep, 0.1e5});
  }
  for (std::size_t i = 0; i < model.engine_case().plan.gates.size(); ++i)
    if (model.engine_case().plan.gates[i].spring)
      all.push_back({"opening of " + model.engine_case().plan.gates[i].name, model.gate_now(i).opening, 0.1});
  for (const MetalPiece& piece : model.metal().pieces())
    if (piece.computed)
      all.push_back({fmt::format("metal of {} at {:.0f} mm", piece.name, 1e3 * piece.name_from), piece.temperature});
  return all;
}

constexpr long steps_between_questions = 256;  // to the one who may want to stop

void ask(const EngineModel& model, const CycleProgress& progress) {
  if (progress && model.network().steps() % steps_between_questions == 0 && !progress(model.rpm(), model.cycles()))
    throw Error(ErrorKind::internal, "interrupted");
}

/// One cycle with the pressures watched.
std::vector<Watched> watched_cycle(EngineModel& model, const CycleProgress& progress) {
  std::vector<PressureWatch> watches = pressure_watches(model);
  const Network& net = model.network();
  double before = net.time();
  model.cycle([&] {
    const double dt = net.time() - before;
    before = net.time();
    ask(model, progress);
    for (PressureWatch& w : watches) {
      w.sum += net.arena().p[w.cell] * dt;
      w.peak = std::max(w.peak, net.arena().p[w.cell]);
    }
  });
  return figures(model, watches);
}

constexpr int most_searching_cycles = 160;

void settle(EngineModel& model, BoostControl& boost, SettleWatch& watch, const CycleProgress& progress) {
  watched_cycle(model, progress);  // the first cycle forgets the start; cylinders have no whole cycle yet
  const int most = boost.searches() ? most_searching_cycles : SettleWatch::most_cycles - 2;
  while (!(watch.settled() && boost.done()) && watch.cycles() < most) {
    watch.add(watched_cycle(model, progress));
    boost.after_cycle();
  }
}

/// The search for the boost of a case; in mode step after the step.
BoostControl started(EngineModel& model, BoostFigures& figures, const CycleProgress& progress) {
  const EngineCase& engine = model.engine_case();
  if (engine.run.boost != BoostMode::step || !(engine.charge.boost_gauge > 0)) return BoostControl(model);
  LoadStep step = run_load_step(model, [&] { ask(model, progress); });
  figures.time_to_boost = step.time;
  figures.why_no_time = std::move(step.why);
  figures.step_time = std::move(step.times);
  figures.step_boost = std::move(step.boost);
  return BoostControl(model, model.boost());
}

void note_boost(SpeedResult& result, const EngineModel& model, const BoostControl& boost) {
  result.boost.state = boost.state();
  result.boost.target = model.engine_case().charge.boost_gauge;
  constexpr double far_from_equal = 0.01;  // of the powers' ratio; a balance that was found is five times closer
  result.boost.beyond = boost.state() == BoostFigures::State::cannot_hold && power_balance(model) > far_from_equal;
}

/// Up to the next tenth of a millimetre: a printed bore is never too small.
double rounded_up(double bore) { return std::ceil(bore * 1e4 - 1e-6) * 1e-4; }

void find_larger_gates(SpeedResult& result, EngineModel& model, const CycleProgress& progress) {
  if (result.boost.state != BoostFigures::State::cannot_hold) return;
  const auto& gates = model.engine_case().plan.gates;
  if (std::ranges::none_of(gates, &GatePlan::holds)) {
    result.boost.why_no_bore = "there is no wastegate";
    return;
  }
  const HoldingScale found = scale_that_would_hold(model, [&] { model.cycle([&] { ask(model, progress); }); });
  result.boost.why_no_bore = found.why;
  for (std::size_t i = 0; found.scale && i < gates.size(); ++i)
    if (gates[i].holds) result.gates[i].bore_that_would_hold = rounded_up(*found.scale * gates[i].bore);
}

/// |in - out - stored| / in and |stored| / in over one cycle. In: charge, fuel and the heat that combustion adds; what
/// went out where that is more (an engine that breathes in only every second cycle).
void check_balance(SpeedResult& result, const EngineBooks& cycle) {
  const double mass_in = std::max(cycle.cylinders.intake.mass + cycle.cylinders.fuel.mass, cycle.left.mass);
  const double energy_in =
      std::max(cycle.cylinders.intake.energy + cycle.cylinders.fuel.energy + cycle.cylinders.heat, cycle.left.energy);
  result.mass_error = std::abs(cycle.held.mass + cycle.left.mass) / mass_in;
  result.energy_error = std::abs(cycle.held.energy + cycle.left.energy - cycle.duct_heat) / energy_in;
  result.unsettled_mass = std::abs(cycle.held.mass) / mass_in;
  result.unsettled_energy = std::abs(cycle.held.energy) / energy_in;
}

void time_run(Timing& timing, const EngineModel& model, std::chrono::steady_clock::time_point begun) {
  const Network& net = model.network();
  timing.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
  timing.cells = net.cells();
  timing.steps = net.steps();
  const Network::Place place = net.step_setter();
  timing.step_setter = fmt::format("{} at {:.0f} mm", net.name(place.duct),
                                   1e3 * (static_cast<double>(place.cell) + 0.5) * net.dx(place.duct));
}

/// Shares of the elements by what they are; the rest is the ducts' (and the bookkeeping of ports and records).
void add_shares(Timing& timing, const EngineModel& model) {
  double cylinders = 0, joints = 0, turbines = 0, ends = 0;
  const auto& nodes = model.engine_case().plan.nodes;
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    double& kind = std::holds_alternative<CylinderNode>(nodes[i].kind)  ? cylinders
                   : std::holds_alternative<JointNode>(nodes[i].kind)   ? joints
                   : std::holds_alternative<TurbineNode>(nodes[i].kind) ? turbines
                                                                        : ends;
    kind += model.network().element_seconds(i) / timing.seconds;
  }
  timing.shares = {{"cylinders_and_valves", cylinders},
                   {"joints_and_gates", joints},
                   {"turbines", turbines},
                   {"other_ends", ends},
                   {"ducts_and_records", 1 - cylinders - joints - turbines - ends}};
}

}  // namespace

SpeedResult run_speed(const EngineCase& engine, double rpm, const SpeedOptions& options,
                      const CycleProgress& progress) {
  const auto begun = std::chrono::steady_clock::now();
  EngineModel model(engine, rpm);
  if (options.measure_time) model.network().measure_time();
  SpeedResult result{};
  BoostControl boost = started(model, result.boost, progress);
  SettleWatch watch;
  settle(model, boost, watch, progress);

  result.rpm = rpm;
  result.settled = watch.settled() && boost.done();
  if (!result.settled) result.unsettled_figure = boost.done() ? watch.worst() : boost.in_words();
  CycleRecorder recorder(model.network(), rpm);
  const RecordedGauges gauges(model, recorder);
  const EngineBooks before = read_books(model);
  model.cycle([&] { recorder.after_step(); });
  const EngineBooks cycle = read_books(model) - before;
  result.cycles = model.cycles();
  check_balance(result, cycle);
  time_run(result.timing, model, begun);
  if (options.measure_time) add_shares(result.timing, model);
  fill_figures(result, model, recorder, gauges, cycle);
  result.metal = metal_figures(model.metal(), result.record);
  note_boost(result, model, boost);
  if (engine.run.warm_up > 0) result.warm_up = warm_up(model, engine.run.warm_up, [&] { ask(model, progress); });
  find_larger_gates(result, model, progress);
  return result;
}

}  // namespace pulsewright
