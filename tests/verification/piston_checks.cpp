// Pistons and reflected shocks marched by the program's ducts and closed ends. Gas that runs at a wall is a piston that
// advances into gas at rest, seen from the piston; gas that runs away from it is one that recedes.
#include <cmath>
#include <memory>

#include "solver/end_closed.hpp"
#include "solver/end_wave.hpp"
#include "tests/verification/all_checks.hpp"
#include "tests/verification/steady_functions.hpp"
#include "tests/verification/tube.hpp"

namespace pulsewright {
namespace {

constexpr double R = 287, T0 = 300, p0 = 1e5, rho0 = p0 / (R * T0), length = 1;
constexpr int cells = 200;

/// A duct closed at its finish that the given gas fills.
Network against_a_wall(double gamma, const Tube::Profile& profile) {
  Network network(perfect_gas(gamma, R));
  DuctSpec duct = straight_duct("duct", length, 0.04, cells, profile(0));
  for (std::size_t i = 0; i < duct.cells(); ++i) duct.initial[i] = profile((static_cast<double>(i) + 0.5) * duct.dx);
  network.add_duct(duct);
  network.attach(std::make_unique<AnechoicEnd>(), {{0, Side::start}});
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  network.start();
  return network;
}

/// p, rho, T over those at first, one tenth of the duct from the wall, when the wave is halfway through the duct.
std::vector<double> at_wall(double gamma, double speed_ratio) {
  const double a = std::sqrt(gamma * R * T0);
  Network network = against_a_wall(gamma, [&](double) { return Primitive{rho0, speed_ratio * a, p0, 0}; });
  network.run_until(0.5 * length / a);
  const Primitive q = network.cell(0, cells - cells / 10);
  return {q.p / p0, q.rho / rho0, q.p / p0 * rho0 / q.rho};
}

/// Incident p2/p1 and reflected p5/p2, T5/T1 of a shock of Mach number m that runs to the wall from a third of the duct.
std::vector<double> reflection(double gamma, double m) {
  const double a = std::sqrt(gamma * R * T0);
  const NormalShock jump = normal_shock(m, gamma);
  const Primitive moving{rho0 * jump.density, 2 * a / (gamma + 1) * (m - 1 / m), p0 * jump.pressure, 0};
  Network network = against_a_wall(gamma, [&](double x) {
    return x < length / 3 ? moving : Primitive{rho0, 0, p0, 0};
  });
  network.run_until(0.5 * length / (m * a));
  const double p2 = network.cell(0, cells / 2).p;
  network.run_until(1.1 * length / (m * a));
  const Primitive q = network.cell(0, cells - cells / 10);
  return {p2 / p0, q.p / p2, q.p / p0 * rho0 / q.rho};
}

}  // namespace

std::vector<Check> piston_checks() {
  CheckList list("pistons and reflections, marched",
                 "Liepmann and Roshko, Elements of Gasdynamics, 1957, ch. 3, piston");
  list.relative(0.01, "marched, 200 cells");
  list.table(
      {{"gamma", "piston speed / a0", "piston p/p0, marched", "piston rho/rho0, marched", "piston T/T0, marched"},
       2,
       {{1.4, 0.1, 1.14865177, 1.10397189, 1.04047194},
        {1.4, 0.5, 1.94082146, 1.59239555, 1.21880613},
        {1.4, 1.5, 5.71526105, 3.01244387, 1.89721744},
        {1.33, 0.25, 1.38442742, 1.2758856, 1.08507175},
        {1.33, 1, 3.31391272, 2.35174592, 1.40912872},
        {1.4, -0.1, 0.868125533, 0.903920797, 0.9604},
        {1.4, -0.5, 0.4782969, 0.59049, 0.81},
        {1.4, -1, 0.2097152, 0.32768, 0.64},
        {1.33, -0.25, 0.712088957, 0.774682056, 0.919201562},
        {1.33, -1, 0.233746722, 0.335252927, 0.697225}}},
      [](std::span<const double> key) { return at_wall(key[0], key[1]); });
  list.source("Liepmann and Roshko, Elements of Gasdynamics, 1957, ch. 3, shock reflection");
  list.table({{"gamma", "M", "incident p2/p1, marched", "reflected p5/p2, marched", "reflected T5/T1, marched"},
              2,
              {{1.4, 1.1, 1.245, 1.23671498, 1.13190083},
               {1.4, 2, 4.5, 3.33333333, 2.5},
               {1.4, 3, 10.3333333, 5, 4.75308642},
               {1.33, 1.3, 1.78772532, 1.71759784, 1.33370603},
               {1.33, 2, 4.4248927, 3.40361446, 2.24276557}}},
             [](std::span<const double> key) { return reflection(key[0], key[1]); });
  return list.checks();
}

}  // namespace pulsewright
