// Wherever a wastegate can sit, and wherever it can lead.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_fault;
using test::engine_text;
using test::read_engine;
using test::says;
using test::with;

constexpr double rounding = 1e-12;  // of unit vectors, and of lengths in m

const std::string without_gate = with(engine_text, "[[wastegate]]\nat = \"merge\"\n", "");

std::string gate(const std::string& keys) { return "[[wastegate]]\n" + keys; }

/// Pairs 1+4 and 2+3 into joints of their own, each with a duct to its scroll.
std::string divided() {
  std::string text = with(without_gate, "[turbine]", "[turbine]\nscrolls = 2");
  text = with(text, "to = \"merge\"", "to = \"front\"");
  for (const char* c : {"2", "3"})
    text = with(text, std::string("cylinder = ") + c, std::string("cylinder = ") + c + "\nto = \"rear\"");
  const std::string joints =
      "[[joint]]\nname = \"front\"\noutlet = \"front pipe\"\n[[joint]]\nname = \"rear\"\noutlet = \"turbine.b\"\n"
      "[[duct]]\nname = \"front pipe\"\nfrom = \"front\"\nto = \"turbine.a\"\nlength = \"120 mm\"\nbore = \"45 mm\"\n";
  return with(text, "[[joint]]\nname = \"merge\"\noutlet = \"turbine\"\n", joints);
}

const std::string& joint_of(const ManifoldPlan& plan, const GatePlan& gate) {
  return plan.nodes[static_cast<std::size_t>(gate.joint)].name;
}
std::string target_of(const ManifoldPlan& plan, const GatePlan& gate) {
  return gate.destination < 0 ? "air" : plan.nodes[static_cast<std::size_t>(gate.destination)].name;
}

TEST(GatePlan, OnATurbineEntrySitsAtTheJointBeforeItsVolute) {
  const ManifoldPlan plan = read_engine(without_gate + gate("at = \"turbine\"\n")).plan;
  ASSERT_EQ(plan.gates.size(), 1u);
  EXPECT_EQ(joint_of(plan, plan.gates[0]), "merge");
}

TEST(GatePlan, OnAScrollFedByADuctSitsBetweenDuctAndVolute) {
  const ManifoldPlan plan = read_engine(divided() + gate("at = \"turbine.a\"\nangle = \"45 deg\"\n")).plan;
  ASSERT_EQ(plan.gates.size(), 1u);
  const NodePlan& seat = plan.nodes[static_cast<std::size_t>(plan.gates[0].joint)];
  ASSERT_EQ(seat.ports.size(), 2u);
  const DuctPlan& before = plan.ducts[static_cast<std::size_t>(seat.ports[0].duct)];
  const DuctPlan& behind = plan.ducts[static_cast<std::size_t>(seat.ports[1].duct)];
  EXPECT_EQ(before.name, "front pipe");
  EXPECT_EQ(behind.name, "volute a");
  EXPECT_NEAR(plan.gates[0].n.x(), std::sqrt(0.5), rounding);  // 45 degrees to the gas's way
}

TEST(GatePlan, OneOnEachScrollWithItsOwnReturn) {
  const std::string text = divided() + gate("name = \"a\"\nat = \"turbine.a\"\nto = \"downpipe:250mm\"\n") +
                           gate("name = \"b\"\nat = \"turbine.b\"\nto = \"air\"\nopening = 0.5\n");
  const ManifoldPlan plan = read_engine(text).plan;
  ASSERT_EQ(plan.gates.size(), 2u);
  EXPECT_NE(plan.gates[0].joint, plan.gates[1].joint);
  EXPECT_EQ(joint_of(plan, plan.gates[1]), "rear");
  EXPECT_EQ(target_of(plan, plan.gates[0]), "downpipe:250 mm");
  EXPECT_EQ(target_of(plan, plan.gates[1]), "air");
  EXPECT_EQ(plan.gates[1].opening, 0.5);
}

TEST(GatePlan, OnAPrimarysTapSitsInLineWithThePrimary) {
  const ManifoldPlan plan =
      read_engine(without_gate + gate("at = \"primary 2:150mm\"\nangle = \"30 deg\"\nto = \"downpipe:100mm\"\n")).plan;
  ASSERT_EQ(plan.gates.size(), 1u);
  EXPECT_EQ(joint_of(plan, plan.gates[0]), "primary 2:150 mm");
  const auto pieces = stretches(plan, "primary 2");
  ASSERT_EQ(pieces.size(), 2u);
  EXPECT_NEAR(pieces[0].name_to, 0.15, rounding);
  EXPECT_NEAR(plan.gates[0].n.x(), std::cos(std::numbers::pi / 6), rounding);
}

TEST(GatePlan, TwoGatesOfOneJointKeepTheirOwnAngles) {
  const ManifoldPlan plan =
      read_engine(without_gate + gate("name = \"one\"\nat = \"merge\"\nangle = \"30 deg\"\n") +
                  gate("name = \"two\"\nat = \"merge\"\nangle = \"90 deg\"\nclock = \"180 deg\"\n"))
          .plan;
  ASSERT_EQ(plan.gates.size(), 2u);
  EXPECT_EQ(plan.gates[0].joint, plan.gates[1].joint);
  EXPECT_NEAR(plan.gates[0].n.x(), std::cos(std::numbers::pi / 6), rounding);
  EXPECT_NEAR(plan.gates[1].n.x(), 0, rounding);
  EXPECT_NEAR(plan.gates[1].n.y(), -1, rounding);
}

TEST(GatePlan, OnAPrimaryThatRunsStraightIntoTheTurbine) {
  std::string text = with(without_gate, "arrangement = \"inline 4\"", "cylinders = 1");
  const auto second = text.find("[[primary]]\ncylinder = 2"), joint = text.find("[[joint]]");
  text.erase(second, joint - second);
  text =
      with(with(text, "[[joint]]\nname = \"merge\"\noutlet = \"turbine\"\n", ""), "to = \"merge\"", "to = \"turbine\"");
  const ManifoldPlan plan = read_engine(text + gate("at = \"turbine\"\n")).plan;
  ASSERT_EQ(plan.gates.size(), 1u);
  EXPECT_EQ(plan.nodes[static_cast<std::size_t>(plan.gates[0].joint)].ports.size(), 2u);
}

TEST(GatePlan, SaysWhatNoGateCanDo) {
  EXPECT_TRUE(says(engine_fault(without_gate + gate("at = \"turbine.out\"\n")), {"outlet", "downpipe:50mm"}));
  EXPECT_TRUE(says(engine_fault(divided() + gate("at = \"turbine\"\n")), {"2 scrolls", "turbine.a"}));
  EXPECT_TRUE(says(engine_fault(divided() + gate("at = \"turbine.c\"\n")), {"no entry"}));
  EXPECT_TRUE(says(engine_fault(without_gate + gate("at = \"merge\"\nto = \"merge\"\n")), {"leads back"}));
  EXPECT_TRUE(says(engine_fault(without_gate + gate("at = \"primary 2\"\n")), {"say where along it"}));
  EXPECT_TRUE(says(engine_fault(without_gate + gate("at = \"primary 2:900mm\"\n")), {"must lie inside"}));
  EXPECT_TRUE(says(engine_fault(without_gate + gate("at = \"merge\"\nto = \"turbine.out\"\n")), {"downpipe:50mm"}));
}

TEST(GatePlan, AreaIsTheCurtainsUntilTheBoreLimitsIt) {
  GatePlan valve = read_engine(without_gate + gate("at = \"merge\"\nbore = \"40 mm\"\n")).plan.gates.at(0);
  const double seat = std::numbers::pi / 4 * 0.04 * 0.04;
  valve.full_lift = 0.01;  // bore/4: curtain and seat are alike
  valve.opening = 0.5;
  EXPECT_NEAR(gate_area(valve) / seat, 0.5, rounding);
  valve.full_lift = 0.02;
  EXPECT_NEAR(gate_area(valve) / seat, 1, rounding);
  valve.opening = 1;
  EXPECT_NEAR(gate_area(valve) / seat, 1, rounding);
}

}  // namespace
}  // namespace pulsewright
