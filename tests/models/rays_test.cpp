// Rays on plans of a few ducts drawn by hand, through gas whose travel times are known in closed form.

#include "models/rays.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace pulsewright {
namespace {

constexpr double rpm = 3000, deg_per_second = 6 * rpm;
// A leg ends at most 1e-9 degrees late (the march's own last step); the rest is rounding over some thousand steps.
constexpr double rounding_deg = 1e-8;

/// A straight round duct without ends.
DuctPlan tube(double length, double bore) {
  return {"tube", {{straight_section(length, round_section(bore), 0, 300)}}, {}, {}, {}};
}

/// Joins duct ends in one node.
void join(ManifoldPlan& plan, NodeKind kind, const std::vector<PlanPort>& ports) {
  const int node = static_cast<int>(plan.nodes.size());
  plan.nodes.push_back({"node " + std::to_string(node), std::move(kind), ports});
  for (std::size_t k = 0; k < ports.size(); ++k) {
    DuctPlan& duct = plan.ducts[static_cast<std::size_t>(ports[k].duct)];
    (ports[k].at_finish ? duct.finish : duct.start) = {node, static_cast<int>(k)};
  }
}

JointNode joint_of(double volume) {
  JointNode joint;
  joint.volume = volume;
  return joint;
}

/// Gas of a duct from functions of crank angle and distance.
template <class C, class U>
DuctRecord gas_record(double length, std::size_t cells, C c, U u) {
  DuctRecord r{"tube", length / static_cast<double>(cells), cells, {}, {}, {}, {}, {}, {}};
  for (std::size_t k = 0; k < record_samples; ++k)
    for (std::size_t j = 0; j < cells; ++j) {
      const double deg = static_cast<double>(k) * record_step_deg, x = (static_cast<double>(j) + 0.5) * r.dx;
      r.c.push_back(static_cast<float>(c(deg, x)));
      r.u.push_back(static_cast<float>(u(deg, x)));
    }
  return r;
}
DuctRecord steady_record(double length, double c, double u) {
  return gas_record(length, 20, [=](double, double) { return c; }, [=](double, double) { return u; });
}

CycleRecord record_of(std::vector<DuctRecord> ducts) { return {rpm, {}, std::move(ducts), {}, {}, {}}; }

ManifoldPlan one_tube(double length) {
  ManifoldPlan plan;
  plan.ducts.push_back(tube(length, 0.04));
  join(plan, ClosedNode{}, {{0, false}});
  join(plan, ClosedNode{}, {{0, true}});
  return plan;
}

const RayPath there_and_back_over_half_a_metre{{{0, true, 0.5}, {0, false, 0.5}}, {}, 1};

TEST(Rays, HomeAgainInStillGasIs12NLOverC) {
  const CycleRecord record = record_of({steady_record(0.5, 600, 0)});
  const double deg = arrival_degree(one_tube(0.5), record, there_and_back_over_half_a_metre, {0, 0}, 100);
  EXPECT_NEAR(deg - 100, 12 * rpm * 0.5 / 600, rounding_deg);
}

TEST(Rays, TheFlowCarriesThemOutAndHoldsThemUpOnTheWayBack) {
  const CycleRecord record = record_of({steady_record(0.5, 600, 150)});
  const double deg = arrival_degree(one_tube(0.5), record, there_and_back_over_half_a_metre, {0, 0}, 0);
  EXPECT_NEAR(deg, deg_per_second * (0.5 / 750 + 0.5 / 450), rounding_deg);
}

TEST(Rays, StartAndStopWithinADuct) {
  const ManifoldPlan plan = one_tube(0.5);
  const RayPath path = shortest_path(plan, {0, 0.4}, false, {0, 0.1});
  ASSERT_EQ(path.legs.size(), 1u);
  EXPECT_NEAR(path.still_gas_length(), 0.3, 1e-15);
  EXPECT_EQ(path.share, 1);
  EXPECT_NEAR(arrival_degree(plan, record_of({steady_record(0.5, 500, 0)}), path, {0, 0.4}, 0), deg_per_second * 0.3 / 500, rounding_deg);
}

// Sound speed linear in x: t = ln(c1/c0)/(dc/dx). The march looks at the start of each step of 0.1 degrees: it errs by
// half a step times the relative change of the speed, here 0.05 ln 1.5 = 0.02; half a cell at each end is constant.
TEST(Rays, FollowASoundSpeedThatChangesAlongTheDuct) {
  const double length = 1, c0 = 400, c1 = 600;
  const CycleRecord record = record_of({gas_record(length, 200, [=](double, double x) { return c0 + (c1 - c0) * x / length; }, [](double, double) { return 0.0; })});
  const ManifoldPlan plan = one_tube(length);
  const double deg = arrival_degree(plan, record, shortest_path(plan, {0, 0}, true, {0, length}), {0, 0}, 0);
  EXPECT_NEAR(deg, deg_per_second * length * std::log(c1 / c0) / (c1 - c0), 0.03);
}

// The sound speed grows by 1 m/s a degree: x = (400 d + d^2/2)/(6 N). Same error as above, ln(420/400)/20 is smaller.
TEST(Rays, FollowASoundSpeedThatChangesInTime) {
  const double length = 0.4;
  const CycleRecord record = record_of({gas_record(length, 4, [](double deg, double) { return 400 + deg; }, [](double, double) { return 0.0; })});
  const ManifoldPlan plan = one_tube(length);
  const double deg = arrival_degree(plan, record, shortest_path(plan, {0, 0}, true, {0, length}), {0, 0}, 0);
  EXPECT_NEAR(deg, -400 + std::sqrt(400 * 400 + 2 * length * deg_per_second), 0.01);
}

// 400 m/s before 360 degrees and 800 after: begun at 710, ten degrees run at 800 and the rest, in the next cycle, at 400.
// Half a degree between the last sample and the first is a ramp, and two march steps stand astride it.
TEST(Rays, RunOnIntoTheNextCycle) {
  const double length = 0.8;
  const CycleRecord record = record_of({gas_record(length, 4, [](double deg, double) { return deg < 360 ? 400 : 800; }, [](double, double) { return 0.0; })});
  const ManifoldPlan plan = one_tube(length);
  const double deg = arrival_degree(plan, record, shortest_path(plan, {0, 0}, true, {0, length}), {0, 0}, 710);
  const double left = length - 10 * 800 / deg_per_second;
  EXPECT_NEAR(deg, 720 + left / 400 * deg_per_second, 0.5);
}

TEST(Rays, CrawlAgainstSonicFlowInsteadOfStandingStill) {
  const ManifoldPlan plan = one_tube(0.01);
  const double deg = arrival_degree(plan, record_of({steady_record(0.01, 600, -600)}), shortest_path(plan, {0, 0}, true, {0, 0.01}), {0, 0}, 0);
  EXPECT_NEAR(deg, deg_per_second * 0.01 / (0.02 * 600), rounding_deg);
}

/// Two primaries of 30 mm into an outlet of 40 mm, which is drawn toward the joint.
ManifoldPlan wye(double volume) {
  ManifoldPlan plan;
  plan.ducts = {tube(0.3, 0.03), tube(0.5, 0.03), tube(0.2, 0.04)};
  join(plan, ClosedNode{}, {{0, false}});
  join(plan, ClosedNode{}, {{1, false}});
  join(plan, ClosedNode{}, {{2, false}});
  join(plan, joint_of(volume), {{0, true}, {1, true}, {2, true}});
  return plan;
}

TEST(Rays, AJointPassesTwiceItsInletsShareOfTheArea) {
  const ManifoldPlan plan = wye(0);
  const RayPath out = shortest_path(plan, {0, 0}, true, {2, 0.05});
  ASSERT_EQ(out.legs.size(), 2u);
  EXPECT_EQ(out.joints, std::vector<int>{3});
  EXPECT_NEAR(out.share, 2 * 9.0 / (9 + 9 + 16), 1e-14);      // rounding
  EXPECT_NEAR(out.still_gas_length(), 0.3 + 0.15, 1e-15);     // in through the outlet's finish
  EXPECT_FALSE(out.legs[1].forward);
  const RayPath back = shortest_path(plan, {2, 0}, true, {1, 0});
  EXPECT_NEAR(back.share, 2 * 16.0 / (9 + 9 + 16), 1e-14);
  EXPECT_NEAR(back.still_gas_length(), 0.2 + 0.5, 1e-15);
}

TEST(Rays, AJointDelaysByItsVolumeOverSoundSpeedAndArea) {
  const double volume = 40e-6, c = 600;
  const CycleRecord record = record_of({steady_record(0.3, c, 0), steady_record(0.5, c, 0), steady_record(0.2, c, 0)});
  const auto arrival = [&](double v) {
    const ManifoldPlan plan = wye(v);
    return arrival_degree(plan, record, shortest_path(plan, {0, 0}, true, {2, 0}), {0, 0}, 0);
  };
  const double sum = std::numbers::pi / 4 * (2 * 0.03 * 0.03 + 0.04 * 0.04);
  EXPECT_NEAR(arrival(0), deg_per_second * 0.5 / c, rounding_deg);
  EXPECT_NEAR(arrival(volume) - arrival(0), deg_per_second * volume / (c * sum), 2 * rounding_deg);
}

TEST(Rays, ThereIsNoWayBackwardOrThroughAWall) {
  const RayPath behind = shortest_path(one_tube(0.5), {0, 0.3}, true, {0, 0.1});
  EXPECT_TRUE(behind.legs.empty());
  EXPECT_EQ(behind.share, 0);
  ManifoldPlan apart = one_tube(0.5);
  apart.ducts.push_back(tube(0.5, 0.04));
  join(apart, ClosedNode{}, {{1, false}});
  join(apart, ClosedNode{}, {{1, true}});
  EXPECT_TRUE(shortest_path(apart, {0, 0}, true, {1, 0}).legs.empty());
}

TEST(Rays, DoNotRunThroughATurbine) {
  ManifoldPlan plan;
  plan.ducts = {tube(0.3, 0.03), tube(0.5, 0.03)};
  join(plan, ClosedNode{}, {{0, false}});
  join(plan, TurbineNode{0, {0, -1}, 1}, {{0, true}, {1, false}});
  join(plan, AirNode{}, {{1, true}});
  EXPECT_TRUE(shortest_path(plan, {0, 0}, true, {1, 0.1}).legs.empty());
}

/// n joints of two ducts in a row.
ManifoldPlan chain(int joints) {
  ManifoldPlan plan;
  plan.ducts.assign(static_cast<std::size_t>(joints) + 1, tube(0.1, 0.03));
  join(plan, ClosedNode{}, {{0, false}});
  for (int i = 0; i < joints; ++i) join(plan, joint_of(0), {{i, true}, {i + 1, false}});
  join(plan, ClosedNode{}, {{joints, true}});
  return plan;
}

TEST(Rays, PassSixJointsAndNoMore) {
  EXPECT_EQ(shortest_path(chain(6), {0, 0}, true, {6, 0.1}).joints.size(), 6u);
  EXPECT_TRUE(shortest_path(chain(7), {0, 0}, true, {7, 0.1}).legs.empty());
}

TEST(Rays, TakeTheWayOfFewestJoints) {
  ManifoldPlan plan = chain(2);  // 0 - 1 - 2, and a bypass 3 from the first joint to the second
  plan.ducts.push_back(tube(0.05, 0.03));
  plan.nodes[1].ports.push_back({3, false});
  plan.ducts[3].start = {1, 2};
  plan.nodes[2].ports.push_back({3, true});
  plan.ducts[3].finish = {2, 2};
  const RayPath path = shortest_path(plan, {0, 0}, true, {2, 0.1});
  EXPECT_EQ(path.joints.size(), 2u);
  EXPECT_EQ(shortest_path(plan, {0, 0}, true, {3, 0.02}).joints.size(), 1u);
}

}  // namespace
}  // namespace pulsewright
