#include "solver/joint_balance.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

// Relative accuracy of the joint's pressure. What it leaves unbalanced stays in the joint and enters the next step.
constexpr double close_enough = 4e-8;
constexpr int newton_turns = 20;  // 2 as a rule; a limited stream or a choked port takes more

}  // namespace

// Equation   p0 = p (1 + v^2/(2 R T)), v = sum_k J_k (-n_k . n)/S, 0 <= v <= 0.9 a
// Source     head of the entering streams along the gate's way out, as at every outlet (Joint::prepare)
// Symbols    p, T joint's pressure and temperature (T of the last step); n the gate's way out; J, S as in Joint::prepare
// Valid for  streams below the speed of sound; the law of constant pressure knows no head
// Tested by  tests/solver/joint_gate_test.cpp
void Joint::prepare_gates(const Step& step) {
  const double RT = gas_constant(step.gas, Y_) * T_;
  for (std::size_t i = 0; i < gates_.size(); ++i) {
    JointGate& gate = gates_[i];
    GateLook& look = gate_looks_[i];
    look.mass = look.slope = 0;
    const double fastest = 0.9 * std::sqrt(heat_ratio(step.gas, T_, Y_) * RT);
    const double v =
        spec_.law == JointLaw::constant_pressure ? 0 : std::clamp(stream_toward(gate_cosine_[i]), 0.0, fastest);
    look.head = 1 + 0.5 * v * v / RT;
    gate.total_pressure = p_ * look.head;
    gate.behind = gate.sink ? gate.sink->p_ : gate.p;
    if (gate.effective_area <= 0) continue;
    const double T = gate.sink ? gate.sink->T_ : gate.T;
    look.Y = gate.sink ? gate.sink->Y_ : gate.Y;
    look.h = gate.sink ? gate.sink->h_ : pulsewright::enthalpy(step.gas, T, look.Y);
    look.outside = {gate.sink ? gate.sink->p_ : gate.p, T, gas_constant(step.gas, look.Y),
                    heat_ratio(step.gas, T, look.Y)};
  }
}

void Joint::take_inflow(Balance& b, const Step& step) {
  const double p = b.gas.p;
  for (std::size_t j = 0; j < count_; ++j) {
    JointPort& port = ports_[j];
    if (p > port.rest_pressure) {
      if (port.inflow) port.p = p;  // the port turns: the joint's pressure is the first guess
      port.inflow = false;
      continue;
    }
    let_in(port, p, step.gas);
    const double flow = port.area * port.mass;
    b.in += Content{flow, flow * port.h0, flow * port.duct.Y};
    b.in_mass_slope += port.area * port.mass_slope;
    b.in_energy_slope += port.area * port.energy_slope;
  }
  for (std::size_t i = 0; i < gates_.size(); ++i) {
    GateLook& look = gate_looks_[i];
    if (gates_[i].effective_area <= 0 || p * look.head >= look.outside.p) continue;
    const OrificeFlow flow = orifice_flow({p * look.head, T_, look.outside.R, look.outside.gamma}, look.outside);
    look.mass = gates_[i].effective_area * flow.mass;
    look.slope = gates_[i].effective_area * flow.slope * look.head;
    b.in += -look.mass * Content{1, look.h, look.Y};
    b.in_mass_slope -= look.slope;
    b.in_energy_slope -= look.slope * look.h;
  }
}

/// Gas in the joint and gas that comes in leave as one mixture; without either, what left last.
void Joint::mix(Balance& b, const Step& step) const {
  const double stock = spec_.volume > 0 ? content_.mass : std::max(0.0, content_.mass);
  const bool side = pending_.mass > 0;
  const double mass = stock + step.dt * b.in.mass + (side ? pending_.mass : 0);
  b.gas.h = h_;
  b.gas.Y = Y_;
  if (mass > 0) {
    b.gas.h = (stock * h_ + step.dt * b.in.energy + (side ? pending_.energy : 0)) / mass;
    b.gas.Y = std::clamp((stock * Y_ + step.dt * b.in.burned + (side ? pending_.burned : 0)) / mass, 0.0, 1.0);
  }
  b.gas.T = temperature_from_enthalpy(step.gas, b.gas.h, b.gas.Y);
  b.gas.R = gas_constant(step.gas, b.gas.Y);
  b.gas.cp = cp(step.gas, b.gas.T, b.gas.Y);
  b.gas.gamma = b.gas.cp / (b.gas.cp - b.gas.R);
  b.gas.c = std::sqrt(b.gas.gamma * b.gas.R * b.gas.T);
}

void Joint::take_outflow(Balance& b, const Step& step, bool settle) {
  for (std::size_t j = 0; j < count_; ++j) {
    JointPort& port = ports_[j];
    if (port.inflow) continue;
    settle ? settle_outflow(port, b.gas, spec_.law, step.gas) : let_out(port, b.gas, spec_.law, step.gas);
    b.out_mass += port.area * port.mass;
    b.out_mass_slope += port.area * port.mass_slope * port.pressure_gain / port.residual_slope;
    b.out_mass_lag -= port.area * port.mass_slope * port.residual / port.residual_slope;
    b.unsettled = std::max(b.unsettled, std::abs(port.residual / (port.residual_slope * port.p)));
  }
  for (std::size_t i = 0; i < gates_.size(); ++i) {
    GateLook& look = gate_looks_[i];
    if (gates_[i].effective_area <= 0 || b.gas.p * look.head < look.outside.p) continue;
    const OrificeFlow flow = orifice_flow({b.gas.p * look.head, b.gas.T, b.gas.R, b.gas.gamma}, look.outside);
    look.mass = gates_[i].effective_area * flow.mass;
    look.slope = gates_[i].effective_area * flow.slope * look.head;
    b.out_mass += look.mass;
    b.out_mass_slope += look.slope;
  }
}

// Equation   V p c_v/R = En + dt (sum_in m h0 - sum_out m h_out), every energy counted from where e = c_v T
// Source     first law; c_v, R and that datum at the mixture's temperature (exact for a perfect gas)
// Symbols    V m3; p Pa at the end of the step; En J held; m kg/s; h J/kg
// Valid for  any step and V >= 0; rises with p
// Tested by  tests/solver/joint_test.cpp
void Joint::sum_up(Balance& b, const Step& step) const {
  const double datum = b.gas.cp * b.gas.T - b.gas.h, out_h = b.gas.h + datum, dt = step.dt;
  const double capacity = spec_.volume * (b.gas.cp - b.gas.R) / b.gas.R;
  const double stock = content_.energy + pending_.energy + datum * (content_.mass + pending_.mass);
  b.residual = capacity * b.gas.p - stock - dt * (b.in.energy + datum * b.in.mass - out_h * b.out_mass);
  b.slope = capacity - dt * (b.in_energy_slope + datum * b.in_mass_slope - out_h * b.out_mass_slope);
  b.residual += dt * out_h * b.out_mass_lag;
}

Joint::Balance Joint::balance(double p, const Step& step, bool settle) {
  ++looks_;
  Balance b;
  b.gas.p = p;
  take_inflow(b, step);
  mix(b, step);
  take_outflow(b, step, settle);
  sum_up(b, step);
  return b;
}

/// One Newton step of the joint's pressure and of every outflow's own.
void Joint::follow(double rise) {
  for (std::size_t j = 0; j < count_; ++j) {
    JointPort& port = ports_[j];
    if (port.inflow) continue;
    const double to = port.p + (port.pressure_gain * rise - port.residual) / port.residual_slope;
    port.p = std::clamp(to, 0.5 * port.p, 2 * port.p);
  }
}

Joint::Balance Joint::solve(const Step& step) {
  double p = p_ + trend_;
  follow(trend_);
  for (int turn = 0; turn < newton_turns; ++turn) {
    const Balance b = balance(p, step, false);
    const double rise = -b.residual / b.slope;
    if (std::abs(rise) <= close_enough * p && b.unsettled <= close_enough) return b;
    if (!std::isfinite(rise) || !std::isfinite(b.unsettled)) break;
    const double next = std::clamp(p + rise, 0.5 * p, 2 * p);
    follow(next - p);
    p = next;
  }
  return solve_bracketed(step);
}

Joint::Balance Joint::solve_bracketed(const Step& step) {
  ++searches_;
  double low = p_, high = p_;
  for (std::size_t j = 0; j < count_; ++j) {
    low = std::min(low, ports_[j].duct.p);
    high = std::max({high, ports_[j].duct.p, ports_[j].rest_pressure});
  }
  low *= 0.01;
  const auto residual = [&](double p) { return balance(p, step, true).residual; };
  try {
    for (int i = 0; i < 20 && residual(high) < 0; ++i) high *= 2;
    for (int i = 0; i < 20 && residual(low) > 0; ++i) low *= 0.1;
    if (!(residual(low) <= 0 && residual(high) >= 0)) fail("no pressure balances the flows of the joint", step);
    std::uintmax_t turns = 200;
    const auto root =
        boost::math::tools::toms748_solve(residual, low, high, boost::math::tools::eps_tolerance<double>(44), turns);
    return balance(0.5 * (root.first + root.second), step, true);
  } catch (const Error& e) {
    fail(e.message(), step);
  } catch (const std::exception&) {  // a residual that is not a number
    fail("no pressure balances the flows of the joint", step);
  }
}

void Joint::pass_gates(const Balance& b, const Step& step) {
  for (std::size_t i = 0; i < gates_.size(); ++i) {
    JointGate& gate = gates_[i];
    const GateLook& look = gate_looks_[i];
    gate.mass_flow = look.mass;
    if (look.mass == 0) continue;
    const Content flow =
        (step.dt * look.mass) * (look.mass > 0 ? Content{1, b.gas.h, b.gas.Y} : Content{1, look.h, look.Y});
    gate.passed += flow;
    content_ += -1.0 * flow;
    if (gate.sink) gate.sink->take_in(flow);
  }
}

}  // namespace pulsewright
