#include "models/turbine.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "models/nozzle_pair.hpp"
#include "shared/error.hpp"
#include "solver/wave.hpp"

namespace pulsewright {
namespace {

constexpr double flow_tolerance = 5e-7;  // of the flows; what is left over is paid back in the next step
constexpr double idle_flow = 1e-9;       // of a sonic flow through the rotor: below it the turbine counts as balanced
constexpr double widest_exit = 1e3;      // in rotor areas; wider costs nothing
constexpr int most_turns = 60;

// Total state of a face, gamma frozen.
TotalState total_state(const EndState& f, const Gas& gas) {
  const double g = f.gamma, mach2 = f.w * f.w / (f.c * f.c);
  const double T = temperature_from_enthalpy(gas, enthalpy(gas, f.T, f.Y) + f.w * f.w / 2, f.Y);
  return {f.p * std::pow(1 + (g - 1) / 2 * mach2, g / (g - 1)), T, f.Y};
}

double sonic_flow(const Reservoir& r, double area) { return area * r.p / std::sqrt(r.R * r.T); }

}  // namespace

TurbineTotals operator-(const TurbineTotals& a, const TurbineTotals& b) {
  return {a.shaft_work - b.shaft_work, a.forward_mass - b.forward_mass, a.outside_mass - b.outside_mass,
          a.outlet_pressure_time - b.outlet_pressure_time};
}

Turbine::Turbine(TurbineSpec spec, const Gas& gas)
    : spec_(std::move(spec)), air_(make_reservoir(gas, spec_.air_pressure, spec_.air_temperature, 0)) {
  if (!(spec_.scroll_throat > 0 && spec_.rotor > 0 && spec_.exit_area > 0))
    throw Error(ErrorKind::internal,
                fmt::format("turbine {}: throat {:g} m2, rotor {:g} m2, exit {:g} m2 must be above zero", spec_.name,
                            spec_.scroll_throat, spec_.rotor, spec_.exit_area));
  spec_.exit_area = std::min(spec_.exit_area, widest_exit * spec_.rotor);
}

void Turbine::advance(std::span<Port> ports, const Step& step) {
  if (!middle_) begin(ports, step.gas);
  find_middle_pressure(ports, step);
  leak(ports, step.gas);
  book(ports, step.dt);
  read(ports, step.gas);
}

void Turbine::begin(std::span<const Port> ports, const Gas& gas) {
  const EndState& first = ports[spec_.outlet_port == 0 ? 1 : 0].state;
  const double behind = spec_.outlet_port < 0 ? air_.p : ports[static_cast<std::size_t>(spec_.outlet_port)].state.p;
  middle_ = make_reservoir(gas, 0.5 * (first.p + behind), first.T, first.Y);
  slope_ = -(spec_.scroll_throat + spec_.rotor) / first.c;
}

// Secant turns from the last step's pressure; a turn that leaves the bracket halves it.
void Turbine::find_middle_pressure(std::span<Port> ports, const Step& step) {
  double lowest = spec_.outlet_port < 0 ? air_.p : std::numeric_limits<double>::infinity(), highest = 0;
  for (const Port& port : ports) lowest = std::min(lowest, port.state.p);
  lowest *= 1e-3;
  highest = spec_.outlet_port < 0 ? air_.p : 0;
  for (std::size_t i = 0; i < ports.size(); ++i) {
    rest_pressure_[i] = wave_pressure(0, ports[i].state);
    highest = std::max(highest, rest_pressure_[i]);
  }
  const double before = middle_->p;
  double p = std::clamp(before + trend_, lowest, highest), last_p = 0, last_surplus = 0;
  for (int turn = 0; turn < most_turns; ++turn) {
    const double s = surplus(p, ports, step);
    if (std::abs(s) <= flow_tolerance * scale_ + idle_flow * sonic_flow(*middle_, spec_.rotor) ||
        highest - lowest < 1e-13 * highest) {
      trend_ = std::clamp(p - before, -0.1 * p, 0.1 * p);
      return;
    }
    (s > 0 ? lowest : highest) = p;
    if (turn > 0 && (s - last_surplus) * (p - last_p) < 0) slope_ = (s - last_surplus) / (p - last_p);
    last_p = p, last_surplus = s;
    p -= s / slope_;
    if (!(p > lowest && p < highest)) p = 0.5 * (lowest + highest);
  }
  throw Error(ErrorKind::unphysical,
              fmt::format("no pressure before the wheel balances the flows at {:g} s: {:g} kg/s are left "
                          "over at {:g} bar",
                          step.time, last_surplus, last_p / 1e5),
              spec_.name);
}

// Equation   sum of throat flows = rotor flow. Throat: from the scroll's total state to the middle pressure; rotor: from
//            the middle gas at rest to the static pressure behind; inflows mix at constant enthalpy before any leaves
// Source     N. Watson and M. S. Janota, Turbocharging the Internal Combustion Engine, 1982 (two nozzles in series; from
//            memory)
// Symbols    surplus: kg/s that come in and do not leave, with what the last step left over
// Valid for  quasi-steady flow, both directions; the work per mass is that of the last step
// Tested by  tests/models/turbine_test.cpp
double Turbine::surplus(double pressure, std::span<Port> ports, const Step& step) {
  middle_->p = pressure;
  to_air_ = {};
  Content inflow = (1 / step.dt) * rest_;
  std::array<bool, max_scrolls + 1> comes_in{};
  for (std::size_t i = 0; i < ports.size(); ++i) {
    comes_in[i] = rest_pressure_[i] > pressure;
    if (!comes_in[i]) continue;
    flow_through_orifice(*middle_, area(i), step.gas, rest_pressure_[i], ports[i]);
    inflow += content_through(ports[i], 1);
  }
  if (spec_.outlet_port < 0 && air_.p > pressure) draw_from_air();
  mix(inflow - to_air_, step.gas);
  for (std::size_t i = 0; i < ports.size(); ++i) {
    if (comes_in[i]) continue;
    Reservoir gas_here = *middle_;
    if (is_outlet(i)) gas_here.h -= work_;
    flow_through_orifice(gas_here, area(i), step.gas, rest_pressure_[i], ports[i]);
  }
  if (spec_.outlet_port < 0 && air_.p <= pressure) blow_to_air(step.gas);
  double sum = rest_.mass / step.dt - to_air_.mass;
  scale_ = std::abs(to_air_.mass);
  for (const Port& port : ports) sum += port.area * port.flux.mass, scale_ += port.area * std::abs(port.flux.mass);
  return sum;
}

void Turbine::mix(const Content& inflow, const Gas& gas) {
  if (!(inflow.mass > idle_flow * sonic_flow(*middle_, spec_.rotor)))
    return;  // nothing comes in: the gas stays as it is
  const double h = inflow.energy / inflow.mass, Y = std::clamp(inflow.burned / inflow.mass, 0.0, 1.0);
  const double T = temperature_from_enthalpy(gas, h, Y);
  middle_ = Reservoir{middle_->p, T, Y, h, gas_constant(gas, Y), heat_ratio(gas, T, Y)};
}

void Turbine::blow_to_air(const Gas& gas) {
  const Reservoir& m = *middle_;
  const double h_out = m.h - work_, T_out = temperature_from_enthalpy(gas, h_out, m.Y);
  const PairFlow pair = pair_flow(air_.p / m.p, spec_.exit_area / rotor() * std::sqrt(m.T / T_out), m.gamma);
  const double flow = pair.flow * rotor() * m.p / std::sqrt(m.R * m.T);
  to_air_ = {flow, flow * h_out, flow * m.Y};
  reading_.outlet_pressure = pair.middle * m.p;
}

void Turbine::draw_from_air() {
  const PairFlow pair = pair_flow(middle_->p / air_.p, rotor() / spec_.exit_area, air_.gamma);
  const double flow = pair.flow * spec_.exit_area * air_.p / std::sqrt(air_.R * air_.T);
  to_air_ = {-flow, -flow * air_.h, 0};
  reading_.outlet_pressure = pair.middle * air_.p;
}

// Equation   |dp| = B m + K m^2: K from the orifice between the static pressures, B the pressure that drawing m moves in
//            both scrolls, sum of c/A
// Source     orifice: flow_function in solver/orifice.hpp; B: linear wave
// Symbols    m kg/s from the scroll of higher pressure to the other, without momentum along either
// Valid for  a gap that is small beside the scrolls' throats
// Tested by  tests/models/turbine_test.cpp
void Turbine::leak(std::span<Port> ports, const Gas& gas) const {
  if (!(spec_.tongue_leak > 0) || ports.size() < (spec_.outlet_port < 0 ? 2U : 3U)) return;
  const std::size_t first = spec_.outlet_port == 0 ? 1 : 0,
                    second = spec_.outlet_port == static_cast<int>(first) + 1 ? first + 2 : first + 1;
  Port& high = ports[first].face.p > ports[second].face.p ? ports[first] : ports[second];
  Port& low = &high == &ports[first] ? ports[second] : ports[first];
  const EndState& from = high.face;
  const double dp = from.p - low.face.p, gap = spec_.tongue_leak * spec_.scroll_throat;
  if (!(dp > 1e-9 * from.p)) return;
  const double alone = gap * from.rho * std::sqrt(from.p / from.rho) * flow_function(low.face.p / from.p, from.gamma);
  const double b = from.c / high.area + low.face.c / low.area;
  const double flow = 2 * dp / (b + std::sqrt(b * b + 4 * dp / (alone * alone) * dp));
  const double h = enthalpy(gas, from.T, from.Y) + from.w * from.w / 2;
  high.flux.mass += flow / high.area, high.flux.energy += flow * h / high.area,
      high.flux.burned += flow * from.Y / high.area;
  low.flux.mass -= flow / low.area, low.flux.energy -= flow * h / low.area, low.flux.burned -= flow * from.Y / low.area;
}

void Turbine::book(std::span<const Port> ports, double dt) {
  for (const Port& port : ports) rest_ += content_through(port, dt);
  reading_.flow = to_air_.mass;
  if (spec_.outlet_port >= 0) {
    const Port& outlet = ports[static_cast<std::size_t>(spec_.outlet_port)];
    reading_.flow = -outlet.area * outlet.flux.mass;
    reading_.outlet_pressure = outlet.face.p;
  }
  reading_.power_shaft = std::max(reading_.flow, 0.0) * work_;
  const Content gone = dt * (to_air_ + Content{0, reading_.power_shaft, 0});
  rest_ = rest_ - gone;
  left_ += gone;
  totals_.shaft_work += dt * reading_.power_shaft;
  totals_.forward_mass += dt * std::max(reading_.flow, 0.0);
  if (!reading_.inside_map) totals_.outside_mass += dt * std::max(reading_.flow, 0.0);
  totals_.outlet_pressure_time += dt * reading_.outlet_pressure;
}

// The scrolls' drops weighted by their flows give the wheel's; its work is taken from the gas in the next step.
void Turbine::read(std::span<const Port> ports, const Gas& gas) {
  reading_.middle_pressure = middle_->p;
  double inflow = 0, drop = 0;
  TotalState inlet{};  // weighted alike
  std::size_t k = 0;
  for (std::size_t i = 0; i < ports.size() && k < max_scrolls; ++i) {
    if (is_outlet(i)) continue;
    auto& scroll = reading_.scrolls[k++];
    scroll = {ports[i].area * ports[i].flux.mass, total_state(ports[i].face, gas)};
    if (scroll.flow <= 0) continue;
    inflow += scroll.flow;
    drop += scroll.flow * isentropic_drop(gas, scroll.inlet, reading_.outlet_pressure);
    inlet = {inlet.p + scroll.flow * scroll.inlet.p, inlet.T + scroll.flow * scroll.inlet.T, 0};
  }
  drop = inflow > 0 ? drop / inflow : 0;
  const double peak = drop > 0 ? peak_efficiency({inlet.p / inflow, inlet.T / inflow, 0}) : spec_.peak_efficiency;
  const double admission = k == 2 ? partial_admission(reading_.scrolls[0].flow, reading_.scrolls[1].flow) : 1;
  const double efficiency = turbine_efficiency(peak, tip_speed_, spouting_velocity(drop));
  reading_.efficiency = admission * (spec_.map ? std::min(efficiency, spec_.map->best_efficiency()) : efficiency);
  reading_.power_available = std::max(reading_.flow, 0.0) * drop;
  work_ = reading_.efficiency * drop;
}

// With a map: what its point for this ratio and speed makes of the nozzles, and of the parabola; for the next step.
double Turbine::peak_efficiency(const TotalState& inlet) {
  if (!spec_.map) return spec_.peak_efficiency;
  const TurbineMap::Answer answer = spec_.map->at(tip_speed_, inlet.T, inlet.p / reading_.outlet_pressure);
  reading_.area_scale = answer.area;
  reading_.inside_map = answer.inside;
  return answer.efficiency;
}

}  // namespace pulsewright
