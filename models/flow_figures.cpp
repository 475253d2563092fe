#include "models/flow_figures.hpp"

#include <algorithm>
#include <cmath>

#include "models/pulse_parts.hpp"

namespace pulsewright {

// Equation   p0 = p (1 + (g-1)/2 M^2)^(g/(g-1)), M = u/c, g = c^2 rho/p
// Source     NACA Report 1135, Ames Research Staff, 1953, eq. 44
// Symbols    p, p0 Pa; u, c m/s; rho kg/m3
// Valid for  isentropic stagnation, gamma frozen
// Tested by  tests/models/flow_figures_test.cpp
double stagnation_pressure(double p, double u, double rho, double c) {
  const double g = c * c * rho / p, mach2 = u * u / (c * c);
  return p * std::pow(1 + (g - 1) / 2 * mach2, g / (g - 1));
}

// Equation   T_flow: h(T_flow, Y_flow) = integral(md (h + u^2/2))/integral(md), Y_flow = integral(md Y)/integral(md)
// Source     definition: the temperature of the gas brought to rest in a bag, which only heat and work can change on
//            the way
// Symbols    md = rho u A kg/s, with its sign
// Valid for  net forward flow over the cycle; else the time mean is returned
// Tested by  tests/models/flow_figures_test.cpp
PlaceFigures place_figures(const PlaceRecord& at, double area, const Gas& gas) {
  const auto n = static_cast<double>(at.p.size());
  double mass = 0, enthalpy_flow = 0, burned = 0, stagnation = 0;
  for (std::size_t i = 0; i < at.p.size(); ++i) {
    const double flow = at.rho[i] * at.u[i] * area;
    mass += flow / n;
    enthalpy_flow += flow * (enthalpy(gas, at.T[i], at.Y[i]) + 0.5 * at.u[i] * at.u[i]) / n;
    burned += flow * at.Y[i] / n;
    stagnation += stagnation_pressure(at.p[i], at.u[i], at.rho[i], at.c[i]) / n;
  }
  const auto [low, high] = std::minmax_element(at.p.begin(), at.p.end());
  const double time_mean = mean(at.T);
  const double flow_mean =
      mass > 0 ? temperature_from_enthalpy(gas, enthalpy_flow / mass, std::clamp(burned / mass, 0.0, 1.0)) : time_mean;
  return {mean(at.p), stagnation, *high, *low, time_mean, flow_mean, mass};
}

Series forward_energy_flow(const PlaceRecord& at, double area, const Gas& gas) {
  const std::size_t n = at.p.size();
  Series flow(n, 0.0);
  double debt = 0;
  for (std::size_t k = 0; k < 2 * n; ++k) {  // once round to find the debt, once to count
    const std::size_t i = k % n;
    const double above = enthalpy(gas, at.T[i], at.Y[i]) - enthalpy(gas, 298, at.Y[i]) + 0.5 * at.u[i] * at.u[i];
    const double energy = at.rho[i] * at.u[i] * area * above;
    const double paid = std::min(debt, std::max(energy, 0.0));
    debt += std::max(-energy, 0.0) - paid;
    flow[i] = std::max(energy, 0.0) - paid;
  }
  return flow;
}

double overlap_percent(const Series& a, const Series& b) {
  double both = 0, sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) both += std::min(a[i], b[i]), sum += a[i] + b[i];
  return sum > 0 ? 200 * both / sum : 0;
}

}  // namespace pulsewright
