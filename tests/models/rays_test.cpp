// Rays through a plan of three ducts and one joint, in gas of one state: arrivals worked out by hand.

#include "models/rays.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace pulsewright {
namespace {

constexpr double bore = 0.04, sound = 600, rpm = 3000, deg_per_second = 6 * rpm;
constexpr int merge = 2;  // node

DuctPlan tube(const std::string& name, double length, NodePort start, NodePort finish) {
  DuctPlan duct{name, {}, {}, start, finish};
  duct.drawing.sections = {straight_section(length, round_section(bore), 0, 300)};
  return duct;
}

/// Two primaries of 0.5 and 0.3 m into a merge, and a pipe of 1 m from it; all of one bore.
ManifoldPlan two_into_one(double merge_volume) {
  ManifoldPlan plan;
  plan.ducts = {tube("one", 0.5, {0, 0}, {merge, 0}), tube("two", 0.3, {1, 0}, {merge, 1}),
                tube("pipe", 1, {merge, 2}, {3, 0})};
  JointNode joint;
  joint.volume = merge_volume;
  plan.nodes = {{"cylinder 1", CylinderNode{0}, {{0, false}}},
                {"cylinder 2", CylinderNode{1}, {{1, false}}},
                {"merge", joint, {{0, true}, {1, true}, {2, false}}},
                {"turbine", TurbineNode{0, {0}, -1}, {{2, true}}}};
  return plan;
}

/// Gas of one velocity along every duct; u[i] that of duct i.
CycleRecord even_record(const ManifoldPlan& plan, const std::vector<float>& u) {
  CycleRecord record{};
  record.rpm = rpm;
  for (std::size_t i = 0; i < plan.ducts.size(); ++i) {
    const std::size_t cells = 20;
    DuctRecord duct{plan.ducts[i].name, plan.ducts[i].drawing.length() / cells, cells, {}, {}, {}, {}, {}, {}};
    duct.u.assign(cells * record_samples, u[i]);
    duct.c.assign(cells * record_samples, static_cast<float>(sound));
    record.ducts.push_back(duct);
  }
  return record;
}

// Small pulses pass a joint of three equal ducts with 2 A/(3 A).
TEST(ShortestPath, RunsThroughTheMergeAndKnowsItsShare) {
  const ManifoldPlan plan = two_into_one(0);
  const RayPath path = shortest_path(plan, {0, 0}, true, {2, 0.4});
  ASSERT_EQ(path.legs.size(), 2u);
  EXPECT_EQ(path.joints, std::vector<int>{merge});
  EXPECT_NEAR(path.legs[0].length, 0.5, 1e-12);
  EXPECT_NEAR(path.legs[1].length, 0.4, 1e-12);
  EXPECT_NEAR(path.share, 2.0 / 3, 1e-12);
}

TEST(ShortestPath, ReachesTheOtherPortAgainstItsDuct) {
  const RayPath path = shortest_path(two_into_one(0), {0, 0}, true, {1, 0});
  ASSERT_EQ(path.legs.size(), 2u);
  EXPECT_FALSE(path.legs[1].forward);
  EXPECT_NEAR(path.legs[1].length, 0.3, 1e-12);
}

TEST(ShortestPath, FindsNoWayOutThroughAValve) {
  const ManifoldPlan plan = two_into_one(0);
  EXPECT_TRUE(shortest_path(plan, {0, 0.2}, false, {2, 0.4}).legs.empty());
}

// With the flow at u + c, against it at c - u. 1e-6 degrees: the march's last step is closed to that.
TEST(ArrivalDegree, CountsTheFlowBothWays) {
  const ManifoldPlan plan = two_into_one(0);
  const CycleRecord record = even_record(plan, {100, 50, 200});
  const RayPath down = shortest_path(plan, {0, 0}, true, {2, 1}), across = shortest_path(plan, {0, 0}, true, {1, 0});
  EXPECT_NEAR(arrival_degree(plan, record, down, {0, 0}, 700), 700 + (0.5 / 700 + 1.0 / 800) * deg_per_second, 1e-6);
  EXPECT_NEAR(arrival_degree(plan, record, across, {0, 0}, 0), (0.5 / 700 + 0.3 / 550) * deg_per_second, 1e-6);
}

TEST(ArrivalDegree, WaitsAtAJointForItsVolume) {
  const double volume = 2e-4, area = std::numbers::pi / 4 * bore * bore;
  const ManifoldPlan small = two_into_one(0), large = two_into_one(volume);
  const CycleRecord record = even_record(small, {0, 0, 0});
  const RayPath path = shortest_path(small, {0, 0}, true, {2, 1});
  const double wait = arrival_degree(large, record, path, {0, 0}, 0) - arrival_degree(small, record, path, {0, 0}, 0);
  EXPECT_NEAR(wait, volume / (sound * 3 * area) * deg_per_second, 1e-9);
}

}  // namespace
}  // namespace pulsewright
