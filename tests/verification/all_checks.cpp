#include "tests/verification/all_checks.hpp"

#include <exception>

namespace pulsewright {

const std::vector<CheckSet>& all_checks() {
  static const std::vector<CheckSet> table = {
      // name, function, seconds
      {"riemann", riemann_checks, 0.01},
      {"steady_functions", steady_function_checks, 0.01},
      {"gas", gas_checks, 0.1},
      {"pipes", pipe_checks, 0.01},
      {"joint_acoustics", joint_acoustic_checks, 0.05},
      {"joint_flow", joint_flow_checks, 0.2},
      {"steady_flow", steady_flow_checks, 1},
      {"waves", wave_checks, 0.05},
      {"shock_tubes", shock_tube_checks, 0.1},
      {"simple_wave", simple_wave_checks, 0.1},
      {"shu_osher", shu_osher_checks, 0.2},
      {"pistons", piston_checks, 0.1},
      {"contacts", contact_checks, 0.1},
      {"shock_area", shock_area_checks, 0.2},
      {"ends", end_checks, 0.3},
      {"engine", engine_checks, 0.1},
      {"orifice_turbine", orifice_turbine_checks, 0.01},
      {"gate", gate_checks, 0.01},
      {"metal", metal_checks, 0.01},
  };
  return table;
}

std::vector<Check> run_checks(const CheckSet& set) {
  try {
    return set.checks();
  } catch (const std::exception& failure) {
    Check check;
    check.group = set.name;
    check.name = std::string("could not be computed: ") + failure.what();
    return {check};
  }
}

}  // namespace pulsewright
