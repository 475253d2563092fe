#include "solver/throttle.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "solver/end_reservoir.hpp"
#include "solver/network.hpp"
#include "solver/orifice.hpp"
#include "tests/solver/end_gas.hpp"

namespace pulsewright {
namespace {

const Gas exhaust = perfect_gas(1.33, 287);
constexpr double pipe = 3e-3, dt = 4e-6;

EndState hot(double p, double w, double T = 1000) { return gas_at(exhaust, p, T, w, 1); }

std::vector<Port> passed(double jet, const EndState& a, const EndState& b) {
  Throttle throttle(jet);
  std::vector<Port> ports = {port_with(a, pipe), port_with(b, pipe)};
  for (int i = 0; i < 3; ++i) throttle.advance(ports, {0, dt, exhaust});
  return ports;
}

double total_pressure(const EndState& f) {
  return f.p * std::pow(1 + (f.gamma - 1) / 2 * f.w * f.w / (f.c * f.c), f.gamma / (f.gamma - 1));
}

// Incompressible Borda-Carnot: (A/jet - 1)^2 velocity heads. 2 %: the gas expands by a percent or two at these speeds.
TEST(Throttle, CostsWhatBordaAndCarnotSay) {
  for (double share : {0.8, 0.5, 0.25, 0.1}) {
    const auto ports = passed(share * pipe, hot(1.002e5, 1), hot(1.0e5, -1));
    const EndState &before = ports[0].face, &behind = ports[1].face;
    const double head = 0.5 * before.rho * before.w * before.w;
    const double loss = (total_pressure(before) - total_pressure(behind)) / head;
    EXPECT_NEAR(loss / std::pow(1 / share - 1, 2), 1, 0.02) << share;
  }
}

TEST(Throttle, AreaOfALossGivesThatLoss) {
  for (double loss : {0.2, 1.0, 18.7}) {
    const double jet = jet_area_of_loss(loss, pipe);
    EXPECT_NEAR(std::pow(pipe / jet - 1, 2), loss, 1e-12 * (1 + loss));
  }
}

// 1e-6: the orifice's own search.
TEST(Throttle, ChokesLikeAnOrifice) {
  const double jet = 4e-4;
  const auto ports = passed(jet, hot(4e5, 20), hot(1e5, 0));
  const EndState& f = ports[0].face;
  const double p0 = total_pressure(f), T0 = f.T * (1 + 0.33 / 2 * f.w * f.w / (f.c * f.c));
  EXPECT_NEAR(pipe * ports[0].flux.mass / (jet * p0 / std::sqrt(287 * T0) * flow_function(0, 1.33)), 1, 1e-6);
}

TEST(Throttle, AsWideAsThePipeLetsAWaveThrough) {
  const auto ports = passed(pipe, hot(1.5e5, 150), hot(1.2e5, -100));
  EXPECT_NEAR(ports[0].face.p / ports[1].face.p, 1, 1e-6);  // the search's own tolerance
  EXPECT_NEAR(ports[0].flux.mass / -ports[1].flux.mass, 1, 1e-14);
}

TEST(Throttle, WorksAlikeInBothDirections) {
  const EndState a = hot(1.8e5, 80), b = hot(1.1e5, -40, 700);
  const auto there = passed(1e-3, a, b), back = passed(1e-3, b, a);
  EXPECT_DOUBLE_EQ(there[0].flux.mass, back[1].flux.mass);
  EXPECT_DOUBLE_EQ(there[1].flux.momentum, back[0].flux.momentum);
}

// What one gives the other takes: to rounding, in any state.
TEST(Throttle, KeepsMassEnergyAndBurnedMassInAnyState) {
  std::mt19937 random(5);
  const auto between = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  const auto any = [&] {
    const double T = between(400, 1600);
    return gas_at(exhaust, std::pow(10, between(4.5, 6)), T, sound_speed(exhaust, T, 0.5) * between(-0.9, 0.9),
                  between(0, 1));
  };
  for (int i = 0; i < 2000; ++i) {
    Throttle throttle(pipe * between(0.001, 1.2));
    std::vector<Port> ports = {port_with(any(), pipe), port_with(any(), 1.4 * pipe)};
    throttle.advance(ports, {0, dt, exhaust});
    const Content a = content_through(ports[0], dt), b = content_through(ports[1], dt);
    ASSERT_NEAR(a.mass + b.mass, 0, 1e-14 * std::abs(a.mass)) << i;
    ASSERT_NEAR(a.energy + b.energy, 0, 1e-14 * std::abs(a.energy)) << i;
    ASSERT_NEAR(a.burned + b.burned, 0, 1e-14 * std::abs(a.mass)) << i;
    for (const Port& port : ports)
      ASSERT_TRUE(std::isfinite(port.flux.momentum) && port.face.p > 0 && port.face.T > 0) << i;
  }
}

// Total pressure only falls on the way through: the second law.
TEST(Throttle, NeverGivesMorePressureThanItTook) {
  for (double drop : {0.01, 0.3, 2.0})
    for (double share : {0.05, 0.4, 0.9}) {
      const auto ports = passed(share * pipe, hot(1e5 * (1 + drop), 30), hot(1e5, -20));
      EXPECT_LE(total_pressure(ports[1].face), total_pressure(ports[0].face) * (1 + 1e-9)) << drop << ' ' << share;
    }
}

// Supply, pipe, throttle, pipe, air: nothing is lost but rounding.
TEST(Throttle, InANetworkNothingIsLost) {
  Network network(exhaust);
  for (const char* name : {"before", "behind"})
    network.add_duct(straight_duct(name, 0.3, 0.06, 30, {1e5 / (287 * 900.0), 0, 1e5, 1}));
  network.attach(supply_end(make_reservoir(exhaust, 1.6e5, 1100, 1)), {{0, Side::start}});
  network.attach(std::make_unique<Throttle>(8e-4), {{0, Side::finish}, {1, Side::start}});
  network.attach(open_end(make_reservoir(exhaust, 1e5, 293, 0)), {{1, Side::finish}});
  network.start();
  const Content before = network.held();
  network.run_until(0.02);
  const Content lost = before - network.held() - network.left();
  EXPECT_NEAR(lost.mass / before.mass, 0, 1e-11);
  EXPECT_NEAR(lost.energy / before.energy, 0, 1e-11);
}

}  // namespace
}  // namespace pulsewright
