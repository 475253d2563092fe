// Shock tubes marched by the program's ducts against the exact solution. Lengths, densities and pressures are those of the
// sources, as pure numbers; R = 1.
#include <algorithm>
#include <cmath>
#include <string>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/riemann_problems.hpp"
#include "tests/verification/tube.hpp"

namespace pulsewright {
namespace {

constexpr double gamma = 1.4;

Primitive primitive(const GasState& s) { return {s.rho, s.u, s.p, 0}; }

Tube marched(const RiemannProblem& problem, int cells, double time) {
  Tube tube(perfect_gas(gamma, 1), 1, cells,
            [&](double x) { return primitive(x < 0.5 ? problem.left : problem.right); });
  tube.run_until(time);
  return tube;
}

/// Mean density error over the largest difference of density in the exact solution.
double density_error(const RiemannProblem& problem, int cells, double time) {
  const ExactRiemann exact(problem.left, problem.right, gamma);
  const auto [low, high] =
      std::minmax({problem.left.rho, problem.right.rho, exact.rho_star_left(), exact.rho_star_right()});
  const auto profile = [&](double x) { return primitive(exact.at((x - 0.5) / time)); };
  return mean_error(marched(problem, cells, time), profile, [](const Primitive& q) { return q.rho; }) / (high - low);
}

/// Middle of the plateau between the contact and a wave.
double plateau(double u_star, double wave_inner, double time) { return 0.5 + 0.5 * (u_star + wave_inner) * time; }

/// Near a vacuum no scheme of this kind keeps the ratio: there the error is measured against the gas at the start.
void add_star_values(CheckList& list, const RiemannProblem& problem) {
  const Tube tube = marched(problem, 400, problem.time);
  const Primitive left = tube.at(plateau(problem.u_star, problem.left_inner, problem.time));
  const Primitive right = tube.at(plateau(problem.u_star, problem.right_inner, problem.time));
  const std::string name = problem.name;
  const bool vacuum = problem.p_star < 0.01 * problem.left.p && problem.p_star < 0.01 * problem.right.p;
  const auto hold = [&](double scale) {
    if (vacuum)
      list.absolute(0.01 * scale, "marched; 1 % of the gas at the start, because p* is 0.5 % of it");
    else
      list.relative(0.01, "marched, captured waves, 400 cells");
  };
  hold(problem.left.p);
  list.value(name + ", p* left of the contact, marched", problem.p_star, left.p);
  list.value(name + ", p* right of the contact, marched", problem.p_star, right.p);
  hold(problem.left.rho);
  list.value(name + ", rho* left, marched", problem.rho_star_left, left.rho);
  list.value(name + ", rho* right, marched", problem.rho_star_right, right.rho);
  if (vacuum) return;  // the two velocities beside the middle are mirror images and say nothing more
  list.value(name + ", u* left of the contact, marched", problem.u_star, left.u);
  list.value(name + ", u* right of the contact, marched", problem.u_star, right.u);
}

}  // namespace

std::vector<Check> shock_tube_checks() {
  CheckList list("shock tubes, marched", "Sod, J. Comput. Phys. 27, 1978");
  const std::vector<RiemannProblem> problems = riemann_problems();
  list.relative(0, "second order away from shock and contact, each smeared over two to three cells in 200");
  list.at_most("Sod at t = 0.2, 200 cells: mean density error over the jump", 0.005,
               density_error(problems.front(), 200, 0.2));
  list.source("Toro, Riemann Solvers, 3rd ed. 2009, tables 4.1-4.3; Lax 1954");
  for (const RiemannProblem& problem : problems)
    list.at_most(std::string(problem.name) + ", 200 cells: mean density error over the jump", 0.015,
                 density_error(problem, 200, problem.time));
  for (const RiemannProblem& problem : problems) add_star_values(list, problem);
  return list.checks();
}

}  // namespace pulsewright
