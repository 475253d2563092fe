#include "tests/verification/joint_rigs.hpp"

#include <cmath>

#include "solver/end_closed.hpp"

namespace pulsewright {
namespace {

EndState end_state(const DuctGas& gas) {
  const double rho = gas.p / (rig_R * gas.T);
  return {rho, gas.u, gas.p, gas.Y, gas.T, rig_gamma, std::sqrt(rig_gamma * gas.p / rho)};
}

std::unique_ptr<Element> far_end(const StarDuct& duct) {
  if (duct.far == StarDuct::Far::wall) return std::make_unique<ClosedEnd>();
  if (duct.signal.empty()) return std::make_unique<AnechoicEnd>();
  return std::make_unique<SignalEnd>(duct.signal);
}

}  // namespace

std::vector<SignalPoint> pulse_signal(double height, double length) {
  std::vector<SignalPoint> series;
  constexpr int rows = 400;  // linear between them: 1e-5 of the height
  for (int i = 0; i <= rows; ++i) {
    const double p = rig_p + height * std::sin(std::numbers::pi * i / rows);
    series.push_back({length * i / rows, p, rig_T * std::pow(p / rig_p, (rig_gamma - 1) / rig_gamma)});
  }
  return series;
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
    const Primitive state{d.gas.p / (rig_R * d.gas.T), d.gas.u, d.gas.p, d.gas.Y};
    const int cells = std::max(2, static_cast<int>(std::lround(d.length / dx)));
    ends.push_back({star.net->add_duct(straight_duct("duct", d.length, d.bore, cells, state)), Side::finish});
  }
  star.meter = &star.net->attach(std::make_unique<EntropyMeter>(spec, gas), ends);
  for (std::size_t i = 0; i < ducts.size(); ++i) star.net->attach(far_end(ducts[i]), {{ends[i].duct, Side::start}});
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
      ports[i].state = end_state(outlet ? DuctGas{rig_p, ports[i].face.T, ports[i].face.w}
                                        : DuctGas{ports[i].face.p, rig_T, speeds[i]});
    }
  }
  std::vector<EndState> faces;
  for (const Port& port : ports) faces.push_back(port.face);
  return faces;
}

}  // namespace pulsewright
