// Every kind of node of a plan becomes the element that it says, with the figures that it says.

#include "models/assembly.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "shared/error.hpp"
#include "solver/end_closed.hpp"
#include "solver/end_reservoir.hpp"
#include "solver/end_vessel.hpp"

namespace pulsewright {
namespace {

constexpr double bore = 0.04, p0 = 1e5, T0 = 300, R = 287;
const Gas gas = perfect_gas(1.4, R);

GasState at_rest(double p = p0, double T = T0) { return {p, T, 0, 0}; }

DuctPlan tube(const std::string& name, double length = 0.5) {
  return {name, {{straight_section(length, round_section(bore), 0, 300)}}, {{length, at_rest()}}, {}, {}};
}

/// One tube, closed at its start, with this node at its finish.
ManifoldPlan tube_into(NodeKind kind) {
  ManifoldPlan plan;
  plan.ducts = {tube("tube")};
  plan.nodes = {{"wall", ClosedNode{}, {{0, false}}}, {"far end", std::move(kind), {{0, true}}}};
  plan.ducts[0].start = {0, 0}, plan.ducts[0].finish = {1, 0};
  return plan;
}

Assembly assembled(const ManifoldPlan& plan, const MachineMaker& machine = {}) {
  return assemble(plan, gas, {}, 0.01, machine);
}

/// The pressure in the tube's last cell after some sound has come to it, well before any echo is home.
double end_pressure(NodeKind kind, double until = 1e-3) {
  const Assembly a = assembled(tube_into(std::move(kind)));
  a.network->run_until(until);
  return a.network->cell(0, a.network->cells(0) - 1).p;
}

TEST(Assembly, AClosedNodeKeepsGasAtRest) {
  EXPECT_NEAR(end_pressure(ClosedNode{}), p0, 1e-6);
}  // rounding of 1e5 over some steps

TEST(Assembly, AnOpenNodeBringsTheDuctsEndToItsOutside) {
  // 0.1 %: gas that flows out at some m/s against 0.99 bar is at that pressure but for its own small velocity head.
  EXPECT_NEAR(end_pressure(OpenNode{at_rest(0.99e5)}), 0.99e5, 1e2);
}

TEST(Assembly, ASupplyNodeIsTotalPressureAtTheMouth) {
  const Assembly a = assembled(tube_into(SupplyNode{at_rest(1.2e5)}));
  a.network->run_until(1e-3);
  const Primitive q = a.network->cell(0, a.network->cells(0) - 1);
  EXPECT_LT(q.u, -10);  // into the tube
  const double mach2 = q.u * q.u / (1.4 * q.p / q.rho);
  EXPECT_NEAR(q.p * std::pow(1 + 0.2 * mach2, 3.5), 1.2e5,
              1.2e3);  // 1 %: the cell beside the mouth, behind the wave's front
}

TEST(Assembly, ANozzleNodeHoldsBackMoreTheNarrowerItIs) {
  const double wide = end_pressure(NozzleNode{0.03, 1, at_rest(0.8e5)}),
               narrow = end_pressure(NozzleNode{0.03, 0.25, at_rest(0.8e5)});
  const double half_bore = end_pressure(NozzleNode{0.015, 1, at_rest(0.8e5)});
  EXPECT_GT(narrow, wide + 1e3);
  EXPECT_NEAR(half_bore, narrow, 1e-6);  // a quarter of the area either way; rounding
}

TEST(Assembly, AnAnechoicNodeKeepsGasAtRest) { EXPECT_NEAR(end_pressure(AnechoicNode{}), p0, 1e-6); }

TEST(Assembly, ASignalNodeSendsItsWave) {
  const double p = 1.1e5, T = T0 * std::pow(1.1, 0.4 / 1.4);
  EXPECT_NEAR(end_pressure(SignalNode{"signal.csv", {{0, p0, T0}, {2e-4, p, T}, {1, p, T}}}), p,
              1e2);  // 0.1 %: cells behind a compression
}

TEST(Assembly, AVesselNodeHoldsItsGasAndOpensInTime) {
  const VesselNode vessel{1e-3, at_rest(5e5, 600), 0.02, 0.8, 0.5e-3};
  const Assembly a = assembled(tube_into(vessel));
  EXPECT_NEAR(a.elements[1]->held().mass, 5e5 * 1e-3 / (R * 600), 1e-15);
  a.network->run_until(0.5e-3);
  EXPECT_NEAR(a.elements[1]->held().mass, 5e5 * 1e-3 / (R * 600), 1e-15);
  a.network->run_until(1e-3);
  EXPECT_LT(a.elements[1]->held().mass, 0.999 * 5e5 * 1e-3 / (R * 600));
}

TEST(Assembly, AnAirNodeWithoutSilencerIsAnOpenEnd) {
  EXPECT_EQ(end_pressure(AirNode{at_rest(0.99e5), false}), end_pressure(OpenNode{at_rest(0.99e5)}));
}

ManifoldPlan two_tubes_on_a_joint(double volume) {
  ManifoldPlan plan;
  plan.ducts = {tube("in"), tube("out", 0.3)};
  plan.ducts[0].initial = {{0.25, at_rest(1.2e5, 400)}, {0.5, at_rest(1.1e5, 350)}};
  JointNode joint;
  joint.volume = volume;
  joint.ports = {{Eigen::Vector3d(-1, 0, 0), true}, {Eigen::Vector3d(1, 0, 0), true}};
  joint.outlet = 1;
  plan.nodes = {{"wall", ClosedNode{}, {{0, false}}},
                {"far wall", ClosedNode{}, {{1, true}}},
                {"merge", joint, {{0, true}, {1, false}}}};
  plan.ducts[0].start = {0, 0}, plan.ducts[0].finish = {2, 0}, plan.ducts[1].start = {2, 1},
  plan.ducts[1].finish = {1, 0};
  return plan;
}

TEST(Assembly, AJointNodeBeginsWithTheGasOfItsFirstDuct) {
  const Assembly a = assembled(two_tubes_on_a_joint(1e-4));
  ASSERT_NE(a.joints[2], nullptr);
  EXPECT_EQ(a.joints[0], nullptr);
  EXPECT_EQ(a.joints[2]->name(), "merge");
  EXPECT_NEAR(a.joints[2]->pressure(), 1.1e5, 1e-6);
  EXPECT_NEAR(a.joints[2]->held().mass, 1.1e5 * 1e-4 / (R * 350), 1e-15);
}

TEST(Assembly, StretchesBeginWithTheirOwnGas) {
  const Assembly a = assembled(two_tubes_on_a_joint(0));
  const Network& net = *a.network;
  EXPECT_EQ(net.cells(0), 50u);
  EXPECT_NEAR(net.cell(0, 24).p, 1.2e5, 1e-6);
  EXPECT_NEAR(net.cell(0, 25).p, 1.1e5, 1e-6);
  EXPECT_NEAR(net.cell(0, 0).rho, 1.2e5 / (R * 400), 1e-12);
  EXPECT_EQ(net.name(1), "out");
}

TEST(Assembly, AClosedPlanKeepsItsMassAndEnergy) {
  const Assembly a = assembled(two_tubes_on_a_joint(1e-5));
  const Content before = a.network->held();
  a.network->run_until(5e-3);
  const Content after = a.network->held();
  EXPECT_NEAR(after.mass / before.mass, 1, 1e-12);  // the promise for closed networks; some 350 steps of rounding
  EXPECT_NEAR(after.energy / before.energy, 1, 1e-12);
}

TEST(Assembly, AGateSitsOnItsJointWithItsOpenArea) {
  ManifoldPlan plan = two_tubes_on_a_joint(1e-5);
  plan.air = at_rest(0.9e5, 280);
  plan.gates = {{"gate", 2, Eigen::Vector3d(0, 1, 0), 0.03, 0.006, 0.7, 0.5, -1}};
  const Assembly a = assembled(plan);
  ASSERT_EQ(a.gates.size(), 1u);
  EXPECT_EQ(a.gates[0].joint, a.joints[2]);
  const JointGate& gate = a.gate(0);
  EXPECT_EQ(gate.name, "gate");
  EXPECT_NEAR(gate.effective_area, 0.7 * std::numbers::pi * 0.03 * 0.003, 1e-12);  // curtain of half its lift
  EXPECT_EQ(gate.p, 0.9e5);
  EXPECT_EQ(gate.T, 280);
  EXPECT_EQ(gate.sink, nullptr);
}

TEST(Assembly, PartsOfAnEngineComeFromTheirMaker) {
  const std::vector<NodeKind> kinds = {CylinderNode{0}, TurbineNode{0, {0}, -1}, AirNode{at_rest(), true}};
  for (const NodeKind& kind : kinds) {
    std::string asked;
    const Assembly a = assembled(tube_into(kind), [&](const NodePlan& node) -> std::unique_ptr<Element> {
      asked = node.name;
      return std::make_unique<ClosedEnd>();
    });
    EXPECT_EQ(asked, "far end");
    EXPECT_NE(dynamic_cast<ClosedEnd*>(a.elements[1]), nullptr);
  }
}

TEST(Assembly, ARigWithAPartOfAnEngineIsRefusedByName) {
  try {
    assembled(tube_into(CylinderNode{0}));
    FAIL() << "a rig has no cylinder";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::internal);
    EXPECT_NE(error.message().find("far end"), std::string::npos);
  }
}

}  // namespace
}  // namespace pulsewright
