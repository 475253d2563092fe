#include "solver/throttle.hpp"

#include <algorithm>
#include <cmath>

#include "solver/orifice.hpp"
#include "solver/root.hpp"
#include "solver/wave.hpp"

namespace pulsewright {
namespace {

constexpr int most_turns = 40;
constexpr double fine = 1e-7;  // of the pressure difference

/// What passes: found at the port that gives, taken by the other.
struct Stream {
  double mass, h0, Y;  // kg/s, J/kg
  double jet_speed;    // m/s
};

Stream stream_out(double jet_pressure, double area, const Gas& gas, Port& from) {
  const Reservoir jet{jet_pressure, from.state.T, from.state.Y, 0, 0, from.state.gamma};  // only its pressure counts
  const double mass = flow_through_orifice(jet, area, gas, from);
  const EndState& f = from.face;
  if (!(mass > 0)) return {0, enthalpy(gas, f.T, f.Y), f.Y, 0};
  const double g = f.gamma, heat = (g - 1) / 2 * f.w * f.w / (f.c * f.c), total = 1 + heat;  // T0/T
  const double ratio = std::max(jet_pressure / (f.p * std::pow(total, g / (g - 1))), critical_pressure_ratio(g));
  const double c0_squared = f.c * f.c * total;
  const double speed = std::sqrt(std::max(0.0, 2 / (g - 1) * c0_squared * (1 - std::pow(ratio, (g - 1) / g))));
  return {mass, from.flux.energy / from.flux.mass, f.Y, speed};
}

// Equation   rho U A = m, h(T) + U^2/2 = h0, p by the exact wave at velocity U; U at most sonic, then p carries the mass
// Source     as Inflow in solver/orifice.cpp
// Symbols    U velocity into the duct m/s; m kg/s; h0 J/kg of the stream
// Valid for  m >= 0
// Tested by  tests/solver/throttle_test.cpp
void take(const Stream& s, const Gas& gas, Port& into) {
  const EndState& d = into.state;
  const double R = gas_constant(gas, s.Y);
  const auto temperature = [&](double u) { return temperature_from_enthalpy(gas, s.h0 - u * u / 2, s.Y); };
  const double T0 = temperature(0), g = heat_ratio(gas, T0, s.Y), sonic = std::sqrt(2 * g / (g + 1) * R * T0);
  const auto lack = [&](double u) -> Slope {
    const EndState b = brought_to(-u, d);
    const double T = temperature(u), carried = into.area * b.p * u / (R * T);
    return {s.mass - carried, -into.area / (R * T) * (b.p + b.rho * b.c * u)};
  };
  double u = 0;
  if (s.mass > 0) u = lack(sonic).value >= 0 ? sonic : falling_root(lack, 0, sonic, -into.face.w, 1e-7 * sonic);
  const double T = temperature(u);
  const double p = u > 0 ? s.mass * R * T / (into.area * u) : brought_to(0, d).p;
  into.face = {p / (R * T), -u, p, s.Y, T, heat_ratio(gas, T, s.Y), sound_speed(gas, T, s.Y)};
  const double density = s.mass / into.area;  // of the flow, kg/(s m2)
  into.flux = {-density, density * u + p, -density * s.h0, -density * s.Y};
}

}  // namespace

// Equation   p_jet = p - m (v_jet - U)/A: momentum from the jet to the duct behind; jet isentropic from the total state of
//            the duct before, not below its critical pressure
// Source     Borda-Carnot for a compressible jet: A. H. Shapiro, Compressible Fluid Flow I, 1953, chapter 5
// Symbols    m kg/s; v_jet, U velocities of the jet and behind m/s; p static behind Pa; A of the duct behind m2
// Valid for  both directions; choked: the jet's pressure no longer matters
// Tested by  tests/solver/throttle_test.cpp
void Throttle::advance(std::span<Port> ports, const Step& step) {
  const double rest[] = {wave_pressure(0, ports[0].state), wave_pressure(0, ports[1].state)};
  Port &from = ports[rest[0] >= rest[1] ? 0 : 1], &into = ports[rest[0] >= rest[1] ? 1 : 0];
  const double high = std::max(rest[0], rest[1]), drop = high - std::min(rest[0], rest[1]);
  if (!(drop > 1e-12 * high)) return close_port(from), close_port(into);
  // The jet's pressure lies below the driving one and, where the duct behind slows it down, below that one's too.
  double above = high, below = 0.02 * high, p = std::clamp(high - jet_ * drop, below, above);
  double last_p = 0, last_excess = 0;
  for (int turn = 0; turn < most_turns; ++turn) {
    const Stream s = stream_out(p, area_, step.gas, from);
    take(s, step.gas, into);
    const double excess = p - into.face.p + s.mass * (s.jet_speed + into.face.w) / into.area;
    if (std::abs(excess) <= fine * drop || above - below <= fine * drop) break;
    (excess > 0 ? above : below) = p;
    const double secant = turn > 0 ? p - excess * (p - last_p) / (excess - last_excess) : p - excess;
    last_p = p, last_excess = excess;
    p = secant > below && secant < above ? secant : 0.5 * (below + above);
  }
  jet_ = (high - p) / drop;
}

double jet_area_of_loss(double loss, double area) { return area / (1 + std::sqrt(std::max(loss, 0.0))); }

}  // namespace pulsewright
