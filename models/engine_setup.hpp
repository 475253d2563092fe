#pragma once
// An engine with its manifold, every value known: what a simulation at any speed is built from. The reader of engine
// cases fills it in; nothing here is optional any more.

#include <string>
#include <vector>

#include "models/burn.hpp"
#include "models/closed_period.hpp"
#include "models/crank.hpp"
#include "models/friction.hpp"
#include "models/plan.hpp"
#include "models/turbine.hpp"
#include "models/valve_lift.hpp"
#include "models/wall_heat.hpp"
#include "solver/network.hpp"

namespace pulsewright {

struct EngineSetup {
  std::string title;
  ManifoldPlan plan;
  Gas gas;                 // fresh charge and products of the fuel at lambda
  NetworkOptions options;  // friction, losses, wall heat
  double cell;             // m
  std::vector<double> speeds;  // rpm

  CrankDimensions crank;
  std::vector<double> firing_deg;  // of cylinder 1, 2, ...: crank degrees after cylinder 1 of the order fires
  CamCard exhaust_cam, intake_cam;
  ValveShape exhaust_valves, intake_valves;
  BurnTiming burn;
  FuelSupply fuel;
  CylinderWalls walls;
  FrictionLaw friction;

  GasState air;              // ambient
  double boost_gauge;        // Pa, at the intake
  double charge_temperature; // K, at the intake

  TurbineSpec turbine;          // capacity, efficiency, leak; one for all turbines of the plan
  double silencer_area;         // effective orifice at the end of a silenced downpipe, or behind a turbine without one; 0: none, m2
  double compressor_efficiency; // isentropic
  double work_coefficient;      // of the compressor: dh0 / U2^2
  double exducer_over_inducer;  // compressor exducer / turbine inducer, diameters

  double intake_pressure() const { return air.pressure + boost_gauge; }
  std::size_t cylinders() const { return firing_deg.size(); }
};

/// Speed of the turbine wheel's tip that belongs to the boost, m/s: the compressor's work sets its own tip speed, the shaft
/// does the rest. 0 without boost.
double turbine_tip_speed(const EngineSetup& setup);

}  // namespace pulsewright
