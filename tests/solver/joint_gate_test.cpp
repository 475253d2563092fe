#include <gtest/gtest.h>

#include <cmath>

#include "solver/joint.hpp"

namespace pulsewright {
namespace {

const Gas hot = perfect_gas(1.33, 287);

Port duct_at(double p, double w, double area = 1e-3) {
  Port port{};
  const double rho = p / (287 * 900);
  port.state = {rho, w, p, 1, 900, 1.33, std::sqrt(1.33 * p / rho)};
  port.area = area;
  return port;
}

JointSpec tee(std::string name, double p, double volume) {
  JointSpec spec{.name = std::move(name), .volume = volume, .p = p, .T = 900, .Y = 1};
  spec.ports = {{{-1, 0, 0}, 0}, {{1, 0, 0}, 1}};
  return spec;
}

// Choked flow function sqrt(g) (2/(g+1))^((g+1)/(2(g-1))) = 0.6847315 (1.4), 0.6726284 (1.33), 0.6672624 (1.3): J. B.
// Heywood, Internal Combustion Engine Fundamentals, 1988, appendix C, evaluated; half of the last printed digit.
TEST(Orifice, ChokedFlowFunctionIsTheTextbooks) {
  const double expected[][2] = {{1.4, 0.6847315}, {1.33, 0.6726284}, {1.3, 0.6672624}};
  for (auto [g, value] : expected) {
    const OrificeFlow flow = orifice_flow({4e5, 1000, 287, g}, {1e5, 293, 287, 1.4});
    EXPECT_NEAR(flow.mass * std::sqrt(287 * 1000.0) / 4e5, value, 5e-8);
  }
}

TEST(Orifice, FlowIsContinuousAndItsSlopeTheDerivative) {
  const OrificeSide out{1e5, 300, 287, 1.4};
  double before = orifice_flow({0.5e5, 900, 287, 1.33}, out).mass;
  for (double p = 0.501e5; p < 2.5e5; p += 100) {
    const OrificeFlow flow = orifice_flow({p, 900, 287, 1.33}, out);
    EXPECT_GE(flow.mass, before);
    EXPECT_LT(flow.mass - before, 5);  // of about 200 kg/(m2 s): no jump
    const auto at = [&](double q) { return orifice_flow({q, 900, 287, 1.33}, out).mass; };
    const bool kink =
        (at(p + 1) - at(p)) / (at(p) - at(p - 1)) > 1.02 || (at(p + 1) - at(p)) / (at(p) - at(p - 1)) < 0.98;
    if (!kink) {
      EXPECT_NEAR(flow.slope, (at(p + 1) - at(p - 1)) / 2, 1e-6);  // of 1e-3; the difference is 1e-5 wide
    }
    before = flow.mass;
  }
}

TEST(JointGate, LetsOutAChokedFlowAtTheJointsTotalTemperature) {
  Joint joint(tee("merge", 3e5, 4e-5), hot);
  joint.add_gate({.name = "gate", .effective_area = 2e-4, .n = {0, 1, 0}, .p = 1e5});
  std::vector<Port> ports{duct_at(3e5, 60), duct_at(3e5, -30)};
  for (int step = 0; step < 4000; ++step) joint.advance(ports, {0, 5e-6, hot});
  const double choked = 2e-4 * joint.pressure() / std::sqrt(287 * joint.temperature()) * 0.6726284;
  EXPECT_NEAR(joint.gate(0).mass_flow / choked, 1, 1e-6);  // settled: the step's start and end are alike
  EXPECT_NEAR(joint.left().energy / joint.left().mass / (joint.enthalpy()), 1, 1e-2);
}

// Sums of 3000 steps against each other: rounding.
// Saint-Venant and Wantzel's formula at a ratio that does not choke, written out; settled, so only rounding and the
// search's 4e-8 are left. No stream points at the gate: its total pressure is the joint's.
TEST(JointGate, LetsOutAnUnchokedFlowByTheOrificeFormula) {
  Joint joint(tee("merge", 1.6e5, 4e-5), hot);
  joint.add_gate({.name = "gate", .effective_area = 2e-4, .n = {0, 1, 0}, .p = 1.3e5});
  std::vector<Port> ports{duct_at(1.6e5, 40), duct_at(1.6e5, -20)};
  for (int step = 0; step < 4000; ++step) joint.advance(ports, {0, 5e-6, hot});
  const double g = 1.33, r = 1.3e5 / joint.pressure();
  const double formula = 2e-4 * joint.pressure() / std::sqrt(287 * joint.temperature()) *
                         std::sqrt(2 * g / (g - 1) * (std::pow(r, 2 / g) - std::pow(r, (g + 1) / g)));
  EXPECT_NEAR(joint.gate(0).mass_flow / formula, 1, 1e-6);
}

TEST(JointGate, KnowsThePressuresOnItsValveOpenAndShut) {
  for (const double area : {0.0, 1e-5}) {
    Joint joint(tee("merge", 2e5, 4e-5), hot);
    joint.add_gate({.name = "gate", .effective_area = area, .n = {1, 0, 0}, .p = 1.2e5});
    std::vector<Port> ports{duct_at(2e5, 200), duct_at(2e5, -200)};
    for (int step = 0; step < 4000; ++step) joint.advance(ports, {0, 5e-6, hot});
    const double head = 0.5 * joint.pressure() / (287 * joint.temperature()) * 200 * 200;
    EXPECT_NEAR((joint.gate(0).total_pressure - joint.pressure()) / head, 1,
                0.05);  // v settles near the stream's 200 m/s
    EXPECT_EQ(joint.gate(0).behind, 1.2e5);
  }
}

// The simple law has one pressure and no directions.
TEST(JointGate, KnowsNoHeadUnderTheLawOfConstantPressure) {
  JointSpec spec = tee("merge", 2e5, 4e-5);
  spec.law = JointLaw::constant_pressure;
  Joint joint(spec, hot);
  joint.add_gate({.name = "gate", .effective_area = 1e-5, .n = {1, 0, 0}, .p = 1e5});
  std::vector<Port> ports{duct_at(2e5, 200), duct_at(2e5, -200)};
  double before = 0;
  for (int step = 0; step < 100; ++step) {
    before = joint.pressure();
    joint.advance(ports, {0, 5e-6, hot});
  }
  EXPECT_EQ(joint.gate(0).total_pressure, before);
}

// A stream near the speed of sound counts with 0.9 of it, as at every outlet.
TEST(JointGate, HeadOfAFastStreamIsCapped) {
  Joint joint(tee("merge", 2e5, 4e-5), hot);
  joint.add_gate({.name = "gate", .effective_area = 1e-5, .n = {1, 0, 0}, .p = 1e5});
  std::vector<Port> ports{duct_at(4e5, 560), duct_at(1e5, -500)};
  double highest = 0;
  for (int step = 0; step < 400; ++step) {
    const double p = joint.pressure();
    joint.advance(ports, {0, 5e-6, hot});
    highest = std::max(highest, joint.gate(0).total_pressure / p - 1);
  }
  EXPECT_LE(highest, 0.5 * 0.81 * 1.33 + 1e-12);  // rho v^2/2 over p at 0.9 of the speed of sound
  EXPECT_GT(highest, 0.4);
}

TEST(JointGate, WhatItLetsOutIsKeptExactly) {
  Joint joint(tee("merge", 2e5, 0), hot);
  joint.add_gate({.name = "gate", .effective_area = 3e-4, .n = {0.8, 0.6, 0}, .p = 1.3e5, .T = 400, .Y = 0});
  const Content start = joint.held();
  Content in;
  for (int step = 0; step < 3000; ++step) {
    std::vector<Port> ports{duct_at(1.5e5 + 1e5 * std::sin(0.01 * step), 100), duct_at(1.2e5, -80)};
    joint.advance(ports, {0, 5e-6, hot});
    for (const Port& port : ports)
      in += (5e-6 * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
  }
  const Content error = joint.held() + joint.left() - start - in;
  EXPECT_GT(joint.left().mass, 1e-5);
  EXPECT_NEAR(error.mass / joint.left().mass, 0, 1e-12);
  EXPECT_NEAR(error.energy / joint.left().energy, 0, 1e-12);
  EXPECT_NEAR(error.burned / joint.left().mass, 0, 1e-12);
}

TEST(JointGate, GasThatComesBackBringsItsOwnEnthalpy) {
  Joint joint(tee("merge", 1e5, 1e-3), hot);
  joint.add_gate({.name = "gate", .effective_area = 1e-5, .n = {0, 1, 0}, .p = 2e5, .T = 400, .Y = 0});
  std::vector<Port> ports{duct_at(1e5, 0), duct_at(1e5, 0)};
  joint.advance(ports, {0, 5e-6, hot});
  EXPECT_LT(joint.gate(0).mass_flow, 0);
  EXPECT_NEAR(joint.left().energy / joint.left().mass / enthalpy(hot, 400, 0), 1, 1e-12);
  EXPECT_DOUBLE_EQ(joint.left().burned, 0);
}

TEST(JointGate, AStreamThatPointsAtItAddsItsHead) {
  double flow[2];
  for (int i : {0, 1}) {
    Joint joint(tee("merge", 2e5, 0), hot);
    joint.add_gate(
        {.name = "gate", .effective_area = 1e-5, .n = {i == 0 ? 0.0 : 1.0, i == 0 ? 1.0 : 0.0, 0}, .p = 1.9e5});
    std::vector<Port> ports{duct_at(2e5, 200), duct_at(2e5, -200)};
    for (int step = 0; step < 50; ++step) joint.advance(ports, {0, 5e-6, hot});
    flow[i] = joint.gate(0).mass_flow;
  }
  EXPECT_GT(flow[1], 1.2 * flow[0]);
}

// The gate of one joint leads to another: nothing leaves the pair, whatever the order in which they run.
TEST(JointGate, HandsItsGasToAnotherJointToRounding) {
  Joint merge(tee("merge", 3e5, 3e-5), hot), downpipe(tee("downpipe", 1e5, 0), hot);
  merge.add_gate({.name = "gate", .effective_area = 3e-4, .n = {0, 1, 0}, .sink = &downpipe});
  const Content start = merge.held() + downpipe.held();
  Content in;
  double through = 0;
  for (int step = 0; step < 3000; ++step) {
    const double swing = std::sin(0.005 * step);
    std::vector<Port> a{duct_at(2e5 + 1e5 * swing, 100), duct_at(1.8e5, -80)},
        b{duct_at(1.1e5, 20), duct_at(1.5e5 - 1e5 * swing / 2, -20)};
    if (step % 2) merge.advance(a, {0, 5e-6, hot});
    downpipe.advance(b, {0, 5e-6, hot});
    if (step % 2 == 0) merge.advance(a, {0, 5e-6, hot});
    for (const auto* ports : {&a, &b})
      for (const Port& port : *ports) {
        in += (5e-6 * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
        through += 5e-6 * port.area * std::abs(port.flux.mass);
      }
  }
  const Content error = merge.held() + downpipe.held() - start - in;
  EXPECT_GT(merge.gate(0).passed.mass, 0.1 * through);
  EXPECT_NEAR(error.mass / through, 0, 1e-12);
  EXPECT_NEAR(error.burned / through, 0, 1e-12);
  EXPECT_NEAR(error.energy / (through * enthalpy(hot, 900, 0)), 0, 1e-12);
  EXPECT_DOUBLE_EQ(merge.left().mass, 0);
}

}  // namespace
}  // namespace pulsewright
