#include "solver/sweep.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>

#include "solver/network.hpp"
#include "solver/wave.hpp"

namespace pulsewright {
namespace {

struct Wall : Element {
  void advance(std::span<Port> ports, const Step&) override {
    for (Port& port : ports) {
      const double p = wave_pressure(0, port.state);
      port.flux = {0, p, 0, 0};
      port.face = behind_wave(p, port.state);
    }
  }
};

// A bang in the middle of a closed tapered duct.
std::unique_ptr<Network> bang(const Sweep& sweep) {
  auto net = std::make_unique<Network>(perfect_gas(1.4, 287));
  DuctSpec spec = straight_duct("tube", 1, 0.05, 100, {1.2, 0, 1e5, 0});
  for (std::size_t i = 40; i < 60; ++i) spec.initial[i] = {2.4, 0, 4e5, 1};
  const int duct = net->add_duct(spec);
  net->attach(std::make_unique<Wall>(), {{duct, Side::start}});
  net->attach(std::make_unique<Wall>(), {{duct, Side::finish}});
  net->use_sweep(sweep);
  net->start();
  net->run_until(2e-3);
  return net;
}

// 1e-9: the builds differ in fused multiply-adds only; shocks amplify the rounding by some powers of ten.
TEST(Sweep, EveryBuildGivesTheSameFlow) {
  const auto plain = bang(*available_sweeps().back());
  for (const Sweep* sweep : available_sweeps()) {
    const auto net = bang(*sweep);
    for (std::size_t i = 0; i < 100; ++i) EXPECT_NEAR(plain->cell(0, i).p / net->cell(0, i).p, 1, 1e-9) << sweep->name;
  }
}

TEST(Sweep, MirrorImageStaysAMirrorImage) {
  const auto net = bang(pick_sweep());
  for (std::size_t i = 0; i < 50; ++i) EXPECT_NEAR(net->cell(0, i).p / net->cell(0, 99 - i).p, 1, 1e-9);
}

// Rounding only: a sum of some hundred cells over some hundred steps.
TEST(Sweep, ClosedDuctKeepsMassEnergyAndBurnedMass) {
  Network fresh(perfect_gas(1.4, 287));
  const auto net = bang(pick_sweep());
  const double area = 3.14159265358979323846 / 4 * 0.05 * 0.05;
  EXPECT_NEAR(net->held().mass / (area * (0.8 * 1.2 + 0.2 * 2.4)), 1, 1e-12);
  EXPECT_NEAR(net->held().energy / (area * (0.8 * 1e5 + 0.2 * 4e5) / 0.4), 1, 1e-12);
  EXPECT_NEAR(net->held().burned / (area * 0.2 * 2.4), 1, 1e-12);
}

// A shock of pressure ratio 8 runs into gas at rest before a wall: until it is there nothing moves there. 0.1 %: the shock's own width.
TEST(Sweep, AShockThrowsNoShadowAheadOntoAnEnd) {
  Network net(perfect_gas(1.4, 287));
  DuctSpec spec = straight_duct("tube", 0.5, 0.05, 100, {1.2, 0, 1e5, 0});
  for (std::size_t i = 0; i < 40; ++i) spec.initial[i] = {12, 0, 4e6, 0};
  const int duct = net.add_duct(spec);
  net.attach(std::make_unique<Wall>(), {{duct, Side::start}});
  net.attach(std::make_unique<Wall>(), {{duct, Side::finish}});
  net.start();
  double lowest = 1e5;
  while (net.cell(duct, 99).p < 2e5) {
    net.step(net.allowed_step());
    lowest = std::min({lowest, net.cell(duct, 99).p, net.cell(duct, 98).p});
  }
  EXPECT_GT(lowest, 0.999e5);
}

}  // namespace
}  // namespace pulsewright
