#include "models/engine_model.hpp"

#include <algorithm>
#include <limits>

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
      cylinders_(static_cast<std::size_t>(engine.engine.cylinders())),
      assembly_(assemble(warmed(engine.plan), gas_, options_of(engine), engine.run.cell,
                         [this](const NodePlan& node) { return machine(node); })),
      metal_(engine.plan, engine.bay, *assembly_.network) {}

double EngineModel::intake_pressure() const { return case_.ambient.pressure + case_.charge.boost_gauge; }

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
  spec.plenum = {intake_pressure(), case_.charge.temperature};
  return spec;
}

// Equation   dh0 = (h(T_s) - h(T_ambient))/eta, T_s isentropic from ambient to the intake's pressure
// Source     definition of the isentropic efficiency
// Symbols    dh0 J/kg; eta compressor efficiency, assumed
// Valid for  boost given; losses of the cooler count as the compressor's
// Tested by  tests/models/engine_run_test.cpp
double EngineModel::compressor_work() const {
  if (case_.charge.boost_gauge <= 0) return 0;
  const double T = case_.ambient.temperature,
               T_s = isentropic_temperature(gas_, T, 0, intake_pressure() / case_.ambient.pressure);
  return (enthalpy(gas_, T_s, 0) - enthalpy(gas_, T, 0)) / case_.charge.compressor_efficiency;
}

double EngineModel::tip_speed(std::size_t turbine) const {
  return turbine_tip_speed(compressor_work(), case_.charge.work_coefficient, case_.turbines[turbine].wheel_ratio);
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
