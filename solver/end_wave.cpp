#include "solver/end_wave.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "shared/error.hpp"
#include "solver/gas.hpp"
#include "solver/orifice.hpp"
#include "solver/root.hpp"
#include "solver/wave.hpp"

namespace pulsewright {
namespace {

// Of the sound speed: the echo of the end must stay below any echo of interest.
constexpr double speed_tolerance = 1e-10;

// The gas outside brought to velocity w by a simple wave that runs away from the duct.
EndState simple_wave_outside(double w, const EndState& out) {
  const double g = out.gamma, ratio = std::max(1e-3, 1 + (g - 1) / 2 * (w - out.w) / out.c);
  EndState s = out;
  s.w = w;
  s.c = out.c * ratio;
  s.T = out.T * ratio * ratio;
  s.p = out.p * std::pow(ratio, 2 * g / (g - 1));
  s.rho = out.rho * (s.p / out.p) / (ratio * ratio);
  return s;
}

// Velocity between two simple waves, exact for one heat ratio and no shock: the starting point.
double two_simple_waves(const EndState& d, const EndState& out) {
  const double g = 0.5 * (d.gamma + out.gamma), h = (g - 1) / 2;
  const double z = std::pow(out.p / d.p, (g - 1) / (2 * g));
  return (1 - z + h * (d.w / d.c + z * out.w / out.c)) / (h * (1 / d.c + z / out.c));
}

// Equation   p_wave(w*; duct) = p_out (1 + (g-1)/2 (w* - w_out)/c_out)^(2g/(g-1))
// Source     duct's side: exact wave (solver/wave.hpp); outside: simple wave, L. D. Landau and E. M. Lifshitz, Fluid
//            Mechanics, 2nd ed., 1987, section 101
// Symbols    w* velocity of the contact, toward the element, m/s; index out: the gas outside
// Valid for  any two states; two gases that part leave near-vacuum between them
// Tested by  tests/solver/end_wave_test.cpp
double contact_velocity(const EndState& d, const EndState& out) {
  const auto f = [&](double w) -> Slope {
    const EndState a = brought_to(w, d), b = simple_wave_outside(w, out);
    return {a.p - b.p, -a.rho * a.c - b.rho * b.c};
  };
  const double lowest = out.w - 2 * out.c / (out.gamma - 1), highest = d.w + 2 * d.c / (d.gamma - 1);
  if (lowest >= highest) return 0.5 * (lowest + highest);
  return falling_root(f, lowest, highest, two_simple_waves(d, out), speed_tolerance * d.c);
}

// Gas from outside in the end face, flowing into the duct: supersonic as it comes, in the fan, or behind the wave that
// leaves.
EndState face_from_outside(double w, const EndState& out) {
  if (out.w + out.c <= 0) return out;
  const EndState s = simple_wave_outside(w, out);
  if (s.w + s.c >= 0) return s;
  const double g = out.gamma;
  return simple_wave_outside(-2 / (g + 1) * (out.c - (g - 1) / 2 * out.w), out);
}

}  // namespace

void WaveEnd::advance(std::span<Port> ports, const Step& step) {
  Port& port = ports[0];
  if (!at_start_) at_start_ = port.state;
  const EndState out = outside(*at_start_, step);
  const double w = contact_velocity(port.state, out);
  port.face = w >= 0 ? face_toward_element(wave_pressure(w, port.state), port.state) : face_from_outside(w, out);
  port.flux = flux_of(port.face, step.gas);
  left_ += content_through(port, step.dt);
}

SignalEnd::SignalEnd(std::vector<SignalPoint> series) : series_(std::move(series)) {
  if (series_.empty()) throw Error(ErrorKind::case_file, "the signal has no rows");
  for (std::size_t i = 0; i < series_.size(); ++i) {
    const SignalPoint& s = series_[i];
    const bool rises = i == 0 || s.time > series_[i - 1].time;
    if (!rises || !(s.pressure > 0) || !(s.temperature > 0) || !std::isfinite(s.pressure + s.temperature + s.time))
      throw Error(ErrorKind::case_file, "row " + std::to_string(i + 1) +
                                            " of the signal: times must rise, pressure and temperature be above zero");
  }
}

SignalPoint SignalEnd::at(double time) const {
  const auto next = std::upper_bound(series_.begin(), series_.end(), time,
                                     [](double t, const SignalPoint& point) { return t < point.time; });
  if (next == series_.begin()) return series_.front();
  const SignalPoint& a = *(next - 1);
  if (next == series_.end()) return a;
  const double share = (time - a.time) / (next->time - a.time);
  return {time, a.pressure + share * (next->pressure - a.pressure),
          a.temperature + share * (next->temperature - a.temperature)};
}

// Equation   w = w_0 - 2c/(g-1) (1 - (p_0/p)^((g-1)/2g)): the velocity in a simple wave that runs into the duct
// Source     Landau and Lifshitz 1987, section 101
// Symbols    p, c in the wave; index 0 the gas at the duct's end at the start; velocities toward the element
// Valid for  a wave that has not broken; a temperature off the isentrope of the start counts as gas of other entropy
// Tested by  tests/solver/end_wave_test.cpp
EndState SignalEnd::outside(const EndState& start, const Step& step) const {
  const SignalPoint now = at(step.time + step.dt / 2);
  const double Y = start.Y, T = now.temperature, g = heat_ratio(step.gas, T, Y), c = sound_speed(step.gas, T, Y);
  const double pushed = 2 * c / (g - 1) * (1 - std::pow(start.p / now.pressure, (g - 1) / (2 * g)));
  return {now.pressure / (gas_constant(step.gas, Y) * T), start.w - pushed, now.pressure, Y, T, g, c};
}

}  // namespace pulsewright
