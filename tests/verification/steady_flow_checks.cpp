// Steady flow that the network marches to by itself: friction (Fanno), heat (Rayleigh), nozzles with and without a
// shock.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/nozzle_cases.hpp"
#include "tests/verification/steady_duct.hpp"
#include "tests/verification/steady_functions.hpp"

namespace pulsewright {
namespace {

constexpr double p0 = SteadyDuct::supply_pressure, T0 = SteadyDuct::supply_temperature;
constexpr double bore = 0.04;
constexpr double marched = 0.01;
constexpr const char* marched_reason =
    "marched on cells of finite length: 1 %, ours shrinks with the square of the cell";

// Starts with the whole duct in the state that its inlet must take: cooled from rest it would suck itself empty
// backward.
DuctSpec plain_duct(double gamma, double mach, double length) {
  const Isentropic in = isentropic(mach, gamma);
  const double p = p0 * in.p_p0, T = T0 * in.T_T0;
  const double u = mach * std::sqrt(gamma * SteadyDuct::R * T);
  return straight_duct("duct", length, bore, 100, {p / (SteadyDuct::R * T), u, p, 0});
}

// From one Mach number to another by friction alone: the duct of the length that the tables ask for, at their back
// pressure.
void check_fanno(CheckList& list, double gamma, double from, double to) {
  const Fanno a = fanno(from, gamma), b = fanno(to, gamma);
  NetworkOptions options;
  options.friction = NetworkOptions::Friction::constant;
  options.darcy_factor = 0.04;
  const double inlet = p0 * isentropic(from, gamma).p_p0, outlet = inlet * b.pressure / a.pressure;
  const SteadyDuct duct(gamma, options, plain_duct(gamma, from, (a.length - b.length) * bore / options.darcy_factor),
                        outlet);
  const std::string at = fmt::format(", gamma {:g}, M {:g} to {:g}", gamma, from, to);
  list.value("Mach number at the inlet" + at, from, duct.at(0, &SteadyDuct::mach));
  list.value("Mach number at the outlet" + at, to, duct.at(duct.length(), &SteadyDuct::mach));
  list.value("inlet over outlet pressure" + at, a.pressure / b.pressure,
             duct.at(0, &SteadyDuct::pressure) / duct.at(duct.length(), &SteadyDuct::pressure));
  list.value("total pressure left" + at, b.total_pressure / a.total_pressure,
             duct.at(duct.length(), &SteadyDuct::total_pressure) / p0);
}

// The same by heat alone (heated: between given pressures a given cooling has no stable flow). A given flux brings the
// total temperature from one table value to the next.
void check_rayleigh(CheckList& list, double gamma, double from, double to) {
  const Rayleigh a = rayleigh(from, gamma), b = rayleigh(to, gamma);
  const Isentropic in = isentropic(from, gamma);
  const double length = 1, cp = gamma / (gamma - 1) * SteadyDuct::R;
  const double flow = in.flow / std::sqrt(SteadyDuct::R * T0) * p0;  // per area
  NetworkOptions options;
  options.heat_flux = flow * bore / (4 * length) * cp * T0 * (b.total_temperature / a.total_temperature - 1);
  const SteadyDuct duct(gamma, options, plain_duct(gamma, from, length), p0 * in.p_p0 * b.pressure / a.pressure);
  const std::string at = fmt::format(", gamma {:g}, M {:g} to {:g}", gamma, from, to);
  list.value("Mach number at the inlet" + at, from, duct.at(0, &SteadyDuct::mach));
  list.value("Mach number at the outlet" + at, to, duct.at(length, &SteadyDuct::mach));
  list.value("outlet over inlet total temperature" + at, b.total_temperature / a.total_temperature,
             duct.at(length, &SteadyDuct::total_temperature) / T0);
  list.value("total pressure left" + at, b.total_pressure / a.total_pressure,
             duct.at(length, &SteadyDuct::total_pressure) / p0);
}

std::vector<Check> duct_checks() {
  CheckList list("steady friction, marched", "A. H. Shapiro, Compressible Fluid Flow, vol. 1, 1953, ch. 6 (Fanno)");
  list.relative(marched, marched_reason);
  for (double gamma : {1.4, 1.33}) {
    check_fanno(list, gamma, 0.3, 0.7);
    check_fanno(list, gamma, 0.5, 0.8);
  }
  CheckList heat("steady heat, marched", "A. H. Shapiro, Compressible Fluid Flow, vol. 1, 1953, ch. 7 (Rayleigh)");
  heat.relative(marched, marched_reason);
  for (double gamma : {1.4, 1.33}) {
    check_rayleigh(heat, gamma, 0.2, 0.6);
    check_rayleigh(heat, gamma, 0.3, 0.8);
  }
  return joined({list.checks(), heat.checks()});
}

constexpr int nozzle_cells = 200;
constexpr double throat = 1e-3;  // m2

// Faces exact, volumes by Simpson's rule (exact for the parabola).
DuctSpec nozzle_duct(const NozzleCase& nozzle) {
  DuctSpec duct = straight_duct("nozzle", nozzle.length, 0.04, nozzle_cells, {p0 / (SteadyDuct::R * T0), 0, p0, 0});
  for (std::size_t i = 0; i < duct.face_area.size(); ++i)
    duct.face_area[i] = throat * nozzle.area(static_cast<double>(i) * duct.dx);
  for (std::size_t i = 0; i < duct.cells(); ++i) {
    const double middle = throat * nozzle.area((static_cast<double>(i) + 0.5) * duct.dx);
    duct.cell_volume[i] = duct.dx / 6 * (duct.face_area[i] + 4 * middle + duct.face_area[i + 1]);
  }
  return duct;
}

void check_nozzle(CheckList& list, const NozzleCase& nozzle) {
  const SteadyDuct duct(1.4, {}, nozzle_duct(nozzle), nozzle.back_pressure * p0);
  const std::string of = fmt::format(", {}", nozzle.name);
  list.relative(marched, marched_reason);
  for (const NozzleStation& s : nozzle.stations) {
    list.value(fmt::format("Mach number at x {:g}{}", s.x, of), s.mach, duct.at(s.x, &SteadyDuct::mach));
    list.value(fmt::format("pressure over total at x {:g}{}", s.x, of), s.p_p0,
               duct.at(s.x, &SteadyDuct::pressure) / p0);
  }
  list.relative(0.005, "marched on 200 cells with a shock or none: half a per cent");
  list.value("Mach number at the exit" + of, nozzle.exit_mach, duct.at(nozzle.length, &SteadyDuct::mach));
  list.value("total pressure left at the exit" + of, nozzle.exit_total_pressure,
             duct.at(nozzle.length, &SteadyDuct::total_pressure) / p0);
  if (nozzle.shock_at < 0) return;
  list.absolute(nozzle.length / nozzle_cells, "within the one cell that a shock is caught in");
  list.value("place of the shock" + of, nozzle.shock_at, duct.shock_place());
}

std::vector<Check> nozzle_checks() {
  CheckList list("nozzles, marched",
                 "area-Mach and normal-shock relations, NACA Report 1135, 1953; shapes after Anderson, 1995, and NPARC "
                 "(from memory)");
  for (const NozzleCase& nozzle : nozzle_cases()) check_nozzle(list, nozzle);
  return list.checks();
}

}  // namespace

std::vector<Check> steady_flow_checks() { return joined({duct_checks(), nozzle_checks()}); }

}  // namespace pulsewright
