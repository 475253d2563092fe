// A shock runs through a gradual change of bore. The theory is approximate (good to 2-3 % of M - 1) and its formula is
// quoted from memory: a guide to sign and size.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/simple_wave.hpp"
#include "tests/verification/steady_functions.hpp"
#include "tests/verification/tube.hpp"

namespace pulsewright {
namespace {

constexpr double R = 287, T0 = 300, p0 = 1e5, rho0 = p0 / (R * T0), dx = 0.0025;
constexpr double diaphragm = 0.3, taper_start = 0.5, taper_length = 1, length = 2;

struct Case {
  double gamma, mach, area_ratio;
};

/// Shock ahead of a taper whose area grows by the same factor every millimetre.
DuctSpec duct(const Case& c) {
  const double a = std::sqrt(c.gamma * R * T0);
  const NormalShock jump = normal_shock(c.mach, c.gamma);
  DuctSpec d = straight_duct("taper", length, 0.04, static_cast<int>(std::lround(length / dx)), {rho0, 0, p0, 0});
  const double bore_area = d.face_area.front();
  for (std::size_t i = 0; i < d.face_area.size(); ++i) {
    const double share = std::clamp((static_cast<double>(i) * dx - taper_start) / taper_length, 0.0, 1.0);
    d.face_area[i] = bore_area * std::pow(c.area_ratio, share);
  }
  for (std::size_t i = 0; i < d.cells(); ++i) {
    d.cell_volume[i] = 0.5 * dx * (d.face_area[i] + d.face_area[i + 1]);
    if ((static_cast<double>(i) + 0.5) * dx < diaphragm)
      d.initial[i] = {rho0 * jump.density, 2 * a / (c.gamma + 1) * (c.mach - 1 / c.mach), p0 * jump.pressure, 0};
  }
  return d;
}

/// Where the pressure first lies halfway to that eight cells behind, seen from the gas at rest.
double front(const Tube& tube) {
  for (std::size_t i = tube.cells() - 1; i > 8; --i) {
    const double half = 0.5 * (p0 + tube.cell(i - 8).p), behind = tube.cell(i - 1).p, ahead = tube.cell(i).p;
    if (behind > 1.01 * p0 && behind > half)
      return tube.x(i) - dx * std::clamp((half - ahead) / (behind - ahead), 0.0, 1.0);
  }
  return 0;
}

/// From the time that the front takes over 100 mm behind the taper.
double mach_behind(const Case& c) {
  Tube tube(perfect_gas(c.gamma, R), duct(c));
  const double from = taper_start + taper_length + 0.03, to = from + 0.1, a = std::sqrt(c.gamma * R * T0);
  double t = 0, t_from = 0, x_from = 0, x = 0;
  while (x < to) {
    tube.run_until(t += 2e-5);
    x = front(tube);
    if (t_from == 0 && x > from) t_from = t, x_from = x;
  }
  return (x - x_from) / (t - t_from) / a;
}

}  // namespace

std::vector<Check> shock_area_checks() {
  CheckList list("shock through a taper, marched",
                 "Whitham, Linear and Nonlinear Waves, 1974, ch. 8; Chisnell, J. Fluid Mech. 2, 1957 (from memory)");
  list.relative(closed_form, closed_form_reason);
  list.table({{"gamma", "M", "area ratio", "shock Mach number by the area rule"},
              3,
              {{1.4, 1.1, 0.25, 1.1840524},
               {1.4, 1.3, 2, 1.226365},
               {1.4, 2, 0.5, 2.2402878},
               {1.4, 3, 4, 2.3454621},
               {1.33, 1.1, 3, 1.0603251},
               {1.33, 1.6, 0.8, 1.6478429},
               {1.33, 3, 0.25, 3.8493418}}},
             [](std::span<const double> key) { return std::vector{shock_mach_after_area(key[1], key[2], key[0])}; });
  for (const Case& c : {Case{1.4, 1.3, 0.5}, Case{1.4, 1.3, 2}, Case{1.33, 1.1, 0.5}, Case{1.33, 2, 1.25}}) {
    const double rule = shock_mach_after_area(c.mach, c.area_ratio, c.gamma);
    list.absolute(0.03 * (rule - 1), "the rule is approximate: 3 % of M - 1");
    list.value(fmt::format("shock Mach number behind a taper, marched, gamma {}, M {}, area ratio {}", c.gamma, c.mach,
                           c.area_ratio),
               rule, mach_behind(c));
  }
  return list.checks();
}

}  // namespace pulsewright
