#include "solver/orifice.hpp"

#include <algorithm>
#include <cmath>

#include "solver/root.hpp"
#include "solver/wave.hpp"

namespace pulsewright {
namespace {

// The last Newton step may be a millionth of the velocity (what is left then is its square), no finer than rounding.
double speed_tolerance(double guess, double c) { return 1e-6 * guess + 1e-14 * c; }

// Velocity at which gas from the duct would pass an incompressible orifice with a linear wave.
double linear_guess(double pressure_excess, double a, double rho, double c) {
  const double impedance = rho * c, inertia = 0.5 * rho * (1 / (a * a) - 1);
  return 2 * pressure_excess / (impedance + std::sqrt(impedance * impedance + 4 * inertia * pressure_excess));
}

// Where to start: the velocity of the last step if it had this direction.
double first_guess(const Port& port, double sign, double pressure_excess, double a) {
  if (sign * port.face.w > 0) return sign * port.face.w;
  const EndState still = brought_to(0, port.state);
  return linear_guess(pressure_excess, a, still.rho, still.c);
}

// The fastest outflow that a subsonic face can have: sonic, or behind a shock that stands at the face.
double fastest_outflow(const EndState& d) {
  const double g = d.gamma, m2 = d.w * d.w / (d.c * d.c);
  if (d.w < d.c) return 2 / (g + 1) * (d.c + (g - 1) / 2 * d.w);
  return d.w * ((g - 1) * m2 + 2) / ((g + 1) * m2);
}

// Equation   a^2 (rho_t/rho)^2 v_t^2 - w^2 = 0,  v_t^2 = 2 cp (T + w^2/(2 cp) - T_t),  isentropic from face to throat,
//            T_t = T (p_out/p)^((g-1)/g), not below the sonic 2/(g+1) of the total temperature; p, rho, T by the exact
//            wave
// Source     quasi-steady one-dimensional gas dynamics: A. H. Shapiro, Compressible Fluid Flow I, 1953, chapter 4
// Symbols    w velocity at the face m/s; a effective throat area over duct area; index t throat; p_out outside, Pa
// Valid for  0 < a < 1, duct's gas flowing out; gamma frozen at the duct's end
// Tested by  tests/solver/orifice_test.cpp
class Outflow {
 public:
  Outflow(const EndState& duct, double p_out, double a) : duct_(duct), p_out_(p_out), a2_(a * a) {}

  Slope operator()(double w) const {
    const EndState s = brought_to(w, duct_);
    const double g = s.gamma, two_cp = 2 * s.c * s.c / ((g - 1) * s.T);
    const double total = s.T + w * w / two_cp, total_slope = 2 * (w - s.c) / two_cp;
    const double ratio = std::pow(p_out_ / s.p, (g - 1) / g);
    if (s.T * ratio > 2 / (g + 1) * total) {
      const double x = p_out_ / (s.p * ratio), drive = two_cp * (total - s.T * ratio);
      return {a2_ * x * x * drive - w * w, 2 * a2_ * x * x * (drive / s.c - (s.c - w)) - 2 * w};
    }
    const double x = std::pow(2 / (g + 1) * total / s.T, 1 / (g - 1));
    const double flow = a2_ * x * x * two_cp * (g - 1) / (g + 1) * total;
    return {flow - w * w, flow * ((g + 1) / (g - 1) * total_slope / total + 2 / s.c) - 2 * w};
  }

 private:
  const EndState& duct_;
  double p_out_, a2_;
};

// Equation   a p_t v_t / T_t = p U / T,  v_t^2 = 2 cp (T0 - T_t),  T_t = T0 (p_t/p0)^((g-1)/g),  h(T) + U^2/2 = h0,
//            p_t = p (the jet does not recover pressure), not below the critical one; p by the exact wave, U at most sonic
// Source     as Outflow
// Symbols    U velocity into the duct m/s; p, T in the duct's end face; index 0 the gas at rest, t throat
// Valid for  0 < a <= 1; gamma frozen at T0 in the throat (burned gas, choked: 0.18 % too little at 900 K, 0.1 % at
//            1700 K)
// Tested by  tests/solver/orifice_test.cpp
class Inflow {
 public:
  Inflow(const EndState& duct, const Reservoir& r, double a, const Gas& gas)
      : duct_(duct), r_(r), gas_(gas), a2_(a * a), cp_(r.gamma * r.R / (r.gamma - 1)) {}

  Slope operator()(double u) const {
    const EndState s = brought_to(-u, duct_);
    const double g = r_.gamma, k = (g - 1) / g, sonic = 2 / (g + 1);
    const double p = s.p / r_.p, p_slope = s.rho * s.c / r_.p;
    const double t = temperature(u) / r_.T, t_slope = -u / (cp_ * r_.T);
    const double isentropic = std::pow(p, k);
    const bool choked = isentropic < sonic;
    const double t_throat = choked ? sonic : isentropic, t_throat_slope = choked ? 0 : k * isentropic * p_slope / p;
    const double p_throat = choked ? std::pow(sonic, 1 / k) : p, p_throat_slope = choked ? 0 : p_slope;
    const double drive = 2 * cp_ * r_.T * (1 - t_throat), jet = a2_ * p_throat * p_throat * t * t;
    const double moved = p * u * t_throat, moved_slope = p_slope * u * t_throat + p * t_throat + p * u * t_throat_slope;
    return {jet * drive - moved * moved, 2 * jet * drive * (p_throat_slope / p_throat + t_slope / t) -
                                             jet * 2 * cp_ * r_.T * t_throat_slope - 2 * moved * moved_slope};
  }

  double temperature(double u) const { return temperature_from_enthalpy(gas_, r_.h - u * u / 2, r_.Y); }
  double sonic_speed() const { return std::sqrt(2 * r_.gamma / (r_.gamma + 1) * r_.R * r_.T); }

  // Choked in the duct's own mouth: the jet's mass at sonic speed, its pressure whatever carries that mass.
  double sonic_pressure(double u) const {
    return std::sqrt(a2_) * r_.p * flow_function(0, r_.gamma) / std::sqrt(r_.R * r_.T) * r_.R * temperature(u) / u;
  }

 private:
  const EndState& duct_;
  const Reservoir& r_;
  const Gas& gas_;
  double a2_, cp_;
};

void flow_out(const Reservoir& r, double a, double excess, const Gas& gas, Port& port) {
  const EndState& d = port.state;
  if (a >= 1) {
    port.face = face_toward_element(r.p, d);
  } else {
    const Outflow f(d, r.p, a);
    const double fastest = fastest_outflow(d);
    if (d.w >= d.c && f(fastest).value >= 0) {
      port.face = d;  // the shock that would slow the gas down is swept through
    } else {
      const double guess = first_guess(port, 1, excess, a);
      port.face = brought_to(falling_root(f, 0, fastest, guess, speed_tolerance(guess, d.c)), d);
    }
  }
  port.flux = flux_of(port.face, gas);
}

void flow_in(const Reservoir& r, double a, double excess, const Gas& gas, Port& port) {
  const EndState& d = port.state;
  const Inflow f(d, r, a, gas);
  const double fastest = f.sonic_speed();
  const double guess = std::min(first_guess(port, -1, excess, a), fastest);
  double u = falling_root(f, 0, fastest, guess, speed_tolerance(guess, d.c));
  double p = brought_to(-u, d).p;
  if (u > (1 - 2e-6) * fastest) {  // no root below: the search has run up to the sonic speed
    u = fastest;
    p = f.sonic_pressure(u);
  }
  const double T = f.temperature(u), rho = p / (r.R * T);
  port.face = {rho, -u, p, r.Y, T, heat_ratio(gas, T, r.Y), sound_speed(gas, T, r.Y)};
  port.flux = {-rho * u, rho * u * u + p, -rho * u * r.h, -rho * u * r.Y};
}

}  // namespace

Reservoir make_reservoir(const Gas& gas, double p, double T, double Y) {
  return {p, T, Y, enthalpy(gas, T, Y), gas_constant(gas, Y), heat_ratio(gas, T, Y)};
}

// Equation   r^(1/g) sqrt(2g/(g-1) (1 - r^((g-1)/g))), r not below (2/(g+1))^(g/(g-1))
// Source     J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, appendix C (equations C.8 and C.9 from memory)
// Symbols    r throat pressure over total pressure; g heat ratio; result mdot sqrt(R T0)/(A p0)
// Valid for  ideal gas of constant g, r <= 1
// Tested by  tests/verification/orifice_turbine_checks.cpp
double flow_function(double pressure_ratio, double g) {
  const double r = std::max(pressure_ratio, critical_pressure_ratio(g));
  const double t = std::pow(r, (g - 1) / g);
  return r / t * std::sqrt(2 * g / (g - 1) * std::max(0.0, 1 - t));
}

double critical_pressure_ratio(double g) { return std::pow(2 / (g + 1), g / (g - 1)); }

EndFlux flux_of(const EndState& f, const Gas& gas) {
  const double mass = f.rho * f.w;
  return {mass, mass * f.w + f.p, mass * (enthalpy(gas, f.T, f.Y) + f.w * f.w / 2), mass * f.Y};
}

void close_port(Port& port) {
  port.face = brought_to(0, port.state);
  port.flux = {0, port.face.p, 0, 0};
}

double flow_through_orifice(const Reservoir& r, double effective_area, const Gas& gas, Port& port) {
  return flow_through_orifice(r, effective_area, gas, wave_pressure(0, port.state), port);
}

double flow_through_orifice(const Reservoir& r, double effective_area, const Gas& gas, double still, Port& port) {
  const double a = std::min(effective_area / port.area, 1.0);
  if (!(a > 1e-12) || still == r.p) {
    close_port(port);
  } else if (still > r.p) {
    flow_out(r, a, still - r.p, gas, port);
  } else {
    flow_in(r, a, r.p - still, gas, port);
  }
  return port.area * port.flux.mass;
}

}  // namespace pulsewright
