#pragma once
// A rig run in time: ducts, ends and joints without an engine.

#include <functional>
#include <string>
#include <vector>

#include "models/plan.hpp"
#include "models/results.hpp"
#include "solver/network.hpp"

namespace pulsewright {

struct RigSetup {
  ManifoldPlan plan;
  Gas gas;
  NetworkOptions options;
  double cell;      // m
  double duration;  // s
  double record;    // s between stored instants
};

/// The gas of one duct at every stored instant: [instant * cells + cell].
struct RigDuctRecord {
  std::string name;
  double dx;
  std::size_t cells;
  std::vector<double> bore;             // of the equal-area circle at each cell, m
  std::vector<double> p, T, u, rho, Y;  // Pa, K, m/s, kg/m3, -
};

/// What one duct or element held at start and end, and what left the network through it.
struct RigBalance {
  std::string name;
  Content at_start, at_end, left;
  double heat = 0;  // taken from walls, J
};

struct RigResult {
  std::vector<double> times;  // s; the first and the last instant always
  std::vector<RigDuctRecord> ducts;
  std::vector<RigBalance> balances;  // ducts, then nodes
  double mass_error;                 // end minus start minus what crossed the ends, over start
  double energy_error;
  Timing timing;
};

/// progress is told the share done, 0..1, some hundred times; returning false stops the run with Error (internal) "interrupted".
using Progress = std::function<bool(double share)>;

/// Throws Error (unphysical) with duct, cell, distance, time and values.
RigResult run_rig(const RigSetup& setup, const Progress& progress = {});

}  // namespace pulsewright
