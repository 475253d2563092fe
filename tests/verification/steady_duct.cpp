#include "tests/verification/steady_duct.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "solver/end_reservoir.hpp"
#include "tests/verification/steady_functions.hpp"

namespace pulsewright {
namespace {

std::vector<double> pressures(const Network& network) {
  std::vector<double> p(network.cells(0));
  for (std::size_t i = 0; i < p.size(); ++i) p[i] = network.cell(0, i).p;
  return p;
}

// Forty times the time that sound takes along the duct, less where nothing moves any more (1e-9 of the supply's
// pressure). A shock caught between two cells may go on trembling there by a few parts in 10 000; more than one in 1000
// is not steady.
void march(Network& network, double crossing) {
  std::vector<double> before = pressures(network);
  double change = 1;
  for (int k = 1; k <= 40 && change > 1e-9; ++k) {
    network.run_until(k * crossing);
    const std::vector<double> now = pressures(network);
    change = 0;
    for (std::size_t i = 0; i < now.size(); ++i)
      change = std::max(change, std::abs(now[i] - before[i]) / SteadyDuct::supply_pressure);
    before = now;
  }
  if (change > 1e-3) throw Error(ErrorKind::internal, "the flow in a duct that should become steady does not");
}

}  // namespace

SteadyDuct::SteadyDuct(double gamma, const NetworkOptions& options, const DuctSpec& duct, double back_pressure)
    : gamma_(gamma), network_(perfect_gas(gamma, R), options) {
  network_.add_duct(duct);
  const Gas& gas = network_.gas();
  network_.attach(supply_end(make_reservoir(gas, supply_pressure, supply_temperature, 0)), {{0, Side::start}});
  network_.attach(open_end(make_reservoir(gas, back_pressure, supply_temperature, 0)), {{0, Side::finish}});
  network_.start();
  march(network_, duct.length() / std::sqrt(gamma * R * supply_temperature));
}

double SteadyDuct::mach(std::size_t i) const { return network_.cell(0, i).u / std::sqrt(gamma_ * R * temperature(i)); }

double SteadyDuct::total_temperature(std::size_t i) const { return temperature(i) / isentropic(mach(i), gamma_).T_T0; }

double SteadyDuct::total_pressure(std::size_t i) const { return pressure(i) / isentropic(mach(i), gamma_).p_p0; }

double SteadyDuct::at(double place, double (SteadyDuct::*what)(std::size_t) const) const {
  const double cell = place / network_.dx(0) - 0.5;
  const double whole = std::clamp(std::floor(cell), 0.0, static_cast<double>(cells() - 2));
  const auto i = static_cast<std::size_t>(whole);
  return std::lerp((this->*what)(i), (this->*what)(i + 1), cell - whole);
}

double SteadyDuct::shock_place() const {
  for (std::size_t i = 0; i + 1 < cells(); ++i) {
    const double ahead = mach(i), behind = mach(i + 1);
    if (ahead > 1 && behind <= 1)
      return (static_cast<double>(i) + 0.5 + (ahead - 1) / (ahead - behind)) * network_.dx(0);
  }
  return -1;
}

}  // namespace pulsewright
