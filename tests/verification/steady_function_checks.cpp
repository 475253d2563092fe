// The closed forms of steady flow against their published tables: they are the measure of the marched flows elsewhere.
#include "tests/verification/all_checks.hpp"
#include "tests/verification/steady_functions.hpp"
#include "tests/verification/steady_tables.hpp"

namespace pulsewright {

std::vector<Check> steady_function_checks() {
  CheckList list("steady flow, closed forms", "NACA Report 1135, 1953, isentropic flow");
  list.relative(closed_form, closed_form_reason);
  list.table(isentropic_table(), [](std::span<const double> key) {
    const Isentropic f = isentropic(key[1], key[0]);
    return std::vector{f.p_p0, f.rho_rho0, f.T_T0, f.area_ratio, f.flow};
  });
  list.source("NACA Report 1135, 1953, normal shock");
  list.table(normal_shock_table(), [](std::span<const double> key) {
    const NormalShock s = normal_shock(key[1], key[0]);
    return std::vector{s.mach, s.pressure, s.density, s.temperature, s.total_pressure};
  });
  list.source("Shapiro, Compressible Fluid Flow, vol. 1, 1953, ch. 6, friction");
  list.table(fanno_table(), [](std::span<const double> key) {
    const Fanno f = fanno(key[1], key[0]);
    return std::vector{f.length, f.length / 4, f.temperature, f.pressure, f.velocity, f.total_pressure};
  });
  list.source("Shapiro, Compressible Fluid Flow, vol. 1, 1953, ch. 7, heat");
  list.table(rayleigh_table(), [](std::span<const double> key) {
    const Rayleigh f = rayleigh(key[1], key[0]);
    return std::vector{f.total_temperature, f.temperature, f.pressure, f.total_pressure, f.velocity};
  });
  return list.checks();
}

}  // namespace pulsewright
