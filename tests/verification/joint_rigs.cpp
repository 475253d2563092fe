#include "tests/verification/joint_rigs.hpp"

#include <cmath>

#include "solver/wave.hpp"

namespace pulsewright {
namespace {

EndState end_state(const Beyond& b) {
  const double rho = b.p / (rig_R * b.T);
  return {rho, b.u, b.p, 0, b.T, rig_gamma, std::sqrt(rig_gamma * b.p / rho)};
}

double star_pressure(const EndState& a, const EndState& b) {
  double p = std::min(a.p, b.p);
  for (int turn = 0; turn < 60; ++turn) {
    const double rest = a.w + b.w - wave_slowdown(p, a) - wave_slowdown(p, b);
    const double to = std::max(0.1 * p, p + rest / (wave_slowdown_slope(p, a) + wave_slowdown_slope(p, b)));
    if (std::abs(to - p) < 1e-13 * p) return to;
    p = to;
  }
  return p;
}

/// Flux and face of a port from the gas in its face.
void set_face(Port& port, const EndState& face, const Gas& gas) {
  const double mass = face.rho * face.w, h0 = enthalpy(gas, face.T, face.Y) + 0.5 * face.w * face.w;
  port.flux = {mass, mass * face.w + face.p, mass * h0, mass * face.Y};
  port.face = face;
}

}  // namespace

Beyond simple_wave(double p) {
  const double ratio = std::pow(p / rig_p, (rig_gamma - 1) / (2 * rig_gamma));  // of sound speeds
  const double c0 = std::sqrt(rig_gamma * rig_R * rig_T);
  return {p, rig_T * ratio * ratio, 2 / (rig_gamma - 1) * c0 * (ratio - 1)};
}

void BeyondEnd::advance(std::span<Port> ports, const Step& step) {
  for (Port& port : ports) {
    const EndState duct = port.state, beyond = end_state(gas_(step.time + 0.5 * step.dt));
    const double p = star_pressure(duct, beyond);
    const bool toward_us = duct.w >= wave_slowdown(p, duct);
    EndState face = face_toward_element(p, toward_us ? duct : beyond);
    if (!toward_us) face.w = -face.w;
    set_face(port, face, step.gas);
    left_ += (step.dt * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
  }
}

void WallEnd::advance(std::span<Port> ports, const Step& step) {
  for (Port& port : ports) {
    EndState face = behind_wave(wave_pressure(0, port.state), port.state);
    face.w = 0;
    set_face(port, face, step.gas);
  }
}

void EntropyMeter::advance(std::span<Port> ports, const Step& step) {
  joint.advance(ports, step);
  for (const Port& port : ports) {
    const double cp = rig_R * rig_gamma / (rig_gamma - 1);
    const double s = cp * std::log(port.face.T / rig_T) - rig_R * std::log(port.face.p / rig_p);
    made -= step.dt * port.area * port.flux.mass * s;
  }
}

Star make_star(const JointSpec& spec, const std::vector<StarDuct>& ducts, double dx, double courant) {
  const Gas gas = perfect_gas(rig_gamma, rig_R);
  Star star{std::make_unique<Network>(gas, NetworkOptions{.courant = courant})};
  std::vector<DuctEnd> ends;
  for (const StarDuct& d : ducts) {
    const Primitive state{d.gas.p / (rig_R * d.gas.T), d.gas.u, d.gas.p, d.burned};
    const int cells = std::max(2, static_cast<int>(std::lround(d.length / dx)));
    ends.push_back({star.net->add_duct(straight_duct("duct", d.length, d.bore, cells, state)), Side::finish});
  }
  star.meter = &star.net->attach(std::make_unique<EntropyMeter>(spec, gas), ends);
  for (std::size_t i = 0; i < ducts.size(); ++i) {
    const DuctEnd far{ends[i].duct, Side::start};
    if (ducts[i].beyond)
      star.net->attach(std::make_unique<BeyondEnd>(ducts[i].beyond), {far});
    else
      star.net->attach(std::make_unique<WallEnd>(), {far});
  }
  star.net->start();
  return star;
}

JointSpec cone(int primaries, double angle_deg, JointLaw law) {
  JointSpec spec{.name = "merge", .law = law, .p = rig_p, .T = rig_T};
  const double a = angle_deg * std::numbers::pi / 180;
  for (int i = 0; i < primaries; ++i) {
    const double clock = 2 * std::numbers::pi * i / primaries;
    spec.ports.push_back({{-std::cos(a), std::sin(a) * std::cos(clock), std::sin(a) * std::sin(clock)}, 0});
  }
  spec.ports.push_back({{1, 0, 0}, 1});
  return spec;
}

std::vector<EndState> steady_faces(const JointSpec& spec, const std::vector<double>& areas,
                                   const std::vector<double>& speeds) {
  const Gas gas = perfect_gas(rig_gamma, rig_R);
  Joint joint(spec, gas);
  std::vector<Port> ports(areas.size());
  double inflow = 0;
  for (std::size_t i = 0; i < ports.size(); ++i) {
    ports[i].area = areas[i];
    const bool outlet = i + 1 == ports.size();
    ports[i].state = end_state({rig_p, rig_T, outlet ? -inflow / areas[i] : speeds[i]});
    if (!outlet) inflow += areas[i] * speeds[i];
  }
  for (int turn = 0; turn < 4000; ++turn) {
    joint.advance(ports, {0, 1e-6, gas});
    for (std::size_t i = 0; i < ports.size(); ++i) {
      const bool outlet = i + 1 == ports.size();
      ports[i].state = end_state(outlet ? Beyond{rig_p, ports[i].face.T, ports[i].face.w}
                                        : Beyond{ports[i].face.p, rig_T, speeds[i]});
    }
  }
  std::vector<EndState> faces;
  for (const Port& port : ports) faces.push_back(port.face);
  return faces;
}

}  // namespace pulsewright
