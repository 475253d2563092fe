#pragma once
// Every set of checks that the program has. To add one: a function in a file of its own, its declaration here, its row in
// all_checks.cpp.

#include <string>
#include <vector>

#include "tests/verification/check.hpp"

namespace pulsewright {

struct CheckSet {
  const char* name;  // one word in snake_case: the test's name, and what `verify` heads its rows with
  std::vector<Check> (*checks)();
  double seconds;  // roughly, in a release build
};

const std::vector<CheckSet>& all_checks();

/// Runs a set; a failure to compute becomes a check that does not hold, so that the others are still shown.
std::vector<Check> run_checks(const CheckSet& set);

std::vector<Check> contact_checks();
std::vector<Check> piston_checks();
std::vector<Check> end_checks();
std::vector<Check> engine_checks();
std::vector<Check> joint_acoustic_checks();
std::vector<Check> joint_flow_checks();
std::vector<Check> gas_checks();
std::vector<Check> gate_checks();
std::vector<Check> metal_checks();
std::vector<Check> orifice_turbine_checks();
std::vector<Check> riemann_checks();
std::vector<Check> shock_area_checks();
std::vector<Check> shock_tube_checks();
std::vector<Check> shu_osher_checks();
std::vector<Check> simple_wave_checks();
std::vector<Check> steady_function_checks();
std::vector<Check> pipe_checks();
std::vector<Check> steady_flow_checks();
std::vector<Check> wave_checks();

}  // namespace pulsewright
