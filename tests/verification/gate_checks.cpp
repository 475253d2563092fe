// What a wastegate passes wide open, against figures worked out beforehand.
#include <cmath>

#include "models/plan.hpp"
#include "solver/joint_gate.hpp"
#include "tests/verification/all_checks.hpp"

namespace pulsewright {
namespace {

double gate_flow(double bore, double p) {
  GatePlan gate{};
  gate.bore = bore;
  gate.full_lift = bore / 4;
  gate.opening = 1;
  constexpr double discharge = 0.7, T = 950 + 273.15, R = 287, gamma = 1.33, behind = 1.05e5;
  return discharge * gate_area(gate) * orifice_flow({p, T, R, gamma}, {behind, T, R, gamma}).mass;
}

}  // namespace

std::vector<Check> gate_checks() {
  CheckList list("wastegate", "computed beforehand from the orifice formula, two digits");
  list.absolute(0.0055, "half of the last digit, and a tenth for the gas constant not being said");
  list.table({{"bore, mm", "at 1.6 bar, kg/s", "at 2.0 bar, kg/s", "at 2.5 bar, kg/s"},
              1,
              {{38, 0.14, 0.18, 0.23}, {44, 0.19, 0.24, 0.30}, {50, 0.24, 0.31, 0.39}, {60, 0.35, 0.45, 0.56}}},
             [](std::span<const double> key) {
               const double bore = 1e-3 * key[0];
               return std::vector{gate_flow(bore, 1.6e5), gate_flow(bore, 2e5), gate_flow(bore, 2.5e5)};
             });
  return list.checks();
}

}  // namespace pulsewright
