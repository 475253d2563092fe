// A shock of Mach 3 runs into gas with a sine in its density and leaves a train of short waves behind: no closed solution,
// so the program's coarse run is held to its own fine one.
#include <algorithm>
#include <cmath>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/tube.hpp"

namespace pulsewright {
namespace {

Tube run(int cells) {
  Tube tube(perfect_gas(1.4, 1), 10, cells, [](double x) {
    if (x < 1) return Primitive{3.85714286, 2.62936879, 10.3333333, 0};
    return Primitive{1 + 0.2 * std::sin(5 * (x - 5)), 0, 1, 0};
  });
  tube.run_until(1.8);
  return tube;
}

/// Mean density difference to the fine run's averages over the coarse cells.
double difference(const Tube& coarse, const Tube& fine) {
  const std::size_t ratio = fine.cells() / coarse.cells();
  double sum = 0;
  for (std::size_t i = 0; i < coarse.cells(); ++i) {
    double mean = 0;
    for (std::size_t k = 0; k < ratio; ++k) mean += fine.cell(i * ratio + k).rho / static_cast<double>(ratio);
    sum += std::abs(coarse.cell(i).rho - mean);
  }
  return sum / static_cast<double>(coarse.cells());
}

/// Highest density of the wave train, x = 0.5 to 2.2 in the source's coordinate.
double crest(const Tube& tube) {
  double highest = 0;
  for (std::size_t i = 0; i < tube.cells(); ++i)
    if (tube.x(i) > 5.5 && tube.x(i) < 7.2) highest = std::max(highest, tube.cell(i).rho);
  return highest;
}

}  // namespace

std::vector<Check> shu_osher_checks() {
  CheckList list("Shu-Osher, marched", "Shu and Osher, J. Comput. Phys. 83, 1989, problem 8 (set-up)");
  const Tube fine = run(3200), middle = run(800), coarse = run(400);
  const double jump = 2.85714286;  // of density across the shock
  list.relative(
      0,
      "the train's waves are 10 cells long at 400: the limiter flattens them; the rest is the shock, one cell in 400");
  list.at_most("mean density difference 400 to 3200 cells, over the shock's jump", 0.015,
               difference(coarse, fine) / jump);
  list.relative(0, "20 cells to a wave: third of the error at 400 or less");
  list.at_most("mean density difference 800 to 3200 cells, over the shock's jump", 0.005,
               difference(middle, fine) / jump);
  list.relative(0.02, "20 cells to a wave");
  list.value("highest crest of the train, 800 cells against 3200", crest(fine), crest(middle));
  return list.checks();
}

}  // namespace pulsewright
