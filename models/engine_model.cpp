#include "models/engine_model.hpp"

#include <algorithm>
#include <limits>

#include "models/compressor.hpp"
#include "models/silencer.hpp"
#include "models/turbine_work.hpp"
#include "solver/composition.hpp"
#include "solver/end_reservoir.hpp"

namespace pulsewright {
namespace {

constexpr double silencer_temperature = 1000;  // of the gas that the silencer's pressure drop is stated for, K; assumed
constexpr double first_burned_temperature =
    900;  // of the gas in the ducts before the first cycle, K; forgotten by the settled state

Gas gas_of(const EngineCase& engine) { return mixture_gas(engine.engine.fuel, engine.engine.lambda); }

NetworkOptions options_of(const EngineCase& engine) {
  NetworkOptions options;
  options.friction = NetworkOptions::Friction::rough_wall;
  options.wall_heat = true;
  options.wall_heat_factor = engine.run.wall_heat_factor;
  return options;
}

/// Ways to the air with a silencer: they share the engine's flow alike.
int silenced_exits(const ManifoldPlan& plan) {
  int exits = 0;
  for (const NodePlan& node : plan.nodes) {
    const auto* turbine = std::get_if<TurbineNode>(&node.kind);
    const auto* air = std::get_if<AirNode>(&node.kind);
    exits += (turbine && turbine->outlet < 0) || (air && air->silencer);
  }
  return std::max(1, exits);
}

/// Air at the boost target, for the first cycle.
double guessed_air_flow(const EngineCase& engine, const Gas& gas, double rpm) {
  constexpr double volumetric_efficiency = 0.9;
  const double density =
      (engine.ambient.pressure + engine.charge.boost_gauge) / (gas_constant(gas, 0) * engine.charge.temperature);
  return volumetric_efficiency * density * engine.engine.displacement() * rpm / 120;
}

/// The plan with exhaust gas in its ducts to begin with.
ManifoldPlan warmed(ManifoldPlan plan) {
  for (DuctPlan& duct : plan.ducts)
    for (InitialStretch& stretch : duct.initial)
      stretch.gas.temperature = first_burned_temperature, stretch.gas.burned = 1;
  return plan;
}

}  // namespace

EngineModel::EngineModel(const EngineCase& engine, double rpm)
    : case_(engine),
      gas_(gas_of(engine)),
      rpm_(rpm),
      cycle_time_(120 / rpm),
      boost_(engine.charge.boost_gauge),
      air_flow_(guessed_air_flow(engine, gas_, rpm)),
      cylinders_(static_cast<std::size_t>(engine.engine.cylinders())),
      assembly_(assemble(warmed(engine.plan), gas_, options_of(engine), engine.run.cell,
                         [this](const NodePlan& node) { return machine(node); })),
      forces_(engine.plan.gates),
      metal_(engine.plan, engine.bay, *assembly_.network) {}

double EngineModel::intake_pressure() const { return case_.ambient.pressure + boost_; }

double EngineModel::intake_temperature() const { return charge_temperature_at(case_, gas_, boost_, air_flow_); }

CylinderSpec EngineModel::cylinder_spec(int cylinder) const {
  const EngineParts& e = case_.engine;
  CylinderSpec spec;
  spec.name = "cylinder " + std::to_string(cylinder + 1);
  spec.crank = e.crank;
  spec.crank_speed = radians_per_second(rpm_);
  spec.firing_at = e.firing_at[static_cast<std::size_t>(cylinder)];
  spec.exhaust_cam = e.exhaust.card;
  spec.intake_cam = e.intake.card;
  spec.exhaust_valves = e.exhaust.shape;
  spec.intake_valves = e.intake.shape;
  spec.burn = e.burn;
  spec.fuel = {stoichiometric_air_fuel_ratio(e.fuel) * e.lambda, e.fuel.lower_heating_value, e.burn_efficiency,
               e.port_injection};
  spec.walls.piston_temperature = e.piston_temperature;
  spec.walls.head_temperature = e.head_temperature;
  spec.walls.liner_temperature = e.liner_temperature;
  spec.plenum = {intake_pressure(), intake_temperature()};
  return spec;
}

double EngineModel::compressor_work() const { return compressor_point(case_, gas_, boost_, air_flow_).work; }

double EngineModel::tip_speed(std::size_t turbine) const {
  const CompressorPoint point = compressor_point(case_, gas_, boost_, air_flow_);
  return compressor_tip_speed(case_.charge, point, air_flow_) / case_.turbines[turbine].wheel_ratio;
}

// Equation   burn centre = the case's + k (max(b, 0) - max(target, 0))
// Source     common practice, no source: more boost is burned later to stay out of knock
// Symbols    b boost Pa; k rad/Pa, 0 where the case gives the centre
// Valid for  any boost
// Tested by  tests/models/engine_model_test.cpp
void EngineModel::set_boost(double gauge) {
  boost_ = gauge;
  const EngineParts& e = case_.engine;
  const double later = e.burn_later * (std::max(gauge, 0.0) - std::max(case_.charge.boost_gauge, 0.0));
  for (Cylinder* cylinder : cylinders_) cylinder->set_burn_centre(e.burn.centre + CrankAngle{later});
  follow_boost();
}

/// What hangs on the boost and on the air that flows.
void EngineModel::follow_boost() {
  const Plenum plenum{intake_pressure(), intake_temperature()};
  for (Cylinder* cylinder : cylinders_) cylinder->set_plenum(plenum);
  for (std::size_t i = 0; i < turbines_.size(); ++i) turbines_[i]->set_tip_speed(tip_speed(i));
}

void EngineModel::set_gate_opening(double share) {
  gate_opening_ = share;
  seat_gates();
}

void EngineModel::set_gate_scale(double scale) {
  gate_scale_ = scale;
  seat_gates();
}

void EngineModel::seat_gates() {
  for (std::size_t i = 0; i < case_.plan.gates.size(); ++i)
    if (case_.plan.gates[i].holds || case_.plan.gates[i].spring) {
      const GatePlan gate = gate_now(i);
      assembly_.gate(i).effective_area = gate.flow_coefficient * gate_area(gate);
    }
}

GatePlan EngineModel::gate_now(std::size_t i) const {
  GatePlan gate = case_.plan.gates[i];
  if (gate.holds) {
    gate.opening = gate_opening_;
    gate.bore *= gate_scale_;
    gate.full_lift *= gate_scale_;
  }
  gate.opening = std::max(gate.opening, forces_.least_opening(i));
  return gate;
}

double EngineModel::air_drawn() const {
  const EngineParts& e = case_.engine;
  const double air_fuel_ratio = stoichiometric_air_fuel_ratio(e.fuel) * e.lambda;
  double drawn = 0;
  for (const Cylinder* cylinder : cylinders_) drawn += cylinder->totals().intake.mass;
  return e.port_injection ? drawn * air_fuel_ratio / (1 + air_fuel_ratio) : drawn;
}

double EngineModel::shaft_work() const {
  double work = 0;
  for (std::size_t i = 0; i < turbines_.size(); ++i)
    work += case_.turbines[i].mechanical_efficiency * turbines_[i]->totals().shaft_work;
  return work;
}

double EngineModel::power_now() const {
  double power = 0;
  for (std::size_t i = 0; i < turbines_.size(); ++i)
    power += case_.turbines[i].mechanical_efficiency * turbines_[i]->reading().power_shaft;
  return power;
}

void EngineModel::end_cycle(double air_before, double work_before) {
  air_flow_ = std::max(0.0, air_drawn() - air_before) / cycle_time_;
  turbine_power_ = (shaft_work() - work_before) / cycle_time_;
  forces_.end_cycle(boost_);
  if (forces_.any_spring()) seat_gates();
  follow_boost();
}

double EngineModel::exit_area() const {
  if (!case_.silencer.fitted) return std::numeric_limits<double>::infinity();
  const double flow = case_.silencer.mass_flow / silenced_exits(case_.plan);
  return silencer_area({case_.silencer.pressure_drop, flow, silencer_temperature, case_.ambient.pressure}, gas_);
}

TurbineSpec EngineModel::turbine_spec(const TurbineNode& node, const std::string& name) const {
  const TurbineCase& t = case_.turbines[static_cast<std::size_t>(node.turbine)];
  TurbineSpec spec{.name = name,
                   .scroll_throat = t.areas.scroll_throat,
                   .rotor = t.areas.rotor,
                   .peak_efficiency = t.peak_efficiency};
  spec.tongue_leak = t.tongue_leak;
  spec.map = t.map;
  spec.outlet_port = node.outlet;
  if (node.outlet < 0) spec.exit_area = exit_area();
  spec.air_pressure = case_.ambient.pressure;
  spec.air_temperature = case_.ambient.temperature;
  return spec;
}

std::unique_ptr<Element> EngineModel::machine(const NodePlan& node) {
  if (const auto* cylinder = std::get_if<CylinderNode>(&node.kind)) {
    auto element = std::make_unique<Cylinder>(cylinder_spec(cylinder->cylinder), gas_);
    cylinders_[static_cast<std::size_t>(cylinder->cylinder)] = element.get();
    return element;
  }
  if (const auto* turbine = std::get_if<TurbineNode>(&node.kind)) {
    auto element = std::make_unique<Turbine>(turbine_spec(*turbine, node.name), gas_);
    element->set_tip_speed(tip_speed(static_cast<std::size_t>(turbine->turbine)));
    turbines_.push_back(element.get());
    return element;
  }
  return nozzle_end(make_reservoir(gas_, case_.ambient.pressure, case_.ambient.temperature, 0), exit_area(), 1);
}

}  // namespace pulsewright
