// A network that cannot be is refused: names, ends, joints and addresses.

#include <gtest/gtest.h>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_fault;
using test::engine_text;
using test::rig_fault;
using test::rig_text;
using test::says;
using test::with;

TEST(BadNetwork, GoodRigHasNoFault) { EXPECT_EQ(rig_fault(rig_text), ""); }

TEST(BadNetwork, DuplicateNamesNameBothPlaces) {
  EXPECT_TRUE(
      says(rig_fault(with(rig_text, "name = \"stub\"", "name = \"run in\"")), {"'run in' is taken", "case.toml:6"}));
  EXPECT_TRUE(says(rig_fault(with(rig_text, "name = \"stub\"", "name = \"tee\"")), {"'tee' is taken"}));
  EXPECT_TRUE(
      says(engine_fault(with(engine_text, "name = \"downpipe\"", "name = \"primary 1\"")), {"'primary 1' is taken"}));
}

TEST(BadNetwork, DuctToNowhereNamesTheNearest) {
  const std::string fault = rig_fault(with(rig_text, "to = \"far right\"", "to = \"far rihgt\""));
  EXPECT_TRUE(says(fault, {"nothing is called 'far rihgt'", "'far right'", "case.toml:27"}));
  EXPECT_TRUE(says(rig_fault(with(rig_text, "to = \"far right\"", "")), {"has no `to`"}));
}

TEST(BadNetwork, DuctEndSaidTwiceNamesBothLines) {
  // The joint takes for its outlet a duct that runs elsewhere.
  const std::string fault = rig_fault(with(rig_text, "from = \"tee\"", "from = \"blind\""));
  EXPECT_TRUE(says(fault, {"has the outlet 'run out'", "case.toml:34", "case.toml:26"}));
  // Two ducts at one end.
  const std::string ends = rig_fault(with(rig_text, "from = \"blind\"", "from = \"far left\""));
  EXPECT_TRUE(says(ends, {"two ducts stand at the end 'far left'", "case.toml:8"}));
}

TEST(BadNetwork, TwoDuctsInOneTurbineEntryNameBothLines) {
  const std::string fault = engine_fault(with(engine_text, "cylinder = 3", "cylinder = 3\nto = \"turbine\""));
  EXPECT_TRUE(says(fault, {"two ducts enter 'turbine'", "case.toml:34"}));
}

TEST(BadNetwork, MomentumJointOfThreeDuctsNeedsAnAngle) {
  std::string text = with(with(rig_text, "to_angle = \"0 deg\"\n", ""), "to_angle = \"90 deg\"\n", "");
  EXPECT_TRUE(says(rig_fault(text), {"joint 'tee' joins 3 ducts, and none says its angle", "to_angle"}));
  text = with(text, "outlet = ", "law = \"constant-pressure\"\noutlet = ");
  EXPECT_EQ(rig_fault(text), "");
  EXPECT_TRUE(
      says(engine_fault(with(engine_text, "angle = \"15 deg\"\n", "")), {"joins 5 ducts, and none says its angle"}));
}

TEST(BadNetwork, JointOfOneDuctIsRefused) {
  std::string text = with(rig_text, "to = \"tee\"\nto_angle = \"0 deg\"", "to = \"other\"");
  EXPECT_TRUE(says(rig_fault(text + "[[joint]]\nname = \"other\"\noutlet = \"run in\"\n"),
                   {"joint 'other' has one duct only"}));
  EXPECT_TRUE(says(rig_fault(rig_text + "[[joint]]\nname = \"other\"\n"), {"nothing leads to 'other'"}));
  EXPECT_TRUE(says(rig_fault(rig_text + "[[end]]\nname = \"other\"\nkind = \"closed\"\n"),
                   {"no duct leads to the end 'other'"}));
}

TEST(BadNetwork, MoreDuctsThanAJointTakesAreRefused) {
  std::string text = rig_text;
  for (int i = 0; i < 6; ++i) {
    const std::string n = std::to_string(i);
    text += "[[duct]]\nname = \"more " + n + "\"\nfrom = \"wall " + n +
            "\"\nto = \"tee\"\nto_angle = \"30 deg\"\nlength = \"200 mm\"\n" +
            "bore = \"30 mm\"\npressure = \"1 bar\"\ntemperature = \"300 K\"\n[[end]]\nname = \"wall " + n +
            "\"\nkind = \"closed\"\n";
  }
  EXPECT_TRUE(says(rig_fault(text), {"9 ducts meet in joint 'tee'", "at most 8"}));
}

TEST(BadNetwork, PiecesThatDoNotHangTogetherAreRefused) {
  const std::string apart =
      "[[duct]]\nname = \"apart\"\nfrom = \"a\"\nto = \"b\"\nlength = \"100 mm\"\nbore = \"30 mm\"\npressure = \"1 "
      "bar\"\n"
      "temperature = \"300 K\"\n[[end]]\nname = \"a\"\nkind = \"closed\"\n[[end]]\nname = \"b\"\nkind = \"closed\"\n";
  EXPECT_TRUE(says(rig_fault(rig_text + apart), {"'apart' hangs together with nothing else"}));
}

TEST(BadNetwork, CylinderNeedsAWayToATurbine) {
  EXPECT_TRUE(says(engine_fault(with(engine_text, "cylinder = 3", "cylinder = 3\nto = \"air\"")),
                   {"cylinder 3 finds no way to a turbine"}));
}

TEST(BadNetwork, TapsLieInsideTheirDuct) {
  const std::string gate = with(engine_text, "at = \"merge\"", "at = \"merge\"\nto = \"downpipe:901 mm\"");
  EXPECT_TRUE(says(engine_fault(gate), {"must lie inside the duct", "900 mm"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "at = \"merge\"", "at = \"downpipe:250\"")), {"250"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "at = \"merge\"", "at = \"downpip:250mm\"")), {"'downpipe'"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "at = \"merge\"", "at = \"downpipe\"")), {"say where along it"}));
}

TEST(BadNetwork, ScrollsOfADividedTurbineAreNamed) {
  const std::string divided = with(engine_text, "[turbine]", "[turbine]\nscrolls = 2");
  EXPECT_TRUE(says(engine_fault(divided), {"2 scrolls: say which", "'turbine.a' or 'turbine.b'"}));
  EXPECT_TRUE(says(engine_fault(with(divided, "outlet = \"turbine\"", "outlet = \"turbine.c\"")), {"no entry"}));
  EXPECT_TRUE(says(engine_fault(with(divided, "outlet = \"turbine\"", "outlet = \"turbine.a\"")),
                   {"has 2 entries, and 1 are fed"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "outlet = \"turbine\"", "outlet = \"turbine.out\"")),
                   {"where the downpipe starts"}));
}

TEST(BadNetwork, RigDuctShorterThanACellIsRefused) {
  EXPECT_TRUE(says(rig_fault(with(rig_text, "length = \"200 mm\"", "length = \"4 mm\"")), {"shorter than one cell"}));
}

TEST(BadNetwork, BoreSaidTwiceNamesBoth) {
  EXPECT_TRUE(says(rig_fault(with(rig_text, "bore = \"30 mm\"", "bore = \"30 mm\"\ntube = \"NPS 1 sch 10S\"")),
                   {"the bore is said twice"}));
  EXPECT_TRUE(says(rig_fault(with(rig_text, "bore = \"30 mm\"", "")), {"no bore"}));
}

TEST(BadNetwork, RigValuesHaveLimits) {
  for (const char* bad : {"\"1e300 bar\"", "\"0 bar\"", "\"-1 bar\"", "\"1 barg\"", "\"nan bar\"", "1", "\"1 mm\""})
    EXPECT_TRUE(says(rig_fault(with(rig_text, "pressure = \"1 bar\"", std::string("pressure = ") + bad)), {"pressure"}))
        << bad;
  for (const char* bad : {"\"0 K\"", "\"1e300 K\"", "\"-300 degC\"", "\"1 bar\""})
    EXPECT_TRUE(says(rig_fault(with(rig_text, "temperature = \"300 K\"", std::string("temperature = ") + bad)),
                     {"temperature"}))
        << bad;
  EXPECT_TRUE(says(rig_fault(with(rig_text, "gamma = 1.4", "gamma = 0.9")), {"gamma"}));
  EXPECT_TRUE(says(rig_fault(with(rig_text, "duration = \"1 ms\"", "duration = \"0 ms\"")), {"duration"}));
  EXPECT_TRUE(says(rig_fault(with(rig_text, "cell = \"5 mm\"", "cell = \"1e-30 mm\"")), {"cell"}));
  EXPECT_TRUE(says(rig_fault(with(rig_text, "kind = \"closed\"", "kind = \"clsed\"")), {"closed"}));
}

}  // namespace
}  // namespace pulsewright
