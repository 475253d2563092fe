#include "tests/solver/random_rig.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>
#include <numbers>

#include "solver/end_closed.hpp"
#include "solver/end_reservoir.hpp"
#include "solver/end_vessel.hpp"
#include "solver/end_wave.hpp"
#include "solver/joint.hpp"

namespace pulsewright {
namespace {

struct State {
  double p, T, Y;
};

State random_state(RandomNumbers& r) { return {r.spread(2e4, 1e6), r.spread(280, 1900), r.between(0, 1)}; }

NetworkOptions random_options(RandomNumbers& r) {
  NetworkOptions o;
  o.courant = r.between(0.4, 0.9);
  o.friction = std::array{NetworkOptions::Friction::none, NetworkOptions::Friction::rough_wall,
                          NetworkOptions::Friction::constant}[static_cast<std::size_t>(r.whole(0, 2))];
  o.darcy_factor = r.spread(0.005, 0.1);
  o.wall_heat = r.chance(0.5);
  return o;
}

DuctSpec random_duct(RandomNumbers& r, const Gas& gas, int number) {
  const int cells = r.whole(1, 40);
  const State s = random_state(r);
  const double rho = s.p / (gas_constant(gas, s.Y) * s.T), sound = sound_speed(gas, s.T, s.Y);
  const double u = r.chance(0.3) ? r.between(-1, 1) * sound : 0;
  DuctSpec d = straight_duct("d" + std::to_string(number), cells * r.spread(0.004, 0.02), r.spread(0.015, 0.08), cells,
                             {rho, u, s.p, s.Y});
  const double ratio = r.chance(0.5) ? r.spread(0.2, 5) : 1, bore_area = d.face_area.front();
  for (std::size_t i = 0; i < d.face_area.size(); ++i)
    d.face_area[i] = bore_area * std::pow(ratio, static_cast<double>(i) / cells);
  for (std::size_t i = 0; i < d.cells(); ++i) {
    d.cell_volume[i] = 0.5 * d.dx * (d.face_area[i] + d.face_area[i + 1]);
    d.hydraulic_diameter[i] = std::sqrt(4 / std::numbers::pi * d.cell_volume[i] / d.dx);
    d.roughness[i] = r.chance(0.5) ? 1e-4 : 0;
    d.loss_forward[i] = d.loss_backward[i] = r.chance(0.3) ? r.spread(0.1, 20) : 0;
    d.wall_temperature[i] = r.between(300, 1200);
  }
  return d;
}

std::array<double, 3> random_direction(RandomNumbers& r) {
  const double z = r.between(-1, 1), turn = r.between(0, 2 * std::numbers::pi), s = std::sqrt(1 - z * z);
  return {s * std::cos(turn), s * std::sin(turn), z};
}

std::vector<SignalPoint> random_signal(RandomNumbers& r) {
  std::vector<SignalPoint> series;
  double time = 0;
  for (int i = 0; i < 5; ++i)
    series.push_back({time += r.spread(1e-4, 3e-3), r.spread(5e4, 4e5), r.between(400, 1400)});
  return series;
}

double bore_area(double bore) { return std::numbers::pi / 4 * bore * bore; }

using EndMaker = std::unique_ptr<Element> (*)(RandomNumbers&, const Gas&);

Reservoir random_reservoir(RandomNumbers& r, const Gas& gas) {
  const State s = random_state(r);
  return make_reservoir(gas, s.p, s.T, s.Y);
}

constexpr EndMaker end_makers[] = {
    [](RandomNumbers&, const Gas&) -> std::unique_ptr<Element> { return std::make_unique<ClosedEnd>(); },
    [](RandomNumbers& r, const Gas& gas) { return open_end(random_reservoir(r, gas)); },
    [](RandomNumbers& r, const Gas& gas) { return supply_end(random_reservoir(r, gas)); },
    [](RandomNumbers& r, const Gas& gas) {
      return nozzle_end(random_reservoir(r, gas), bore_area(r.spread(0.005, 0.05)), r.between(0.6, 1));
    },
    [](RandomNumbers&, const Gas&) -> std::unique_ptr<Element> { return std::make_unique<AnechoicEnd>(); },
    [](RandomNumbers& r, const Gas&) -> std::unique_ptr<Element> {
      return std::make_unique<SignalEnd>(random_signal(r));
    },
    [](RandomNumbers& r, const Gas& gas) -> std::unique_ptr<Element> {
      const State s = random_state(r);
      return std::make_unique<Vessel>(
          VesselSpec{"vessel", r.spread(1e-4, 1), s.p, s.T, s.Y, bore_area(r.spread(0.005, 0.04)), r.between(0, 1e-3)},
          gas);
    },
};

void attach_joint(RandomNumbers& r, Network& network, const std::vector<DuctEnd>& ends) {
  const State s = random_state(r);
  JointSpec spec{.name = "joint", .volume = r.chance(0.3) ? 0 : r.spread(1e-6, 1e-3), .p = s.p, .T = s.T, .Y = s.Y};
  spec.law = r.chance(0.3) ? JointLaw::constant_pressure : JointLaw::momentum;
  for (std::size_t i = 0; i < ends.size(); ++i) spec.ports.push_back({random_direction(r), i == 0 ? 1.0 : 0.0});
  Joint& joint = network.attach(std::make_unique<Joint>(spec, network.gas()), ends);
  if (!r.chance(0.3)) return;
  const State air = random_state(r);
  joint.add_gate({.name = "gate",
                  .effective_area = r.spread(1e-6, 1e-3),
                  .n = random_direction(r),
                  .p = air.p,
                  .T = air.T,
                  .Y = air.Y});
}

}  // namespace

Network random_rig(RandomNumbers& r, const Gas& gas) {
  Network network(gas, random_options(r));
  const int ducts = r.whole(1, 8);
  std::vector<DuctEnd> ends;
  for (int i = 0; i < ducts; ++i) {
    network.add_duct(random_duct(r, gas, i));
    ends.push_back({i, Side::start});
    ends.push_back({i, Side::finish});
  }
  for (std::size_t i = ends.size(); i > 1; --i)
    std::swap(ends[i - 1], ends[static_cast<std::size_t>(r.whole(0, static_cast<int>(i) - 1))]);
  while (!ends.empty()) {
    const std::size_t together = std::min(ends.size(), static_cast<std::size_t>(r.chance(0.5) ? 1 : r.whole(2, 6)));
    const std::vector<DuctEnd> here(ends.end() - static_cast<std::ptrdiff_t>(together), ends.end());
    ends.resize(ends.size() - together);
    if (together > 1)
      attach_joint(r, network, here);
    else
      network.attach(end_makers[static_cast<std::size_t>(r.whole(0, std::size(end_makers) - 1))](r, gas), here);
  }
  network.start();
  return network;
}

}  // namespace pulsewright
