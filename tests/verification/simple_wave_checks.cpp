// A simple wave carried by the program's ducts before it breaks: observed order of accuracy, profile, breaking time.
#include <algorithm>
#include <cmath>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/simple_wave.hpp"
#include "tests/verification/tube.hpp"

namespace pulsewright {
namespace {

constexpr SineWave wave{1.4, 34, 340, 1};
constexpr double rho0 = 1.2, p0 = rho0 * 340 * 340 / 1.4;

Primitive exact(double x, double t) {
  const double u = wave.velocity(x, t);
  return {rho0 * wave.density_ratio(u), u, p0 * wave.pressure_ratio(u), 0};
}

/// Four wavelengths, cells to each; what happens at the ends does not reach the third wavelength in time.
Tube start(int cells) {
  return {perfect_gas(1.4, 287), 4, 4 * cells, [](double x) { return exact(x, 0); }};
}

/// Over the third wavelength: mean density error over the density at rest.
double error(int cells) {
  Tube tube = start(cells);
  const double t = 0.5 * wave.breaking_time();
  tube.run_until(t);
  double sum = 0;
  for (auto i = static_cast<std::size_t>(2 * cells); i < static_cast<std::size_t>(3 * cells); ++i)
    sum += std::abs(tube.cell(i).rho - exact(tube.x(i), t).rho);
  return sum / cells / rho0;
}

/// Until it breaks the steepest slope grows as 1/(1 - t/t_breaking): the time where two slopes point to.
double breaking_time(int cells) {
  Tube tube = start(cells);
  const auto flatness = [&](double t) {  // 1 / steepest fall of velocity
    tube.run_until(t);
    double steepest = 0;
    for (auto i = static_cast<std::size_t>(3 * cells / 2); i < static_cast<std::size_t>(5 * cells / 2); ++i)
      steepest = std::max(steepest, (tube.cell(i).u - tube.cell(i + 1).u) / tube.dx());
    return 1 / steepest;
  };
  const double t1 = 0.3 * wave.breaking_time(), t2 = 2 * t1;
  const double f1 = flatness(t1), f2 = flatness(t2);
  return t1 + (t2 - t1) * f1 / (f1 - f2);
}

}  // namespace

std::vector<Check> simple_wave_checks() {
  CheckList list("simple wave, marched", "Landau and Lifshitz, Fluid Mechanics, sec. 101, implicit simple wave");
  list.relative(0, "second order at smooth flow; the limiter flattens the crests and may take a tenth of the order");
  const double coarse = error(100), fine = error(800);
  list.at_least("observed order, mean density error, 100 to 800 cells a wavelength", 1.9, std::log2(coarse / fine) / 3);
  list.at_least("observed order, 400 to 800 cells", 1.9, std::log2(error(400) / fine));
  list.relative(0, "a thousandth of the wave's height of 10 % of the density at rest, at 100 cells");
  list.at_most("mean density error at half the breaking time, 100 cells, over the density at rest", 1e-4, coarse);
  list.relative(0.01, "marched, 400 cells");
  list.value("breaking time, from the growth of the steepest slope, s", wave.breaking_time(), breaking_time(400));
  return list.checks();
}

}  // namespace pulsewright
