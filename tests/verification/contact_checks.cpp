// Contacts carried along a duct: a conservative scheme with a heat ratio that varies makes a false pressure where two
// gases meet. The bounds are our own; an exact scheme would make none.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/tube.hpp"

namespace pulsewright {
namespace {

constexpr double pressure = 1.5e5, velocity = 100, dx = 0.005, length = 1.6, start = 0.3, travel = 0.8;

struct GasSide {
  double T, Y;
};

struct FalsePressure {
  double ever, after, energy_lost;  // of the pressure, of the energy
};

double worst_deviation(const Tube& tube) {
  double worst = 0;
  for (std::size_t i = 0; i < tube.cells(); ++i) worst = std::max(worst, std::abs(tube.cell(i).p / pressure - 1));
  return worst;
}

FalsePressure carry(const Gas& gas, const GasSide& behind, const GasSide& ahead) {
  Tube tube(gas, length, static_cast<int>(std::lround(length / dx)), [&](double x) {
    const GasSide& side = x < start ? behind : ahead;
    return Primitive{pressure / (gas_constant(gas, side.Y) * side.T), velocity, pressure, side.Y};
  });
  const double energy = tube.balance().energy;
  FalsePressure result{};
  while (tube.network().time() < travel / velocity) {
    tube.step();
    result.ever = std::max(result.ever, worst_deviation(tube));
  }
  result.after = worst_deviation(tube);
  result.energy_lost = std::abs(tube.balance().energy / energy - 1);
  return result;
}

}  // namespace

std::vector<Check> contact_checks() {
  struct Pair {
    const char* name;
    GasSide a, b;
    double ever, after;
  };
  const Pair pairs[] = {{"burned 1300 K | burned 900 K", {1300, 1}, {900, 1}, 0.01, 0.0005},
                        {"burned 1500 K | burned 900 K", {1500, 1}, {900, 1}, 0.01, 0.0005},
                        {"air 330 K | burned 1200 K", {330, 0}, {1200, 1}, 0.05, 0.001}};
  CheckList list("contacts carried at 100 m/s", "exact: the pressure stays what it was (own bounds)");
  const Gas gas = mixture_gas(known_fuels().front(), 1);
  for (const Pair& pair : pairs)
    for (bool turned : {false, true}) {
      const FalsePressure f = turned ? carry(gas, pair.b, pair.a) : carry(gas, pair.a, pair.b);
      const std::string name = fmt::format("{}{}", pair.name, turned ? ", turned round" : "");
      list.relative(0, "false pressure at a contact of a conservative scheme with a varying heat ratio; 5 mm cells");
      list.at_most(name + ": false pressure ever, over the pressure", pair.ever, f.ever);
      list.at_most(name + ": false pressure after 0.8 m, over the pressure", pair.after, f.after);
      list.relative(0, "rounding alone");
      list.at_most(name + ": energy lost, over the energy at first", 1e-12, f.energy_lost);
    }
  return list.checks();
}

}  // namespace pulsewright
