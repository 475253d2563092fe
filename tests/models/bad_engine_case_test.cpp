// Whatever is wrong in an engine case is said, with its line and what would be right.

#include <gtest/gtest.h>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_fault;
using test::engine_text;
using test::says;
using test::with;

/// One line of the good case replaced, and what the message must hold.
struct BadLine {
  const char* what;
  const char* by;
  std::vector<const char*> said;
};

void expect_said(const std::string& fault, const BadLine& bad) {
  for (const std::string words : bad.said) EXPECT_TRUE(says(fault, {words})) << bad.by;
}

TEST(BadEngineCase, GoodOneHasNoFault) { EXPECT_EQ(engine_fault(engine_text), ""); }

TEST(BadEngineCase, UnitsAndNumbersAreNamedWithTheirLine) {
  const std::vector<BadLine> lines = {
      {"bore = \"86 mm\"", "bore = \"86\"", {"case.toml:4", "bore", "86"}},
      {"bore = \"86 mm\"", "bore = 86", {"case.toml:4", "bore"}},
      {"bore = \"86 mm\"", "bore = \"86 mn\"", {"case.toml:4", "mn"}},
      {"bore = \"86 mm\"", "bore = \"900 C\"", {"case.toml:4", "900 C", "length"}},
      {"bore = \"86 mm\"", "bore = \"450 K\"", {"case.toml:4", "450 K", "length"}},
      {"bore = \"86 mm\"", "bore = \"86,6 mm\"", {"case.toml:4", "86,6 mm"}},
      {"bore = \"86 mm\"", "bore = \"-86 mm\"", {"case.toml:4", "-86 mm"}},
      {"bore = \"86 mm\"", "bore = \"0 mm\"", {"case.toml:4", "0 mm"}},
      {"bore = \"86 mm\"", "bore = \"nan mm\"", {"case.toml:4", "bore"}},
      {"bore = \"86 mm\"", "bore = \"inf mm\"", {"case.toml:4", "bore"}},
      {"bore = \"86 mm\"", "bore = \"1e300 mm\"", {"case.toml:4", "1e300 mm"}},
      {"redline = 7500", "redline = nan", {"case.toml:6", "redline"}},
      {"redline = 7500", "redline = inf", {"case.toml:6", "redline"}},
      {"redline = 7500", "redline = 1e300", {"case.toml:6", "redline"}},
      {"redline = 7500", "redline = -7500", {"case.toml:6", "redline"}},
      {"redline = 7500", "redline = \"7500 rpm\"", {"case.toml:6", "redline"}},
      {"\"1.0 bar\"", "\"2.0 bara\"", {"case.toml:10", "boost_gauge"}},
      {"\"1.0 bar\"", "\"30 psia\"", {"case.toml:10", "boost_gauge"}},
      {"oval 36 mm x 28 mm", "egg 36 mm x 28 mm", {"case.toml:8", "egg"}},
      {"NPS 1-1/4 sch 10S", "1-1/4", {"case.toml:16", "1-1/4"}},
  };
  for (const BadLine& bad : lines) expect_said(engine_fault(with(engine_text, bad.what, bad.by)), bad);
}

TEST(BadEngineCase, GaugeIsRefusedWhereAbsoluteIsAsked) {
  const std::string fault = engine_fault(engine_text + "[ambient]\npressure = \"0 psig\"\ntemperature = \"20 degC\"\n");
  EXPECT_TRUE(says(fault, {"psig", "pressure"}));
}

TEST(BadEngineCase, UnknownKeysNameTheNearest) {
  EXPECT_TRUE(says(engine_fault(with(engine_text, "stroke = ", "strok = ")), {"strok", "`stroke`"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "[charge]", "[chrage]")), {"charge"}));
  EXPECT_TRUE(
      says(engine_fault(with(engine_text, "length = \"310 mm\"", "lenght = \"310 mm\"")), {"lenght", "length"}));
}

/// How many faults a message tells: each shows its line with a mark under it.
std::size_t faults_in(const std::string& message) {
  std::size_t count = 0;
  for (std::size_t at = message.find("case.toml:"); at != std::string::npos; at = message.find("case.toml:", at + 1))
    ++count;
  return count;
}

TEST(BadEngineCase, AMisspeltArrangementIsOneFaultAndNotOneForEachPrimary) {
  std::string six = with(engine_text, "inline 4", "inlin 6");
  for (const char* c : {"5", "6"}) six += std::string("[[primary]]\ncylinder = ") + c + "\nlength = \"300 mm\"\n";
  const std::string fault = engine_fault(six);
  EXPECT_TRUE(says(fault, {"inlin 6", "inline 6"}));
  EXPECT_EQ(faults_in(fault), 1u) << fault;
}

TEST(BadEngineCase, WhatIsRequiredIsAskedFor) {
  EXPECT_TRUE(says(engine_fault(with(engine_text, "arrangement = \"inline 4\"", "")), {"how many cylinders"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "bore = \"86 mm\"", "")), {"`bore` is missing"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline = 7500", "")), {"`redline` is missing"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "boost_gauge = \"1.0 bar\"", "")), {"`boost_gauge` is missing"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "[turbine]", "")), {"no turbine"}));
}

TEST(BadEngineCase, EveryCylinderHasOnePrimary) {
  EXPECT_TRUE(says(engine_fault(with(engine_text, "[[primary]]\ncylinder = 3\nlength = \"240 mm\"", "")),
                   {"cylinder 3 has no primary"}));
  const std::string twice = engine_fault(with(engine_text, "cylinder = 3", "name = \"other\"\ncylinder = 2"));
  EXPECT_TRUE(says(twice, {"cylinder 2 has two primaries", "case.toml:22", "cylinder 3 has no primary"}));
  EXPECT_TRUE(
      says(engine_fault(with(engine_text, "cylinder = 3", "cylinder = 5")), {"cylinder is 5, but the engine has 4"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "cylinder = 3", "cylinder = 0")), {"cylinder"}));
}

TEST(BadEngineCase, ImpossibleCamsAreRefused) {
  const std::string valve = "[engine.exhaust_valve]\n";
  const auto cam = [&](const std::string& lines) { return engine_fault(engine_text + valve + lines); };
  EXPECT_EQ(cam("opens = \"54 deg before bdc\"\ncloses = \"18 deg after tdc\"\n"), "");
  EXPECT_TRUE(says(cam("opens = \"54 deg before bdc\"\ncloses = \"170 deg before tdc\"\n"), {"impossible cam"}));
  EXPECT_TRUE(says(cam("opens = \"54 deg\"\n"), {"cam timing"}));
  EXPECT_TRUE(says(cam("opens = \"200 deg before bdc\"\n"), {"impossible cam"}));
  EXPECT_TRUE(says(cam("lift = \"0.05 mm\"\n"), {"impossible cam"}));
  const std::string table =
      "lift_table = [[\"-250 deg\", \"0 mm\"], [\"-200 deg\", \"2 mm\"], [\"-110 deg\", \"9 mm\"], [\"-20 deg\", "
      "\"2 mm\"], [\"30 deg\", \"0 mm\"]]\n";
  EXPECT_EQ(cam(table), "");
  EXPECT_TRUE(says(cam(table + "lift = \"9 mm\"\n"), {"says it twice"}));
  EXPECT_TRUE(says(cam("lift_table = [[\"0 deg\", \"0 mm\"], [\"10 deg\", \"2 mm\"]]\n"), {"points"}));
  EXPECT_TRUE(says(cam("lift_table = \"no such file.csv\"\n"), {"no such file"}));
  EXPECT_TRUE(says(cam("flow_coefficient = { lift = [\"1 mm\"], coefficient = [0.7, 0.6] }\n"), {"as many lifts"}));
  EXPECT_TRUE(says(cam("throat = \"40 mm\"\nhead = \"29 mm\"\n"), {"does not lie under a head"}));
}

TEST(BadEngineCase, FiringOrderNamesEveryCylinderOnce) {
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline", "firing_order = [1, 3, 3, 2]\nredline")), {"1-3-3-2"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline", "firing_order = [1, 2]\nredline")), {"each of the 4"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline", "cylinders = 6\nredline")), {"cylinders is 6"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "inline 4", "inlin 4")), {"inline 4"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline", "firing_at = [\"0 deg\", \"180 deg\"]\nredline")),
                   {"2 angles for 4"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline",
                                     "firing_order = [1, 3, 4, 2]\nfiring_at = [\"0 deg\", "
                                     "\"180 deg\", \"360 deg\", \"540 deg\"]\nredline")),
                   {"make the order 1-2-3-4", "firing_order is 1-3-4-2"}));
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline", "bank = [1, 2]\nredline")), {"2 entries for 4"}));
}

TEST(BadEngineCase, FuelsThatAreKnownAreListed) {
  EXPECT_TRUE(says(engine_fault(with(engine_text, "redline", "fuel = \"paraffin\"\nredline")),
                   {"paraffin", "'petrol'", "E85"}));
}

TEST(BadEngineCase, WhatIsNotBuiltYetSaysSo) {
  const std::vector<BadLine> lines = {
      {"length = \"310 mm\"",
       "length = \"310 mm\"\npieces = [ { straight = \"55 mm\" } ]",
       {"pieces is not possible yet"}},
      {"cell = \"5 mm\"", "cell = \"5 mm\"\n[jig]\nname = \"x\"", {"[jig] is not possible yet"}},
  };
  for (const BadLine& bad : lines) expect_said(engine_fault(with(engine_text, bad.what, bad.by)), bad);
}

TEST(BadEngineCase, WaysToSetTheBoostAreNamed) {
  const BadLine bad{
      "cell = \"5 mm\"", "cell = \"5 mm\"\nboost = \"held\"", {"held", "given", "hold", "balanced", "step"}};
  expect_said(engine_fault(with(engine_text, bad.what, bad.by)), bad);
}

TEST(BadEngineCase, ATurbineIsGivenWholeOrNotAtAll) {
  const std::vector<BadLine> lines = {
      {"[turbine]", "[turbine]\na_over_r = \"0.63 in\"", {"inducer is missing", "exducer is missing"}},
      {"[turbine]",
       "[turbine]\na_over_r = 63\ninducer = \"64 mm\"\nexducer = \"55 mm\"",
       {"a_over_r", "at most 5", "63"}},
      {"[turbine]",
       "[turbine]\na_over_r = 0.63\ninducer = \"55 mm\"\nexducer = \"64 mm\"\nrotor_over_throat = 1",
       {"the exducer is wider than the inducer", "already tell rotor from throat"}},
      {"[turbine]", "[turbine]\nrotor_exit_angle = \"60 deg\"", {"belongs to a housing given by a_over_r"}},
      {"[turbine]", "[[turbine]]\n[[turbine]]\nname = \"b\"", {"several turbines, and this one has no name"}},
  };
  for (const BadLine& bad : lines) expect_said(engine_fault(with(engine_text, bad.what, bad.by)), bad);
}

TEST(BadEngineCase, AllFaultsComeAtOnce) {
  std::string text = with(engine_text, "bore = \"86 mm\"", "bore = \"86 mn\"");
  text = with(text, "redline = 7500", "redlin = 7500");
  text = with(text, "to = \"merge\"", "to = \"merg\"");
  text = with(text, "cylinder = 3", "cylinder = 2\nname = \"x\"");
  const std::string fault = engine_fault(text);
  EXPECT_TRUE(says(fault, {"86 mn", "redlin", "'merg'", "two primaries", "cylinder 3 has no primary"}));
}

}  // namespace
}  // namespace pulsewright
