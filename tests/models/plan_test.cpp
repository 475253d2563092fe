// What the plan makes of a drawing: taps, mouths, directions, ducts that grow together or are too short.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "models/drawing_edit.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::read_rig;
using test::rig_text;
using test::with;

constexpr double rounding = 1e-12;  // lengths and unit vectors come through a few additions
constexpr double degree = std::numbers::pi / 180;

const NodePlan& node(const ManifoldPlan& plan, const std::string& name) {
  for (const NodePlan& n : plan.nodes)
    if (n.name == name) return n;
  throw std::logic_error("no node " + name);
}
JointNode joint(const ManifoldPlan& plan, const std::string& name) {
  return std::get<JointNode>(node(plan, name).kind);
}

std::string tap_text(const std::string& at) {
  return with(engine_text, "at = \"merge\"", "at = \"merge\"\nangle = \"30 deg\"\nto = \"" + at + "\"");
}

TEST(Plan, TapSplitsTheDuctAndKeepsItsName) {
  const ManifoldPlan plan = read_engine(tap_text("downpipe:250mm")).plan;
  const auto pieces = stretches(plan, "downpipe");
  ASSERT_EQ(pieces.size(), 2u);
  EXPECT_NE(pieces[0].duct, pieces[1].duct);
  EXPECT_NEAR(pieces[0].name_to, 0.25, rounding);
  const PlanPlace place = locate(plan, "downpipe", 0.4);
  EXPECT_EQ(place.duct, pieces[1].duct);
  EXPECT_NEAR(place.distance, 0.15, rounding);
  ASSERT_EQ(plan.gates.size(), 1u);
  EXPECT_EQ(plan.nodes[static_cast<std::size_t>(plan.gates[0].destination)].name, "downpipe:250 mm");
}

TEST(Plan, RunOfATapIsSmoothBothWaysAndItsStubIsNot) {
  const std::string stub =
      "[[duct]]\nname = \"side\"\nfrom = \"run out:100mm\"\nfrom_angle = \"90 deg\"\nto = \"shut\"\nlength = \"100 "
      "mm\"\nbore = \"40 mm\"\n"
      "pressure = \"1 bar\"\ntemperature = \"300 K\"\n[[end]]\nname = \"shut\"\nkind = \"closed\"\n";
  const JointNode tap = joint(read_rig(rig_text + stub).setup.plan, "run out:100 mm");
  ASSERT_EQ(tap.ports.size(), 3u);
  EXPECT_TRUE(tap.ports[0].smooth && tap.ports[1].smooth);
  EXPECT_FALSE(tap.ports[2].smooth);
  EXPECT_NEAR(tap.ports[0].n.x(), -1, rounding);
  EXPECT_NEAR(tap.ports[1].n.x(), 1, rounding);
  EXPECT_NEAR(tap.ports[2].n.x(), 0, rounding);
  // A tenth of the mean area times half the largest bore; all three are 40 mm.
  EXPECT_NEAR(tap.volume, 0.1 * std::numbers::pi / 4 * 0.04 * 0.04 * 0.02, 1e-15);
}

TEST(Plan, TapsAtOnePlaceShareOneJoint) {
  std::string text =
      tap_text("downpipe:250mm") + "[[wastegate]]\nname = \"second\"\nat = \"merge\"\nto = \"downpipe:0.25 m\"\n";
  const ManifoldPlan plan = read_engine(text).plan;
  ASSERT_EQ(plan.gates.size(), 2u);
  EXPECT_EQ(plan.gates[0].destination, plan.gates[1].destination);
}

TEST(Plan, PlainJointOfOneBoreIsNoJoint) {
  std::string text = with(rig_text, "length = \"400 mm\"", "length = \"200 mm\"");
  text = with(text, "to = \"far right\"", "to = \"plain\"") +
         "[[duct]]\nname = \"last\"\nfrom = \"far right\"\nto = \"plain\"\nlength = \"300 mm\"\nbore = \"40 "
         "mm\"\npressure = \"2 bar\"\n"
         "temperature = \"400 K\"\nvelocity = \"7 m/s\"\n[[joint]]\nname = \"plain\"\n";
  const ManifoldPlan plan = read_rig(text).setup.plan;
  ASSERT_EQ(plan.ducts.size(), 3u);
  const DuctPlan& grown = plan.ducts[2];
  EXPECT_EQ(grown.name, "run out + last");
  EXPECT_NEAR(grown.drawing.length(), 0.5, rounding);
  // "last" was drawn the other way round: so are its gas and its distances.
  EXPECT_NEAR(grown.initial[1].gas.velocity, -7, rounding);
  const PlanPlace place = locate(plan, "last", 0.1);
  EXPECT_NEAR(place.distance, 0.4, rounding);
  EXPECT_TRUE(place.reversed);
  EXPECT_EQ(node(plan, "far right").ports[0].at_finish, true);
}

TEST(Plan, PlainJointWithVolumeOrBendStaysAJoint) {
  std::string text =
      with(rig_text, "to = \"far right\"", "to = \"plain\"") +
      "[[duct]]\nname = \"last\"\nfrom = \"plain\"\nto = \"far right\"\nlength = \"300 mm\"\nbore = \"40 mm\"\n"
      "pressure = \"1 bar\"\ntemperature = \"300 K\"\n[[joint]]\nname = \"plain\"\n";
  EXPECT_EQ(read_rig(text).setup.plan.ducts.size(), 3u);
  EXPECT_EQ(read_rig(text + "volume = \"10 cm^3\"\n").setup.plan.ducts.size(), 4u);
  EXPECT_EQ(read_rig(with(text, "to = \"plain\"", "to = \"plain\"\nto_angle = \"45 deg\"")).setup.plan.ducts.size(),
            4u);
}

TEST(Plan, StepInBoreIsASmoothJointWithBordasContraction) {
  std::string text =
      with(rig_text, "to = \"far right\"", "to = \"step\"") +
      "[[duct]]\nname = \"last\"\nfrom = \"step\"\nto = \"far right\"\nlength = \"300 mm\"\nbore = \"30 mm\"\n"
      "pressure = \"1 bar\"\ntemperature = \"300 K\"\n[[joint]]\nname = \"step\"\n";
  const JointNode step = joint(read_rig(text).setup.plan, "step");
  EXPECT_EQ(step.contraction_loss, 0.5);
  EXPECT_TRUE(step.ports[0].smooth && step.ports[1].smooth);
}

TEST(Plan, AnglesAreBetweenADuctAndTheAxisWhicheverWayItRuns) {
  const std::string starts =
      with(with(rig_text, "from = \"blind\"\nto = \"tee\"\nto_angle = \"90 deg\"",
                "from = \"tee\"\nto = \"blind\"\nfrom_angle = \"60 deg\"\nfrom_clock = \"90 deg\""),
           "to_angle = \"0 deg\"", "to_angle = \"20 deg\"\nto_clock = \"0 deg\"");
  const JointNode tee = joint(read_rig(starts).setup.plan, "tee");
  // It ends there: n = -d.
  EXPECT_NEAR((tee.ports[0].n - Eigen::Vector3d(-std::cos(20 * degree), -std::sin(20 * degree), 0)).norm(), 0,
              rounding);
  // It starts there: n = +d, and the clock turns from y to z.
  EXPECT_NEAR((tee.ports[1].n - Eigen::Vector3d(std::cos(60 * degree), 0, std::sin(60 * degree))).norm(), 0, rounding);
  EXPECT_NEAR((tee.ports[2].n - Eigen::Vector3d::UnitX()).norm(), 0, rounding);
}

TEST(Plan, DirectionInTheJointsAxesCountsLikeAnAngle) {
  const std::string text = with(rig_text, "to_angle = \"90 deg\"", "direction = [0, 0, 2]");
  EXPECT_NEAR((joint(read_rig(text).setup.plan, "tee").ports[1].n - Eigen::Vector3d(0, 0, -1)).norm(), 0, rounding);
}

TEST(Plan, OutletMayBeADuctThatRunsIn) {
  // The axis points out of the joint along the outlet even where the gas of that duct is drawn to run in.
  const std::string text = with(with(rig_text, "outlet = \"run out\"", "outlet = \"run in\""), "from = \"tee\"",
                                "from = \"tee\"\nfrom_angle = \"170 deg\"");
  const JointNode tee = joint(read_rig(text).setup.plan, "tee");
  EXPECT_EQ(tee.outlet, 0);
  EXPECT_NEAR(tee.ports[0].n.x(), 1, rounding);
  EXPECT_NEAR(tee.ports[2].n.x(), std::cos(170 * degree), rounding);
}

TEST(Plan, GateStandsMidwayBetweenTheFirstTwoPrimaries) {
  const ManifoldPlan plan = read_engine(tap_text("air")).plan;
  // Four primaries at 0, 90, 180, 270 degrees: the gate at 45.
  const Eigen::Vector3d n(std::cos(30 * degree), std::sin(30 * degree) * std::sqrt(0.5),
                          std::sin(30 * degree) * std::sqrt(0.5));
  EXPECT_NEAR((plan.gates[0].n - n).norm(), 0, 1e-8);  // a billionth is added to break the tie of opposite ducts
  EXPECT_EQ(plan.gates[0].destination, -1);
}

TEST(Plan, ThroatAndTaperShapeTheOutletDuct) {
  const std::string text =
      with(rig_text, "outlet = \"run out\"", "outlet = \"run out\"\nthroat = \"50 mm\"\ntaper = \"100 mm\"");
  const DuctDrawing out = read_rig(text).setup.plan.ducts[2].drawing;
  EXPECT_NEAR(equal_area_bore(first_area(out)), 0.05, rounding);
  EXPECT_NEAR(equal_area_bore(area_at(out, 0.05)), 0.045, rounding);
  EXPECT_NEAR(equal_area_bore(area_at(out, 0.1)), 0.04, rounding);
  EXPECT_NEAR(out.length(), 0.4, rounding);
}

TEST(Plan, TaperDefaultsToSevenDegrees) {
  const RigCase rig = read_rig(with(rig_text, "outlet = \"run out\"", "outlet = \"run out\"\nthroat = \"50 mm\""));
  const double length = 0.005 / std::tan(7 * degree);
  const DuctDrawing out = rig.setup.plan.ducts[2].drawing;
  EXPECT_NEAR(equal_area_bore(area_at(out, length)), 0.04, 1e-9);
  EXPECT_GT(equal_area_bore(area_at(out, 0.9 * length)), 0.0404);
}

TEST(Plan, VoluteStartsAtTheThroatAndEndsAtTheScrolls) {
  const EngineCase c =
      read_engine(with(engine_text, "outlet = \"turbine\"", "outlet = \"turbine\"\nthroat = \"48 mm\""));
  const PlanPlace place = locate(c.plan, "volute", 0);
  const DuctDrawing& volute = c.plan.ducts[static_cast<std::size_t>(place.duct)].drawing;
  EXPECT_NEAR(equal_area_bore(first_area(volute)), 0.048, rounding);
  EXPECT_NEAR(last_area(volute), c.turbines[0].areas.scroll_throat, 1e-15);
  EXPECT_NEAR(volute.length(), 0.12, rounding);
}

TEST(Plan, DuctIntoATurbineGrowsTogetherWithItsVolute) {
  const std::string text = with(engine_text, "outlet = \"turbine\"", "outlet = \"neck\"") +
                           "[[duct]]\nname = \"neck\"\nto = \"turbine\"\nlength = \"80 mm\"\nbore = \"48 mm\"\n";
  const ManifoldPlan plan = read_engine(text).plan;  // its `from` is said by the joint's outlet
  const PlanPlace neck = locate(plan, "neck", 0.08), volute = locate(plan, "volute", 0);
  EXPECT_EQ(neck.duct, volute.duct);
  EXPECT_NEAR(neck.distance, volute.distance, rounding);
}

TEST(Plan, ThroatLeftOutIsAFifthWiderThanTheLargestPrimary) {
  const EngineCase c = read_engine(engine_text);
  const PlanPlace place = locate(c.plan, "volute", 0);
  const double primary = area_at(c.plan.ducts[0].drawing, 0.3);
  EXPECT_NEAR(first_area(c.plan.ducts[static_cast<std::size_t>(place.duct)].drawing), 1.2 * primary, 1e-9);
}

TEST(Plan, ShortDuctBetweenTwoJointsGivesThemItsVolume) {
  const std::string text =
      with(engine_text, "outlet = \"turbine\"", "outlet = \"slip\"\nvolume = \"50 cm^3\"") +
      "[[duct]]\nname = \"slip\"\nfrom = \"merge\"\nto = \"second\"\nto_angle = \"0 deg\"\nlength = \"2 mm\"\nbore = "
      "\"48 mm\"\n"
      "[[joint]]\nname = \"second\"\noutlet = \"turbine\"\nthroat = \"52 mm\"\nvolume = \"20 cm^3\"\n";
  const ManifoldPlan plan = read_engine(text).plan;
  EXPECT_TRUE(stretches(plan, "slip").empty());
  const JointNode both = joint(plan, "second");
  EXPECT_EQ(both.ports.size(), 5u);
  EXPECT_NEAR(both.ports[0].n.x(), -std::cos(15 * degree), 1e-9);
  EXPECT_NEAR(both.volume, 20e-6 + 50e-6 + 0.002 * std::numbers::pi / 4 * 0.048 * 0.048, 1e-12);
  ASSERT_EQ(plan.gates.size(), 1u);
  EXPECT_EQ(plan.nodes[static_cast<std::size_t>(plan.gates[0].joint)].name, "second");
}

TEST(Plan, SilencerStandsOnlyBehindTheTurbine) {
  const std::string text = engine_text +
                           "[[duct]]\nname = \"screamer\"\nfrom = \"merge\"\nfrom_angle = \"30 deg\"\nto = "
                           "\"air\"\nlength = \"300 mm\"\nbore = \"30 mm\"\n";
  const ManifoldPlan plan = read_engine(text).plan;
  EXPECT_TRUE(std::get<AirNode>(node(plan, "air at downpipe").kind).silencer);
  EXPECT_FALSE(std::get<AirNode>(node(plan, "air at screamer").kind).silencer);
}

TEST(Plan, EveryPortKnowsItsNodeAndEveryNodeItsPorts) {
  const ManifoldPlan plan = read_engine(tap_text("downpipe:250mm")).plan;
  for (std::size_t k = 0; k < plan.ducts.size(); ++k) {
    const NodePort start = plan.ducts[k].start, finish = plan.ducts[k].finish;
    const PlanPort& s = plan.nodes[static_cast<std::size_t>(start.node)].ports[static_cast<std::size_t>(start.port)];
    const PlanPort& f = plan.nodes[static_cast<std::size_t>(finish.node)].ports[static_cast<std::size_t>(finish.port)];
    EXPECT_TRUE(s.duct == static_cast<int>(k) && !s.at_finish);
    EXPECT_TRUE(f.duct == static_cast<int>(k) && f.at_finish);
  }
}

TEST(Plan, PlacesBeyondADuctAndUnknownNamesAreUsageErrors) {
  const ManifoldPlan plan = read_rig(rig_text).setup.plan;
  EXPECT_THROW(locate(plan, "stub", 0.3), Error);
  try {
    locate(plan, "stbu", 0);
    FAIL();
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::usage);
    EXPECT_NE(error.hint().find("'stub'"), std::string::npos);
  }
}

TEST(Plan, TwoPipesDownFromADividedTurbineKeepTheirScrolls) {
  std::string text = with(engine_text, "[turbine]", "[turbine]\nscrolls = 2");
  text = with(text, "cylinder = 2\n", "cylinder = 2\nto = \"rear\"\n");
  text = with(text, "cylinder = 3\n", "cylinder = 3\nto = \"rear\"\n");
  text = with(text, "outlet = \"turbine\"", "outlet = \"turbine.a\"") +
         "[[joint]]\nname = \"rear\"\noutlet = \"turbine.b\"\n";
  const ManifoldPlan plan = read_engine(text).plan;
  const TurbineNode& turbine = std::get<TurbineNode>(node(plan, "turbine").kind);
  ASSERT_EQ(turbine.scroll.size(), 3u);
  EXPECT_EQ(turbine.scroll[static_cast<std::size_t>(turbine.outlet)], -1);
  for (const auto& [name, scroll] : {std::pair{"volute a", 0}, std::pair{"volute b", 1}}) {
    const int port = plan.ducts[static_cast<std::size_t>(locate(plan, name, 0).duct)].finish.port;
    EXPECT_EQ(turbine.scroll[static_cast<std::size_t>(port)], scroll);
  }
}

}  // namespace
}  // namespace pulsewright
