#include "tests/verification/tube.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include "solver/end_wave.hpp"

namespace pulsewright {
namespace {

DuctSpec with_profile(double length, int cells, const Tube::Profile& profile) {
  DuctSpec duct = straight_duct("tube", length, 0.04, cells, profile(0));
  for (std::size_t i = 0; i < duct.cells(); ++i) duct.initial[i] = profile((static_cast<double>(i) + 0.5) * duct.dx);
  return duct;
}

NetworkOptions options(double courant) {
  NetworkOptions o;
  o.courant = courant;
  return o;
}

}  // namespace

Tube::Tube(const Gas& gas, double length, int cells, const Profile& profile, double courant)
    : Tube(gas, with_profile(length, cells, profile), courant) {}

Tube::Tube(const Gas& gas, const DuctSpec& duct, double courant) : network_(gas, options(courant)) {
  network_.add_duct(duct);
  network_.attach(std::make_unique<AnechoicEnd>(), {{0, Side::start}});
  network_.attach(std::make_unique<AnechoicEnd>(), {{0, Side::finish}});
  network_.start();
}

Primitive Tube::at(double x) const {
  const double place = std::clamp(x / dx() - 0.5, 0.0, static_cast<double>(cells() - 1) - 1e-9);
  const auto i = static_cast<std::size_t>(place);
  const double share = place - static_cast<double>(i);
  const Primitive a = cell(i), b = cell(i + 1);
  const auto mix = [share](double from, double to) { return from + share * (to - from); };
  return {mix(a.rho, b.rho), mix(a.u, b.u), mix(a.p, b.p), mix(a.Y, b.Y)};
}

double mean_error(const Tube& tube, const Tube::Profile& exact, const std::function<double(const Primitive&)>& what) {
  double sum = 0;
  for (std::size_t i = 0; i < tube.cells(); ++i) sum += std::abs(what(tube.cell(i)) - what(exact(tube.x(i))));
  return sum / static_cast<double>(tube.cells());
}

}  // namespace pulsewright
