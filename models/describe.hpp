#pragma once
// A case looked at before anything runs: the network in words, lengths and volumes, which cylinder's blowdown meets
// whose overlap, what is assumed.

#include <string>
#include <vector>

#include "models/engine_case.hpp"
#include "models/rig_case.hpp"

namespace pulsewright {

/// One primary as the gas sees it.
struct PrimaryLine {
  int cylinder;  // from 1
  std::string name, ends_at;
  double flange_to_end;          // head face to where it ends, on the centre line, m
  double valve_to_end;           // with the port, m
  double volume;                 // of the primary without the port, m3
  double first_bore, last_bore;  // of the equal-area circle, m
  double bends;                  // sum of angles, rad
};

/// In the order of the cylinders.
std::vector<PrimaryLine> primary_lines(const EngineCase& engine);

/// All gas between the head's flanges and the turbine's scrolls, joints included, m3.
double manifold_volume(const EngineCase& engine);

/// Joints, ducts and gates line by line, from start to finish.
std::string network_text(const ManifoldPlan& plan);

/// The turbines: throat and volute of every scroll, what they pass, what redline's flow takes.
std::string turbines_text(const EngineCase& engine);

/// What the walls are made of and where their temperature comes from, a line for those that are alike.
std::string metal_text(const ManifoldPlan& plan);

/// The compressor: its map, or that there is none.
std::string compressor_text(const EngineCase& engine);

/// Everything that `check` shows.
std::string describe(const EngineCase& engine);
std::string describe(const RigCase& rig);

}  // namespace pulsewright
