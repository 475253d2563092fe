#include "shared/case_file.hpp"

#include <gtest/gtest.h>

#include "tests/shared/fault.hpp"
#include "tests/shared/scratch.hpp"

namespace pulsewright {
namespace {

// All that a reader of one length has to say about a case.
std::string fault_of_length(const std::string& value) {
  CaseFile file = CaseFile::from_text("[engine]\nbore = " + value + "\n", "demo.toml");
  file.root().table("engine").quantity("bore", Dimension::length);
  return refusal_of([&] { file.finish(); }).text;
}

TEST(CaseFile, ReadsEveryKindOfValue) {
  CaseFile file = CaseFile::from_text(R"(
title = "Hill-climb two-litre"
[run]
rpm = [2500, 3500.5]
friction = true
factor = 1
[engine]
bore = "86 mm"
cylinders = 4
firing_order = [1, 3, 4, 2]
fuel = "Petrol"
opens = "54 deg before bdc"
area_table = [["0 mm", "50 mm"], ["250 mm", "42 mm"]]
)",
                                      "demo.toml");
  const CaseTable root = file.root(), run = root.table("run"), engine = root.table("engine");
  EXPECT_EQ(root.need_text("title"), "Hill-climb two-litre");
  EXPECT_EQ(run.numbers("rpm", above(0)), (std::vector<double>{2500, 3500.5}));
  EXPECT_EQ(run.boolean("friction"), true);
  EXPECT_EQ(run.number("factor", between(0, 2)), 1.0);
  EXPECT_DOUBLE_EQ(engine.need_quantity("bore", Dimension::length), 0.086);
  EXPECT_EQ(engine.count("cylinders", 1, 16), 4);
  EXPECT_EQ(engine.counts("firing_order", 1, 4), (std::vector<int>{1, 3, 4, 2}));
  EXPECT_EQ(engine.choice("fuel", {"petrol", "diesel"}), "petrol");
  EXPECT_EQ(engine.cam_angle("opens")->dead, DeadCentre::bottom);
  EXPECT_DOUBLE_EQ(engine.rows("area_table", {Dimension::length, Dimension::length})->at(1).at(0), 0.25);
  EXPECT_FALSE(engine.quantity("stroke", Dimension::length).has_value());
  EXPECT_NO_THROW(file.finish());
}

TEST(CaseFile, AFaultShowsFileLineColumnTheLineAndAMark) {
  const std::string text = fault_of_length("\"900 C\"");
  EXPECT_TRUE(says(text, "demo.toml:2:8: '900 C' is a temperature, but `bore` takes a length"));
  EXPECT_TRUE(says(text, "\n  2 | bore = \"900 C\"\n    |        ^"));
}

TEST(CaseFile, RefusesWhatIsNoLength) {
  EXPECT_TRUE(says(fault_of_length("86"), "this is the number 86"));
  EXPECT_TRUE(says(fault_of_length("86"), "between quotes"));
  EXPECT_TRUE(says(fault_of_length("\"86\""), "has no unit"));
  EXPECT_TRUE(says(fault_of_length("\"86 mmm\""), "not a unit"));
  EXPECT_TRUE(says(fault_of_length("\"36,6 mm\""), "36.6 mm"));
  EXPECT_TRUE(says(fault_of_length("\"-86 mm\""), "must be above 0 mm"));
  EXPECT_TRUE(says(fault_of_length("\"0 mm\""), "must be above 0 mm"));
  EXPECT_TRUE(says(fault_of_length("\"1e300 mm\""), "must be above 0 mm and at most 1e+06 mm"));
  EXPECT_TRUE(says(fault_of_length("\"nan mm\""), "not a finite number"));
  EXPECT_TRUE(says(fault_of_length("\"inf mm\""), "not a finite number"));
  EXPECT_TRUE(says(fault_of_length("nan"), "this is the number nan"));
  EXPECT_TRUE(says(fault_of_length("true"), "this is true"));
  EXPECT_TRUE(says(fault_of_length("[]"), "this is a list"));
  EXPECT_TRUE(says(fault_of_length("{}"), "this is a table"));
  EXPECT_TRUE(says(fault_of_length("2020-01-01"), "date"));
}

TEST(CaseFile, PlainNumbersMustBeFiniteAndInTheirRange) {
  for (const char* value : {"nan", "inf", "-inf", "1e300", "-1", "0", "\"3000 rpm\""}) {
    CaseFile file = CaseFile::from_text(std::string("rpm = ") + value, "demo.toml");
    file.root().number("rpm", above(0, 30000));
    const Refusal refusal = refusal_of([&] { file.finish(); });
    EXPECT_EQ(refusal.kind, ErrorKind::case_file) << value;
    EXPECT_TRUE(says(refusal.text, "`rpm`")) << value;
  }
}

TEST(CaseFile, AllFaultsComeAtOnceInTheOrderOfTheFile) {
  CaseFile file = CaseFile::from_text("a = \"1 K\"\nb = 3\nunknwon = 1\n[t]\nc = \"x\"\n", "demo.toml");
  const CaseTable root = file.root();
  root.table("t").number("c", at_least(0));
  root.text("b");
  root.quantity("a", Dimension::length);
  root.known("unknown");
  root.need("missing_thing");
  const Refusal refusal = refusal_of([&] { file.finish(); });
  EXPECT_EQ(refusal.kind, ErrorKind::case_file);
  std::size_t last = 0;
  for (const char* part : {"`missing_thing` is missing", ":1:5:", ":2:5:", ":3:1:", ":5:5:"}) {
    const std::size_t at = refusal.text.find(part);
    EXPECT_NE(at, std::string::npos) << part << " in\n" << refusal.text;
    EXPECT_GE(at, last) << part;
    last = at;
  }
}

TEST(CaseFile, AnUnknownKeyNamesTheNearestAllowedOne) {
  CaseFile file =
      CaseFile::from_text("[engine]\nbroe = \"86 mm\"\n[enigne]\nx = 1\n[[primary]]\nlenght = \"1 m\"\n", "d.toml");
  const CaseTable root = file.root();
  root.table("engine").quantity("bore", Dimension::length);
  for (const CaseTable& primary : root.tables("primary")) primary.quantity("length", Dimension::length);
  const std::string text = refusal_of([&] { file.finish(); }).text;
  EXPECT_TRUE(says(text, "d.toml:2:1: the key 'broe' in [engine] is not known"));
  EXPECT_TRUE(says(text, "did you mean `bore`?"));
  EXPECT_TRUE(says(text, "the table 'enigne' is not known"));
  EXPECT_TRUE(says(text, "did you mean `engine`?"));
  EXPECT_TRUE(says(text, "the key 'lenght' in [primary 1] is not known"));
  EXPECT_TRUE(says(text, "did you mean `length`?"));
}

TEST(CaseFile, OneTableCountsAsAListOfOne) {
  CaseFile file = CaseFile::from_text("[turbine]\nscrolls = 2\n", "demo.toml");
  const std::vector<CaseTable> turbines = file.root().tables("turbine");
  ASSERT_EQ(turbines.size(), 1U);
  EXPECT_EQ(turbines[0].count("scrolls", 1, 2), 2);
}

TEST(CaseFile, AnAbsentTableHoldsNothingAndFaultsNothing) {
  CaseFile file = CaseFile::from_text("a = 1\n", "demo.toml");
  file.root().known("a");
  const CaseTable absent = file.root().table("engine").table("exhaust_valve");
  EXPECT_FALSE(absent.exists());
  EXPECT_FALSE(absent.quantity("head", Dimension::length).has_value());
  EXPECT_NO_THROW(file.finish());
  absent.need_quantity("head", Dimension::length);
  EXPECT_TRUE(says(refusal_of([&] { file.finish(); }).text, "`head` is missing in [engine.exhaust_valve]"));
}

TEST(CaseFile, AFaultOfTheReaderMayNameTwoLines) {
  CaseFile file = CaseFile::from_text("[[duct]]\nto = \"a\"\n[[duct]]\nto = \"a\"\n", "demo.toml");
  const std::vector<CaseTable> ducts = file.root().tables("duct");
  for (const CaseTable& duct : ducts) duct.text("to");
  ducts[1].fault("to", "the end 'a' is said twice", "first in " + ducts[0].line_of("to"));
  const std::string text = refusal_of([&] { file.finish(); }).text;
  EXPECT_TRUE(says(text, "demo.toml:4:6: the end 'a' is said twice"));
  EXPECT_TRUE(says(text, "first in demo.toml:2"));
}

TEST(CaseFile, WhatAParserThrowsBecomesAFaultAtTheValue) {
  CaseFile file = CaseFile::from_text("exit = \"blob 3 mm\"\n", "demo.toml");
  const auto parse = [](std::string_view) -> int {
    throw Error(ErrorKind::case_file, "no such shape", {}, "round 32 mm");
  };
  EXPECT_FALSE(file.root().parsed("exit", parse).has_value());
  EXPECT_TRUE(says(refusal_of([&] { file.finish(); }).text, "demo.toml:1:8: no such shape"));
}

TEST(CaseFile, WrongKindsOfTablesAndListsAreFaults) {
  CaseFile file = CaseFile::from_text(
      "engine = 3\nprimary = [1, 2]\nrpm = []\norder = [1, 9]\npairs = [[\"1 mm\"]]\nn = 2.5\n", "d.toml");
  const CaseTable root = file.root();
  root.table("engine");
  root.tables("primary");
  root.numbers("rpm", above(0));
  root.counts("order", 1, 4);
  root.rows("pairs", {Dimension::length, Dimension::length});
  root.count("n", 1, 4);
  const std::string text = refusal_of([&] { file.finish(); }).text;
  for (int line = 1; line <= 6; ++line) EXPECT_TRUE(says(text, "d.toml:" + std::to_string(line) + ":"));
}

TEST(CaseFile, HostileTextCannotReachTheTerminal) {
  CaseFile file = CaseFile::from_text("name = \"a\\u001b[31mb\"\n\"k\\u001b\" = 1\n", "d.toml");
  file.root().text("name");
  const std::string text = refusal_of([&] { file.finish(); }).text;
  EXPECT_EQ(text.find('\x1b'), std::string::npos);
  EXPECT_TRUE(says(text, "plain text"));
}

TEST(CaseFile, MarksTheRightLetterBehindWideLetters) {
  CaseFile file = CaseFile::from_text("x = { title = \"Zündkerze\", bore = \"1 K\" }\n", "d.toml");
  const CaseTable x = file.root().table("x");
  x.text("title");
  x.quantity("bore", Dimension::length);
  const std::string text = refusal_of([&] { file.finish(); }).text;
  EXPECT_TRUE(says(text, "\n    |" + std::string(1 + 34, ' ') + "^"));
}

TEST(CaseFile, ALongLineIsShownRoundItsMark) {
  CaseFile file = CaseFile::from_text("a = \"" + std::string(100000, 'y') + "\"\n", "d.toml");
  file.root().text("a");
  EXPECT_LT(refusal_of([&] { file.finish(); }).text.size(), 600U);
}

TEST(CaseFile, HundredsOfFaultsAreCutShort) {
  std::string text;
  for (int i = 0; i < 500; ++i) text += "k" + std::to_string(i) + " = 1\n";
  CaseFile file = CaseFile::from_text(text, "d.toml");
  file.root();
  EXPECT_TRUE(says(refusal_of([&] { file.finish(); }).text, "and 460 more"));
}

}  // namespace
}  // namespace pulsewright
