#pragma once
// Steady one-dimensional flow of a perfect gas, closed forms: what marched results are held to.
//   Source: Ames Research Staff, Equations, Tables and Charts for Compressible Flow, NACA Report 1135, 1953
//   (isentropic,
//           normal shock); A. H. Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1, 1953,
//           ch. 6 (friction), ch. 7 (heat).

namespace pulsewright {

/// Static over stagnation, area over throat area, and mass flow sqrt(R T0)/(A p0), at Mach number m.
struct Isentropic {
  double p_p0, rho_rho0, T_T0, area_ratio, flow;
};
Isentropic isentropic(double m, double gamma);

/// Mach number at an area ratio >= 1, on the branch asked for.
double mach_at_area(double area_ratio, double gamma, bool supersonic);

/// Behind over ahead.
struct NormalShock {
  double mach, pressure, density, temperature, total_pressure;
};
NormalShock normal_shock(double m, double gamma);

/// Over the sonic values. length = f_D L_max / D with Darcy's friction factor.
struct Fanno {
  double length, temperature, pressure, velocity, total_pressure;
};
Fanno fanno(double m, double gamma);

struct Rayleigh {
  double total_temperature, temperature, pressure, total_pressure, velocity;
};
Rayleigh rayleigh(double m, double gamma);

}  // namespace pulsewright
