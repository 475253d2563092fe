// A closed network of ducts and joints keeps its mass, energy and burned mass.

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>

#include "solver/end_closed.hpp"
#include "solver/joint.hpp"
#include "solver/network.hpp"

namespace pulsewright {
namespace {

/// Four shut primaries of two temperatures and pressures into a collector, a tapered outlet to a second joint, and from
/// there a loop duct that leaves it and comes back.
Network closed_manifold(const Gas& gas, double volume, JointLaw law) {
  NetworkOptions options;
  options.friction = NetworkOptions::Friction::constant;
  options.darcy_factor = 0.02;
  Network network(gas, options);
  for (int i = 0; i < 4; ++i) {
    const double T = i % 2 ? 500 : 1200, p = i == 0 ? 3e5 : 1e5, Y = i % 2 ? 0.1 : 1;
    network.add_duct(straight_duct("primary", 0.2 + 0.03 * i, 0.038, 10 + i, {p / (287 * T), 0, p, Y}));
  }
  DuctSpec outlet = straight_duct("outlet", 0.3, 0.05, 15, {1e5 / (287 * 700), 0, 1e5, 0.5});
  for (std::size_t i = 0; i < outlet.face_area.size(); ++i) outlet.face_area[i] *= 1 + 0.05 * static_cast<double>(i);
  for (std::size_t i = 0; i < outlet.cells(); ++i)
    outlet.cell_volume[i] = 0.5 * outlet.dx * (outlet.face_area[i] + outlet.face_area[i + 1]);
  const int out = network.add_duct(outlet);
  const int loop = network.add_duct(straight_duct("loop", 0.4, 0.03, 20, {1e5 / (287 * 300), 0, 1e5, 0}));

  JointSpec merge{.name = "merge", .volume = volume, .law = law, .p = 1e5, .T = 700, .Y = 0.5};
  std::vector<DuctEnd> ends;
  for (int i = 0; i < 4; ++i) {
    const double turn = i * std::numbers::pi / 2, angle = 0.3;
    merge.ports.push_back({{-std::cos(angle), std::sin(angle) * std::cos(turn), std::sin(angle) * std::sin(turn)}, 0});
    ends.push_back({i, Side::finish});
    network.attach(std::make_unique<ClosedEnd>(), {{i, Side::start}});
  }
  merge.ports.push_back({{1, 0, 0}, 1});
  ends.push_back({out, Side::start});
  network.attach(std::make_unique<Joint>(merge, gas), ends);

  JointSpec tee{.name = "tee", .volume = volume, .law = law, .p = 1e5, .T = 700, .Y = 0.5};
  tee.ports = {{{-1, 0, 0}, 0}, {{1, 0, 0}, 1}, {{0, 1, 0}, 0}};
  network.attach(std::make_unique<Joint>(tee, gas), {{out, Side::finish}, {loop, Side::start}, {loop, Side::finish}});
  network.start();
  return network;
}

/// 1e-12 over 20 000 steps: rounding alone; any leak by scheme or search would add up to far more.
void keeps_its_content(const Gas& gas, double volume, JointLaw law) {
  Network network = closed_manifold(gas, volume, law);
  const Content before = network.held();
  double worst_mass = 0, worst_energy = 0, worst_burned = 0;
  for (int k = 0; k < 20000; ++k) {
    network.step(network.allowed_step());
    if (k % 100 && k != 19999) continue;
    const Content change = network.held() - before;
    worst_mass = std::max(worst_mass, std::abs(change.mass / before.mass));
    worst_energy = std::max(worst_energy, std::abs(change.energy / before.energy));
    worst_burned = std::max(worst_burned, std::abs(change.burned / before.burned));
  }
  EXPECT_LE(worst_mass, 1e-12);
  EXPECT_LE(worst_energy, 1e-12);
  EXPECT_LE(worst_burned, 1e-12);
}

TEST(ClosedNetwork, KeepsItsContentWithMomentumJoints) {
  keeps_its_content(perfect_gas(1.33, 287), 5e-5, JointLaw::momentum);
}

TEST(ClosedNetwork, KeepsItsContentWithJointsWithoutVolume) {
  keeps_its_content(perfect_gas(1.33, 287), 0, JointLaw::momentum);
}

TEST(ClosedNetwork, KeepsItsContentWithConstantPressureJoints) {
  keeps_its_content(perfect_gas(1.33, 287), 5e-5, JointLaw::constant_pressure);
}

TEST(ClosedNetwork, KeepsItsContentInTheMixtureOfAirAndBurnedGas) {
  keeps_its_content(mixture_gas(known_fuels().front(), 1), 5e-5, JointLaw::momentum);
}

}  // namespace
}  // namespace pulsewright
