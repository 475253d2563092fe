// The exact Riemann solution, and the waves that the solver's elements send, against the published star values.
#include <cmath>

#include "solver/wave.hpp"
#include "tests/verification/all_checks.hpp"
#include "tests/verification/riemann_problems.hpp"

namespace pulsewright {
namespace {

constexpr double gamma = 1.4;

/// Side s as the solver's waves see it, velocity counted toward the middle.
EndState end(const GasState& s, double toward) {
  return {s.rho, toward * s.u, s.p, 0, s.p / s.rho, gamma, std::sqrt(gamma * s.p / s.rho)};
}

/// The star pressure from the solver's own wave relations: both sides' gas must part by nothing.
double star_pressure_of_the_solver(const EndState& left, const EndState& right) {
  double low = std::log(1e-12), high = std::log(1e6);
  for (int turn = 0; turn < 100; ++turn) {
    const double p = std::exp(0.5 * (low + high));
    const double closing = left.w - wave_slowdown(p, left) + right.w - wave_slowdown(p, right);
    (closing > 0 ? low : high) = 0.5 * (low + high);
  }
  return std::exp(0.5 * (low + high));
}

void add_exact(CheckList& list, const RiemannProblem& problem) {
  const ExactRiemann exact(problem.left, problem.right, gamma);
  const std::string name = problem.name;
  list.value(name + ", p* exact", problem.p_star, exact.p_star());
  list.value(name + ", rho* left exact", problem.rho_star_left, exact.rho_star_left());
  list.value(name + ", rho* right exact", problem.rho_star_right, exact.rho_star_right());
  list.value(name + ", left wave outer edge", problem.left_outer, exact.left_wave().outer);
  list.value(name + ", left wave inner edge", problem.left_inner, exact.left_wave().inner);
  list.value(name + ", right wave outer edge", problem.right_outer, exact.right_wave().outer);
  list.value(name + ", right wave inner edge", problem.right_inner, exact.right_wave().inner);
}

void add_solver(CheckList& list, const RiemannProblem& problem) {
  const EndState left = end(problem.left, 1), right = end(problem.right, -1);
  const double p = star_pressure_of_the_solver(left, right);
  const std::string name = problem.name;
  list.value(name + ", p* from the solver's waves", problem.p_star, p);
  list.value(name + ", rho* left from the solver's waves", problem.rho_star_left, behind_wave(p, left).rho);
  list.value(name + ", rho* right from the solver's waves", problem.rho_star_right, behind_wave(p, right).rho);
}

/// Held to a fraction of the speeds in play: u* is 0 in test 2.
void add_velocities(CheckList& list, const RiemannProblem& problem) {
  const EndState left = end(problem.left, 1);
  list.absolute(closed_form * left.c, "closed form; a millionth of the left sound speed, because u* may be 0");
  const std::string name = problem.name;
  list.value(name + ", u* exact", problem.u_star, ExactRiemann(problem.left, problem.right, gamma).u_star());
  list.value(name + ", u* from the solver's waves", problem.u_star, left.w - wave_slowdown(problem.p_star, left));
}

/// Sod's profile at t = 0.2: x, density, velocity, pressure. Diaphragm at 0.5.
void add_sod_profile(CheckList& list) {
  const RiemannProblem sod = riemann_problems().front();
  const ExactRiemann exact(sod.left, sod.right, gamma);
  list.source("Sod, J. Comput. Phys. 27, 1978, exact profile at t = 0.2");
  list.relative(closed_form, closed_form_reason);
  list.table({{"x", "Sod density", "Sod velocity", "Sod pressure"},
              1,
              {{0.05, 1, 0, 1},
               {0.1, 1, 0, 1},
               {0.15, 1, 0, 1},
               {0.2, 1, 0, 1},
               {0.25, 1, 0, 1},
               {0.3, 0.87745253, 0.15267996, 0.83274702},
               {0.35, 0.72992157, 0.3610133, 0.64355649},
               {0.4, 0.6029377, 0.56934663, 0.49247185},
               {0.45, 0.49427581, 0.77767996, 0.37286971},
               {0.5, 0.42631943, 0.92745262, 0.30313018},
               {0.55, 0.42631943, 0.92745262, 0.30313018},
               {0.6, 0.42631943, 0.92745262, 0.30313018},
               {0.65, 0.42631943, 0.92745262, 0.30313018},
               {0.7, 0.26557371, 0.92745262, 0.30313018},
               {0.75, 0.26557371, 0.92745262, 0.30313018},
               {0.8, 0.26557371, 0.92745262, 0.30313018},
               {0.85, 0.26557371, 0.92745262, 0.30313018},
               {0.9, 0.125, 0, 0.1},
               {0.95, 0.125, 0, 0.1}}},
             [&](std::span<const double> key) {
               const GasState s = exact.at((key[0] - 0.5) / 0.2);
               return std::vector{s.rho, s.u, s.p};
             });
}

}  // namespace

std::vector<Check> riemann_checks() {
  CheckList list("Riemann problems, exact", "Toro, Riemann Solvers, 3rd ed. 2009, tables 4.1-4.3; Lax 1954");
  for (const RiemannProblem& problem : riemann_problems()) {
    list.relative(closed_form, closed_form_reason);
    add_exact(list, problem);
    add_solver(list, problem);
    add_velocities(list, problem);
  }
  add_sod_profile(list);
  return list.checks();
}

}  // namespace pulsewright
