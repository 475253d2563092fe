// The demo cases are read without a fault, and give the network that they describe.

#include <gtest/gtest.h>

#include "models/engine_case.hpp"
#include "models/rig_case.hpp"

namespace pulsewright {
namespace {

CaseFile demo(const std::string& name) { return CaseFile::load(std::string(PULSEWRIGHT_CASES) + "/" + name + ".toml"); }

RigCase rig(const std::string& name) {
  CaseFile file = demo(name);
  return read_rig_case(file);
}

EngineCase engine(const std::string& name) {
  CaseFile file = demo(name);
  return read_engine_case(file);
}

const JointNode& joint(const ManifoldPlan& plan, const std::string& name) {
  for (const NodePlan& node : plan.nodes)
    if (node.name == name) return std::get<JointNode>(node.kind);
  throw std::runtime_error("no joint " + name);
}

TEST(DemoCases, ShockTubeIsOneDuctWithTwoStates) {
  const RigCase c = rig("01_shock_tube");
  ASSERT_EQ(c.setup.plan.ducts.size(), 1u);
  const DuctPlan& duct = c.setup.plan.ducts[0];
  EXPECT_NEAR(duct.drawing.length(), 1.0, 1e-12);
  ASSERT_EQ(duct.initial.size(), 2u);
  EXPECT_DOUBLE_EQ(duct.initial[0].to, 0.5);
  EXPECT_DOUBLE_EQ(duct.initial[0].gas.pressure, 1e5);
  EXPECT_DOUBLE_EQ(duct.initial[1].gas.pressure, 1e4);
  EXPECT_EQ(c.setup.plan.nodes.size(), 2u);
  EXPECT_TRUE(c.assumed.empty());
}

TEST(DemoCases, MergeOfFourStandsAtFifteenDegreesEvenlyRound) {
  const RigCase c = rig("02_pulse_into_a_merge");
  EXPECT_EQ(c.setup.plan.ducts.size(), 5u);
  const JointNode& merge = joint(c.setup.plan, "merge");
  ASSERT_EQ(merge.ports.size(), 5u);
  EXPECT_EQ(merge.outlet, 4);
  EXPECT_EQ(merge.volume, 0);
  for (int k = 0; k < 4; ++k)
    EXPECT_NEAR(merge.ports[static_cast<std::size_t>(k)].n.x(), -std::cos(15 * 3.14159265358979 / 180), 1e-12);
  EXPECT_NEAR(merge.ports[0].n.dot(merge.ports[2].n), std::cos(30 * 3.14159265358979 / 180), 1e-12);
}

TEST(DemoCases, EqualPrimariesAreAlikeAndStandInFiringOrder) {
  const EngineCase c = engine("03_equal_primaries");
  EXPECT_EQ(c.engine.cylinders(), 4);
  EXPECT_EQ(c.engine.firing_order, (std::vector<int>{1, 3, 4, 2}));
  // Port and primary are one duct, the volute another, the downpipe a third.
  EXPECT_EQ(c.plan.ducts.size(), 6u);
  EXPECT_EQ(c.plan.ducts[0].name, "port 1 + primary 1");
  EXPECT_NEAR(c.plan.ducts[0].drawing.length(), 0.52, 1e-12);
  const JointNode& merge = joint(c.plan, "merge");
  ASSERT_EQ(merge.ports.size(), 5u);
  // Mean area of four primaries and the throat, times half the bore of the throat.
  const double mean = (3.14159265358979 / 4 * (4 * 0.03666 * 0.03666 + 0.048 * 0.048)) / 5;
  EXPECT_NEAR(merge.volume, mean * 0.024, 1e-9);
  // In the order of the file, which is that of firing, each stands a quarter turn on from the one before.
  for (std::size_t k = 0; k < 4; ++k)
    EXPECT_NEAR(merge.ports[k].n.dot(merge.ports[(k + 1) % 4].n), std::pow(std::cos(15 * 3.14159265358979 / 180), 2),
                1e-12);
}

TEST(DemoCases, UnequalPrimariesDifferOnlyInThePrimaries) {
  const EngineCase equal = engine("03_equal_primaries"), unequal = engine("04_short_unequal");
  EXPECT_EQ(equal.turbines[0].areas.rotor, unequal.turbines[0].areas.rotor);
  EXPECT_EQ(equal.plan.ducts.size(), unequal.plan.ducts.size());
  EXPECT_NEAR(unequal.plan.ducts[1].drawing.length(), 0.29, 1e-12);
}

TEST(DemoCases, LogHasSmoothRunsAndSquareStubs) {
  const EngineCase c = engine("05_log_turbine_in_the_middle");
  const JointNode& two = joint(c.plan, "over port 2");
  ASSERT_EQ(two.ports.size(), 3u);  // stub, section from port 1, section to the middle
  EXPECT_FALSE(two.ports[0].smooth);
  EXPECT_NEAR(two.ports[0].n.x(), 0, 1e-12);
  EXPECT_TRUE(two.ports[1].smooth);
  EXPECT_TRUE(two.ports[2].smooth);
  const JointNode& middle = joint(c.plan, "middle");
  ASSERT_EQ(middle.ports.size(), 3u);
  EXPECT_NEAR(middle.ports[0].n.dot(middle.ports[1].n), -1, 1e-12);  // from both sides
  ASSERT_EQ(c.plan.gates.size(), 1u);
  EXPECT_EQ(c.plan.nodes[static_cast<std::size_t>(c.plan.gates[0].joint)].name, "middle");
}

}  // namespace
}  // namespace pulsewright
