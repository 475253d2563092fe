#include "models/engine_figures.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/compressor.hpp"
#include "models/flow_figures.hpp"
#include "models/pulse_parts.hpp"
#include "solver/composition.hpp"

namespace pulsewright {
namespace {

constexpr double least_boost_for_ratio = 0.2e5;  // below it drive pressure over boost says nothing, Pa

const DuctDrawing& drawing(const EngineCase& engine, int duct) {
  return engine.plan.ducts[static_cast<std::size_t>(duct)].drawing;
}

double area_at(const EngineCase& engine, const RayTarget& at) { return area_at(drawing(engine, at.duct), at.distance); }

/// Mean of a periodic series between two crank angles.
double mean_between(const Series& series, double from_deg, double to_deg) {
  const auto steps = std::max(1L, std::lround((to_deg - from_deg) / (0.2 * record_step_deg)));
  double sum = 0;
  for (long i = 0; i < steps; ++i)
    sum +=
        at_degree(series, from_deg + (static_cast<double>(i) + 0.5) * (to_deg - from_deg) / static_cast<double>(steps));
  return sum / static_cast<double>(steps);
}

/// The head face on a cylinder's duct: where its exhaust port ends.
RayTarget head_face(const EngineCase& engine, const PortPlace& port) {
  const double length = engine.engine.port.length;
  return {port.at.duct, port.forward ? port.at.distance + length : port.at.distance - length};
}

/// The far end of the duct that starts at the port: the primary's last cell.
RayTarget primary_end(const EngineCase& engine, const PortPlace& port) {
  return {port.at.duct, port.forward ? drawing(engine, port.at.duct).length() : 0};
}

void add_places(SpeedResult& result, const EngineModel& model, const std::vector<PortPlace>& ports,
                const std::vector<TurbineEntry>& entries) {
  const EngineCase& engine = model.engine_case();
  const auto add = [&](std::string name, const RayTarget& at, bool forward) {
    result.record.places.push_back(
        place_record(std::move(name), result.record.ducts, {at.duct, at.distance, !forward}, model.network().gas()));
  };
  for (const PortPlace& port : ports) {
    const std::string number = std::to_string(port.cylinder + 1);
    add(port_name(port.cylinder), port.at, port.forward);
    add("head face " + number, head_face(engine, port), port.forward);
    add("primary " + number + " at its end", primary_end(engine, port), port.forward);
  }
  for (const TurbineEntry& entry : entries) add(entry.name, entry.plane, entry.forward);
}

Series flow_from_mass(const Series& mass, double seconds_per_sample, double sign) {
  Series flow(mass.size());
  for (std::size_t i = 0; i < mass.size(); ++i) {
    const std::size_t a = i == 0 ? 0 : i - 1, b = i + 1 == mass.size() ? i : i + 1;
    flow[i] = sign * (mass[b] - mass[a]) / (seconds_per_sample * static_cast<double>(b - a));
  }
  return flow;
}

void add_series(CycleRecord& record, const CycleRecorder& recorder, const RecordedGauges& gauges,
                const std::vector<TurbineEntry>& entries) {
  const double dt = record.seconds_per_degree() * record_step_deg;
  for (std::size_t i = 0; i < gauges.cylinders.size(); ++i) {
    const RecordedGauges::OfCylinder& g = gauges.cylinders[i];
    record.cylinders.push_back({static_cast<int>(i) + 1, recorder.gauge(g.p), recorder.gauge(g.T),
                                recorder.gauge(g.volume), flow_from_mass(recorder.gauge(g.exhaust), dt, 1),
                                flow_from_mass(recorder.gauge(g.intake), dt, 1)});
  }
  for (const RecordedGauges::OfJoint& g : gauges.joints)
    record.joints.push_back({g.name, recorder.gauge(g.p), recorder.gauge(g.T)});
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const RecordedGauges::OfEntry& g = gauges.entries[i];
    record.entries.push_back(
        {entries[i].name, recorder.gauge(g.flow), recorder.gauge(g.available), recorder.gauge(g.shaft)});
  }
}

EntryFigures entry_figures(const SpeedResult& result, const EngineModel& model, const TurbineEntry& entry,
                           const EntryRecord& record) {
  const PlaceFigures f =
      place_figures(result.record.place(entry.name), area_at(model.engine_case(), entry.plane), model.network().gas());
  return {entry.name,
          f.pressure_mean,
          f.stagnation_mean,
          f.pressure_peak,
          f.pressure_peak - f.pressure_valley,
          f.temperature_flow_mean,
          f.temperature_time_mean,
          mean(record.flow),
          mean(record.power_available),
          mean(record.power_shaft)};
}

// Equation   F = max over the shut time of (p_port - p_cylinder) pi/4 d^2
// Source     balance of forces on the valve
// Symbols    d head diameter m; F N, of one valve
// Valid for  the stem's and the springs' own motion left out: the seat load is what a spring tester reads at shut length
// Tested by  tests/models/valve_force_test.cpp
double shut_valve_force(const Series& port, const Series& cylinder, const LiftCurve& lift, double firing_deg,
                        double head) {
  double highest = 0;
  for (std::size_t i = 0; i < port.size(); ++i) {
    const double deg = static_cast<double>(i) * record_step_deg - firing_deg;
    if (lift(CrankAngle::from_degrees(deg)) <= 0) highest = std::max(highest, port[i] - cylinder[i]);
  }
  return highest * std::numbers::pi / 4 * head * head;
}

CylinderFigures cylinder_figures(const SpeedResult& result, const EngineModel& model, const PortPlace& port) {
  const EngineCase& engine = model.engine_case();
  const Cylinder& cylinder = *model.cylinders()[static_cast<std::size_t>(port.cylinder)];
  const CylinderCycle& cycle = *cylinder.last_cycle();
  const PlaceRecord& seat = result.record.place(port_name(port.cylinder));
  const PlaceRecord& face = result.record.place("head face " + std::to_string(port.cylinder + 1));
  CylinderFigures f{};
  f.cylinder = port.cylinder + 1;
  f.volumetric_efficiency = cycle.volumetric_efficiency;
  f.burned_gas_left = cycle.charge.burned_left;
  f.imep = cycle.imep;
  f.pmep = cycle.pmep;
  f.pressure_peak = cycle.charge.max_pressure;
  f.port_pressure_mean = mean(seat.p);
  f.port_pressure_peak = *std::max_element(seat.p.begin(), seat.p.end());
  f.temperature =
      place_figures(face, area_at(engine, head_face(engine, port)), model.network().gas()).temperature_flow_mean;
  const double firing = engine.engine.firing_at[static_cast<std::size_t>(port.cylinder)].degrees();
  f.shut_valve_force = shut_valve_force(seat.p, result.record.cylinders[static_cast<std::size_t>(port.cylinder)].p,
                                        cylinder.exhaust_lift(), firing, engine.engine.exhaust.shape.head);
  f.seat_load = engine.engine.exhaust.seat_load;
  const Overlap both = overlap(cylinder.exhaust_lift(), cylinder.intake_lift());
  if (both.duration() > 0) {
    f.overlap_port_pressure = mean_between(seat.p, firing + both.from.degrees(), firing + both.to.degrees());
    f.overlap_port_minus_intake = *f.overlap_port_pressure - model.intake_pressure();
  }
  return f;
}

/// Cylinders of one entry in firing order; each with the one that follows it.
void add_pulse_overlap(SpeedResult& result, const EngineModel& model, std::vector<PortPlace> ports,
                       const std::vector<TurbineEntry>& entries) {
  const EngineCase& engine = model.engine_case();
  std::ranges::sort(ports, {}, &PortPlace::opens_deg);
  for (const TurbineEntry& entry : entries) {
    std::vector<std::pair<int, Series>> flows;
    for (const PortPlace& port : ports) {
      if (shortest_path(engine.plan, port.at, port.forward, entry.plane).legs.empty()) continue;
      const PlaceRecord& place = result.record.place("primary " + std::to_string(port.cylinder + 1) + " at its end");
      flows.emplace_back(port.cylinder + 1,
                         forward_energy_flow(place, area_at(engine, primary_end(engine, port)), model.network().gas()));
    }
    for (std::size_t i = 0; flows.size() > 1 && i < flows.size(); ++i) {
      const auto& [first, a] = flows[i];
      const auto& [second, b] = flows[(i + 1) % flows.size()];
      result.overlap.push_back({first, second, entry.name, overlap_percent(a, b)});
    }
  }
}

void add_forces(GateFigures& figures, const EngineModel& model, const GatePlan& gate, std::size_t i) {
  const GateForces& forces = model.gate_forces();
  figures.before = forces.before(i);
  figures.behind = forces.behind(i);
  if (!gate.spring) return;
  figures.pushed_open = std::max(0.0, forces.least_opening(i) - opening_by_boost(*gate.spring, model.boost()));
  figures.cracks_at = cracking_boost(*gate.spring, figures.before - figures.behind);
  figures.spring = gate.spring->cracks;
}

void add_gates(SpeedResult& result, const EngineModel& model, const EngineBooks& cycle) {
  const double exhaust = cycle.cylinders.exhaust.mass;
  for (std::size_t i = 0; i < cycle.gates.size(); ++i) {
    const GatePlan gate = model.gate_now(i);
    result.gates.push_back({gate.name,
                            cycle.gates[i].mass / exhaust,
                            gate.opening,
                            cycle.gates[i].mass / model.cycle_time(),
                            gate.bore,
                            gate.holds,
                            {}});
    add_forces(result.gates.back(), model, gate, i);
  }
}

void add_engine(SpeedResult& result, const EngineModel& model, const EngineBooks& cycle) {
  const EngineParts& engine = model.engine_case().engine;
  const SliderCrank crank(engine.crank);
  const double piston_speed = crank.mean_piston_speed(radians_per_second(model.rpm())), time = model.cycle_time();
  for (const CylinderFigures& c : result.cylinders)
    result.torque += torque(c.imep + c.pmep - friction_mean_pressure(engine.friction, c.pressure_peak, piston_speed),
                            crank.displacement());
  result.power = result.torque * radians_per_second(model.rpm());
  result.fuel_flow = cycle.cylinders.fuel_mass / time;
  result.exhaust_flow = cycle.cylinders.exhaust.mass / time;
  result.air_flow = (cycle.cylinders.intake.mass + cycle.cylinders.fuel.mass - cycle.cylinders.fuel_mass) / time;
}

void add_energy(SpeedResult& result, const EngineModel& model, const EngineBooks& cycle) {
  const EngineParts& engine = model.engine_case().engine;
  const double displacement = SliderCrank(engine.crank).displacement();
  const double ratio = stoichiometric_air_fuel_ratio(engine.fuel) * engine.lambda;
  double turbine_work = 0;
  for (const TurbineTotals& turbine : cycle.turbines) turbine_work += turbine.shaft_work;
  EnergyAccount& a = result.energy;
  a = energy_account({cycle.cylinders, cycle.to_air, cycle.duct_heat, turbine_work, cycle.held.energy},
                     {engine.fuel.lower_heating_value, engine.port_injection ? 1 / (1 + ratio) : 0},
                     model.network().gas());
  for (const CylinderFigures& c : result.cylinders) a.pumping_work += c.pmep * displacement;
  a.gross_work -= a.pumping_work;
  a.friction_work = a.indicated_work() - 4 * std::numbers::pi * result.torque;
}

/// Mean total pressure at a turbine's entries.
double entry_pressure(const SpeedResult& result, const std::vector<TurbineEntry>& entries, std::size_t turbine) {
  double sum = 0, count = 0;
  for (std::size_t i = 0; i < entries.size(); ++i)
    if (entries[i].turbine == turbine) sum += result.turbine[i].stagnation_mean, ++count;
  return sum / count;
}

/// The recorder samples every half degree, the turbine's books count every step: the entries share what they say.
void share_shaft_power(SpeedResult& result, const std::vector<TurbineEntry>& entries, std::size_t turbine,
                       double power) {
  double sampled = 0;
  for (std::size_t i = 0; i < entries.size(); ++i)
    if (entries[i].turbine == turbine) sampled += result.turbine[i].power_shaft;
  for (std::size_t i = 0; i < entries.size(); ++i)
    if (entries[i].turbine == turbine && sampled > 0) result.turbine[i].power_shaft *= power / sampled;
}

ShaftFigures shaft_figures(const SpeedResult& result, const EngineModel& model, std::size_t turbine,
                           const std::vector<TurbineEntry>& entries, const TurbineTotals& cycle) {
  const TurbineCase& t = model.engine_case().turbines[turbine];
  ShaftFigures shaft{};
  shaft.name = t.name;
  shaft.tip_speed = model.turbines()[turbine]->tip_speed();
  if (t.inducer) shaft.revolutions = 60 * shaft.tip_speed / (std::numbers::pi * *t.inducer);
  shaft.power_shaft = cycle.shaft_work / model.cycle_time();
  shaft.outlet_pressure = cycle.outlet_pressure_time / model.cycle_time();
  shaft.expansion_ratio = entry_pressure(result, entries, turbine) / shaft.outlet_pressure;
  if (t.map) shaft.outside_map = cycle.outside_mass / std::max(cycle.forward_mass, 1e-12);
  return shaft;
}

// Equation   share_i = eta_i P_i / sum(eta P): every compressor takes the air that its own shaft can drive
// Source     power balance of each shaft; the compressors feed one plenum, so they do one work per mass
// Symbols    P shaft power out of the gas W, eta mechanical efficiency
// Valid for  any number of turbines; compressors of one kind
// Tested by  tests/models/two_turbines_test.cpp
void add_shafts(SpeedResult& result, const EngineModel& model, const std::vector<TurbineEntry>& entries,
                const EngineBooks& cycle) {
  result.compressor_power = result.air_flow * model.compressor_work();
  double delivered = 0;
  for (std::size_t i = 0; i < model.turbines().size(); ++i) {
    result.shafts.push_back(shaft_figures(result, model, i, entries, cycle.turbines[i]));
    result.turbine_wheel_speed = std::max(result.turbine_wheel_speed, result.shafts.back().tip_speed);
    share_shaft_power(result, entries, i, result.shafts.back().power_shaft);
    delivered += result.shafts.back().power_shaft * model.engine_case().turbines[i].mechanical_efficiency;
  }
  result.turbine_surplus = delivered - result.compressor_power;
  for (std::size_t i = 0; i < result.shafts.size(); ++i) {
    ShaftFigures& shaft = result.shafts[i];
    const double own = shaft.power_shaft * model.engine_case().turbines[i].mechanical_efficiency;
    shaft.share_of_air = delivered > 0 ? own / delivered : 1.0 / static_cast<double>(result.shafts.size());
    shaft.surplus = own - shaft.share_of_air * result.compressor_power;
  }
}

/// Each compressor with its own share of the air.
void add_compressors(SpeedResult& result, const EngineModel& model) {
  const ChargeCase& charge = model.engine_case().charge;
  const CompressorPoint point =
      compressor_point(model.engine_case(), model.network().gas(), model.boost(), result.air_flow);
  for (const ShaftFigures& shaft : result.shafts) {
    const double air = shaft.share_of_air * result.air_flow;
    const double of_all = air * charge.compressors;  // what all would take if each took as much
    CompressorFigures f{shaft.name, point.pressure_ratio, air,
                        compressor_efficiency(charge, point.pressure_ratio, of_all),
                        compressor_tip_speed(charge, point, of_all)};
    if (charge.map && point.work > 0) {
      const CompressorMapAnswer a = compressor_on_map(charge, point.pressure_ratio, of_all);
      f.flow = a.corrected_flow;
      f.mapped = true;
      f.surge = a.surge, f.choke = a.choke, f.overspeed = a.overspeed, f.too_slow = a.too_slow;
    }
    result.compressors.push_back(std::move(f));
  }
}

void add_boost(SpeedResult& result, const EngineModel& model) {
  const EngineCase& engine = model.engine_case();
  result.boost_gauge = model.boost();
  result.intake_pressure = model.intake_pressure();
  result.intake_temperature = model.intake_temperature();
  if (result.boost_gauge < least_boost_for_ratio || result.turbine.empty()) return;
  double drive = 0;
  for (const EntryFigures& entry : result.turbine)
    drive += entry.pressure_mean / static_cast<double>(result.turbine.size());
  result.drive_to_boost_gauge = (drive - engine.ambient.pressure) / result.boost_gauge;
  result.drive_to_boost_absolute = drive / result.intake_pressure;
}

std::vector<ArrivalPlace> arrival_places(const EngineCase& engine, const std::vector<TurbineEntry>& entries) {
  std::vector<ArrivalPlace> places;
  for (const NodePlan& node : engine.plan.nodes) {
    const auto* joint = std::get_if<JointNode>(&node.kind);
    if (!joint || node.ports.size() < 3) continue;
    const PlanPort mouth = node.ports[static_cast<std::size_t>(joint->outlet)];
    places.push_back({node.name, {mouth.duct, mouth.at_finish ? drawing(engine, mouth.duct).length() : 0}});
  }
  for (const TurbineEntry& entry : entries) places.push_back({entry.name, entry.plane});
  return places;
}

}  // namespace

EngineBooks read_books(const EngineModel& model) {
  EngineBooks books{model.network().held(), model.network().left(), model.network().heat_taken(), {}, {}, {}};
  books.to_air = books.left;
  for (const Cylinder* cylinder : model.cylinders()) {
    books.cylinders = books.cylinders + cylinder->totals();
    books.to_air = books.to_air - cylinder->left();
  }
  for (const Turbine* turbine : model.turbines()) books.to_air.energy -= turbine->totals().shaft_work;
  for (std::size_t i = 0; i < model.assembly().gates.size(); ++i)
    books.gates.push_back(model.assembly().gate(i).passed);
  for (const Turbine* turbine : model.turbines()) books.turbines.push_back(turbine->totals());
  return books;
}

EngineBooks operator-(const EngineBooks& a, const EngineBooks& b) {
  EngineBooks d{a.held - b.held, a.left - b.left, a.duct_heat - b.duct_heat, a.cylinders - b.cylinders, {}, {}};
  d.to_air = a.to_air - b.to_air;
  for (std::size_t i = 0; i < a.gates.size(); ++i) d.gates.push_back(a.gates[i] - b.gates[i]);
  for (std::size_t i = 0; i < a.turbines.size(); ++i) d.turbines.push_back(a.turbines[i] - b.turbines[i]);
  return d;
}

RecordedGauges::RecordedGauges(const EngineModel& model, CycleRecorder& recorder) {
  for (const Cylinder* c : model.cylinders())
    cylinders.push_back({recorder.add_gauge([c] { return c->now().p; }), recorder.add_gauge([c] { return c->now().T; }),
                         recorder.add_gauge([c] { return c->now().V; }),
                         recorder.add_gauge([c] { return c->totals().exhaust.mass; }),
                         recorder.add_gauge([c] { return c->totals().intake.mass; })});
  for (const Joint* j : model.assembly().joints)
    if (j)
      joints.push_back({j->name(), recorder.add_gauge([j] { return j->pressure(); }),
                        recorder.add_gauge([j] { return j->temperature(); })});
  for (const TurbineEntry& entry : turbine_entries(model.engine_case())) {
    const Turbine* t = model.turbines()[entry.turbine];
    const std::size_t s = entry.scroll;
    const Gas* gas = &model.network().gas();
    const auto available = [t, s, gas] {
      const TurbineReading& r = t->reading();
      return std::max(r.scrolls[s].flow, 0.0) * isentropic_drop(*gas, r.scrolls[s].inlet, r.outlet_pressure);
    };
    const auto shaft = [t, available] {
      return t->reading().power_available > 0 ? t->reading().power_shaft * available() / t->reading().power_available
                                              : 0;
    };
    entries.push_back({recorder.add_gauge([t, s] { return t->reading().scrolls[s].flow; }),
                       recorder.add_gauge(available), recorder.add_gauge(shaft)});
  }
}

void fill_figures(SpeedResult& result, const EngineModel& model, const CycleRecorder& recorder,
                  const RecordedGauges& gauges, const EngineBooks& cycle) {
  const std::vector<PortPlace> ports = port_places(model);
  const std::vector<TurbineEntry> entries = turbine_entries(model.engine_case());
  result.record.rpm = model.rpm();
  result.record.ducts = recorder.ducts();
  add_places(result, model, ports, entries);
  add_series(result.record, recorder, gauges, entries);
  for (std::size_t i = 0; i < entries.size(); ++i)
    result.turbine.push_back(entry_figures(result, model, entries[i], result.record.entries[i]));
  for (const PortPlace& port : ports) result.cylinders.push_back(cylinder_figures(result, model, port));
  add_boost(result, model);
  add_engine(result, model, cycle);
  add_energy(result, model, cycle);
  add_shafts(result, model, entries, cycle);
  add_compressors(result, model);
  add_gates(result, model, cycle);
  result.arrivals =
      direct_arrivals(model.engine_case().plan, result.record, ports, arrival_places(model.engine_case(), entries));
  add_pulse_overlap(result, model, ports, entries);
}

}  // namespace pulsewright
