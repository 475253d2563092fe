#include "solver/joint_port.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "shared/error.hpp"
#include "solver/wave.hpp"

namespace pulsewright {
namespace {

/// Gas behind the wave of pressure p, and its change with p. The relations of solver/wave.hpp with one power each.
struct Moved {
  double rho, w, T, c;
  double rho_slope, w_slope, T_slope;
};

Moved behind_shock(double p, const EndState& d) {
  const double g = d.gamma, k = (g - 1) / (g + 1), r = p / d.p, rise = p - d.p, sum = p + k * d.p;
  const double root = std::sqrt(2 / ((g + 1) * d.rho * sum));
  const double rho = d.rho * (r + k) / (k * r + 1);
  const double rho_slope = d.rho / d.p * (1 - k * k) / ((k * r + 1) * (k * r + 1));
  const double T = d.T * r * d.rho / rho;
  return {rho,
          d.w - rise * root,
          T,
          std::sqrt(g * p / rho),
          rho_slope,
          -root * (1 - rise / (2 * sum)),
          T * (1 / p - rho_slope / rho)};
}

Moved behind_fan(double p, const EndState& d) {
  const double g = d.gamma, r = p / d.p;
  const double q = std::pow(r, (g - 1) / (2 * g));
  const double rho = d.rho * r / (q * q), c = d.c * q, T = d.T * q * q;
  return {rho, d.w - 2 * d.c / (g - 1) * (q - 1), T, c, 1 / (c * c), -1 / (rho * c), T * (g - 1) / (g * p)};
}

Moved behind(double p, const EndState& d) { return p > d.p ? behind_shock(p, d) : behind_fan(p, d); }

void answer_fixed(JointPort& port, const EndState& face, const Gas& gas) {
  port.p = face.p;
  port.rho = face.rho;
  port.u = face.w;
  port.T = face.T;
  port.mass = face.rho * face.w;
  port.h0 = enthalpy(gas, face.T, face.Y) + 0.5 * face.w * face.w;
  port.mass_slope = port.energy_slope = 0;
}

/// The velocity that the port may see: with faster streams its equation would have several roots. Newton takes it as
/// fixed: its slope by the joint's pressure can turn the port's own gain negative and send Newton to and fro.
double capped_jet(const JointPort& port, const JointGas& joint) {
  const EndState& d = port.duct;
  const double rho_joint = joint.p / (joint.R * joint.T), r = std::min(1.0, joint.p / d.p);
  const double v = std::min(port.jet, 0.9 * joint.c);
  if (v * rho_joint <= 0.8 * d.rho * d.c * r) return v;  // below the limit by more than its power could tell
  const double impedance = d.rho * d.c * std::pow(r, (d.gamma + 1) / (2 * d.gamma));
  return std::min(v, 0.8 * impedance / rho_joint);
}

/// What the joint's momentum leaves in the face.
struct Leaving {
  double pressure, by_joint, slope;  // Pa; d/d(joint's pressure); d/d(face's pressure)
};

// Equation   p = p_J - rho U (U - v): momentum between the joint's cell and a face of the duct's own area
// Source     momentum over the widening behind a jet (Borda-Carnot), the streams' momentum v kept by direction
// Symbols    p, p_J Pa; U velocity out through the face, v streams toward the port, m/s; rho kg/m3
// Valid for  v below 0.8 rho c / rho_J (one root); any U up to sonic
// Tested by  tests/verification/joint_flow_checks.cpp
Leaving leave_plain(const JointPort& port, double rho_slope, double u_slope, const JointGas& joint, double v) {
  const double rho = port.rho, u = port.u;
  return {joint.p - rho * u * (u - v), 1, -(rho_slope * u * (u - v) + rho * u_slope * (2 * u - v))};
}

/// Gas of one mass flow per area g mixed by momentum: u_m and p_m, with their change by g and by the joint's pressure.
struct Mixed {
  double u, p;
  double u_by_g, p_by_g, u_by_joint, p_by_joint;
};

// Equation   p_m + g u_m = p_J + g v, u_m = g R T_m/p_m, T_m = T0 - u_m^2/(2 c_p): a quadratic, its subsonic root
// Source     momentum, mass and energy over an area that streams fill together
// Symbols    g kg/(m2 s); v velocity of the streams toward the port, m/s; T0 stagnation temperature, K
// Valid for  up to choking; beyond, u_m stays sonic and p_m falls on by momentum
// Tested by  tests/verification/joint_flow_checks.cpp
Mixed mixed(double g, double v, double T0, const JointGas& joint) {
  const double thrust = joint.p + g * v, k = 1 - 0.5 * joint.R / joint.cp, RT = joint.R * T0;
  const double square = thrust * thrust - 4 * k * RT * g * g;
  if (thrust <= 0 || square < 1e-12 * thrust * thrust) {
    const double u = std::sqrt(RT / k), p = thrust - g * u, floor = 1e-3 * joint.p;
    return p > floor ? Mixed{u, p, 0, v - u, 0, 1} : Mixed{u, floor, 0, 0, 0, 1e-3};
  }
  const double root = std::sqrt(square), sum = thrust + root, u = 2 * g * RT / sum;
  const double root_by_g = (thrust * v - 4 * k * RT * g) / root, root_by_joint = thrust / root;
  const double u_by_g = 2 * RT / sum - u * (v + root_by_g) / sum, u_by_joint = -u * (1 + root_by_joint) / sum;
  return {u, thrust - g * u, u_by_g, v - u - g * u_by_g, u_by_joint, 1 - g * u_by_joint};
}

// Equation   mixed at A_m with g = rho U A/A_m, then isentropic to A less kc (1 - A/A_m) rho U^2/2
// Source     momentum over the streams' common area, then a smooth contraction; the choice of A_m is our own closure
// Symbols    A, A_m m2; U velocity in the face m/s; kc contraction loss (assumed 0.1)
// Valid for  A_m > A; U up to sonic
// Tested by  tests/verification/joint_flow_checks.cpp
Leaving leave_by_mouth(const JointPort& port, double rho_slope, double u_slope, const JointGas& joint, double v) {
  const double rho = port.rho, u = port.u, a = port.area / port.mixing_area;
  const double T0 = port.T + 0.5 * u * u / joint.cp, g_slope = a * (rho_slope * u + rho * u_slope);
  const Mixed m = mixed(a * rho * u, v, T0, joint);
  const double T_m = T0 - 0.5 * m.u * m.u / joint.cp, RT_m = joint.R * T_m;
  const double isentropic = m.p * std::pow(port.T / T_m, joint.cp / joint.R);
  const double loss = 0.5 * port.contraction_loss * (1 - a);
  const double by_g = m.p_by_g / m.p + m.u * m.u_by_g / RT_m, by_joint = m.p_by_joint / m.p + m.u * m.u_by_joint / RT_m;
  const double slope = isentropic * (by_g * g_slope - u * u_slope / (joint.R * port.T)) -
                       loss * (rho_slope * u * u + 2 * rho * u * u_slope);
  return {isentropic - loss * rho * u * u, isentropic * by_joint, slope};
}

}  // namespace

// Equation   face = exact solution at x/t = 0 of the Riemann problem with star pressure p_J
// Source     E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed., 2009, sections 4.2-4.5
// Symbols    see solver/wave.hpp
// Valid for  p_J <= rest_pressure; the choked branch (sonic fan, shock swept in) included
// Tested by  tests/solver/joint_test.cpp
void let_in(JointPort& port, double p, const Gas& gas) {
  const EndState& d = port.duct;
  port.inflow = true;
  port.residual = 0;
  Moved m = behind(p, d);
  m.w = std::max(m.w, 0.0);  // rounding where p is the rest pressure
  if (d.w >= d.c || m.w > m.c) {
    const EndState face = face_toward_element(p, d);
    if (face.p != p) return answer_fixed(port, face, gas);
  }
  port.p = p;
  port.rho = m.rho;
  port.u = m.w;
  port.T = m.T;
  port.mass = m.rho * m.w;
  port.h0 = enthalpy(gas, m.T, d.Y) + 0.5 * m.w * m.w;
  port.mass_slope = m.rho_slope * m.w + m.rho * m.w_slope;
  const double h0_slope = cp(gas, m.T, d.Y) * m.T_slope + m.w * m.w_slope;
  port.energy_slope = port.mass_slope * port.h0 + port.mass * h0_slope;
}

void let_out(JointPort& port, const JointGas& joint, JointLaw law, const Gas& gas) {
  const EndState& d = port.duct;
  port.inflow = false;
  const double sonic = joint.c * std::sqrt(2 / (joint.gamma + 1));
  const Moved m = behind(port.p, d);
  double u = -m.w, u_slope = -m.w_slope;
  if (u < 0 || u > sonic) {
    u = std::clamp(u, 0.0, sonic);
    u_slope = 0;
  }
  const double T = temperature_from_enthalpy(gas, joint.h - 0.5 * u * u, joint.Y);
  port.u = u;
  port.T = T;
  port.rho = port.p / (joint.R * T);
  port.mass = port.rho * u;
  port.h0 = joint.h;
  const double rho_slope = port.rho * (1 / port.p + u * u_slope / (joint.cp * T));
  port.mass_slope = rho_slope * u + port.rho * u_slope;
  Leaving leaving{joint.p, 1, 0};
  if (law == JointLaw::momentum) {
    const double v = capped_jet(port, joint);
    leaving = port.mixing_area > port.area ? leave_by_mouth(port, rho_slope, u_slope, joint, v)
                                           : leave_plain(port, rho_slope, u_slope, joint, v);
  }
  port.residual = port.p - leaving.pressure;
  port.residual_slope = 1 - leaving.slope;
  port.pressure_gain = leaving.by_joint;
}

void settle_outflow(JointPort& port, const JointGas& joint, JointLaw law, const Gas& gas) {
  const auto residual = [&](double p) {
    port.p = p;
    let_out(port, joint, law, gas);
    return port.residual;
  };
  double low = 1e-6 * std::min(joint.p, port.duct.p), high = 2 * std::max(joint.p, port.duct.p);
  for (int i = 0; i < 60 && residual(high) < 0; ++i) high *= 2;
  if (residual(high) < 0 || residual(low) > 0)
    throw Error(ErrorKind::unphysical, "no pressure lets the gas out of the joint into the duct");
  std::uintmax_t turns = 200;
  const auto root =
      boost::math::tools::toms748_solve(residual, low, high, boost::math::tools::eps_tolerance<double>(48), turns);
  residual(0.5 * (root.first + root.second));
}

}  // namespace pulsewright
