// Whatever is wrong in a case or on the command line: a clear message, the right exit code, nothing written.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <ostream>
#include <stdexcept>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

const std::string engine_case = "03_equal_primaries.toml", rig_case = "01_shock_tube.toml";

/// The good text with its first `what` replaced, or with `by` at its end where `what` is empty.
std::string edited(std::string text, const std::string& what, const std::string& by) {
  if (what.empty()) return text + by;
  const auto at = text.find(what);
  if (at == std::string::npos) throw std::logic_error("not in the case: " + what);
  return text.replace(at, what.size(), by);
}

testing::AssertionResult says(const std::string& message, const std::vector<std::string>& words) {
  for (const std::string& word : words)
    if (message.find(word) == std::string::npos)
      return testing::AssertionFailure() << "'" << word << "' is not in:\n" << message;
  return testing::AssertionSuccess();
}

/// One change in one file of the good cases, and what is said about it.
struct BadInput {
  const char* name;
  std::string file, what, by;
  std::vector<std::string> said;
};

/// In `said`: file and line of the edit, and of the line below it.
const std::string here = "<here>:", line_below = "<line below>:";

/// `bad` with the lines counted in the good text, so that a comment added to a case moves no test.
BadInput with_places(BadInput bad, const std::string& text) {
  const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(text.find(bad.what)), '\n');
  for (std::string& word : bad.said)
    for (const auto& [mark, number] : {std::pair{here, line}, {line_below, line + 1}})
      if (word.starts_with(mark)) word.replace(0, mark.size(), bad.file + ":" + std::to_string(number) + ":");
  return bad;
}

void PrintTo(const BadInput& bad, std::ostream* out) { *out << bad.file << ": " << bad.by; }

class BadCase : public testing::TestWithParam<BadInput> {};

TEST_P(BadCase, IsToldAndNothingIsWritten) {
  const Workshop shop;
  const BadInput bad = with_places(GetParam(), shop.read(GetParam().file));
  shop.write(bad.file, edited(shop.read(bad.file), bad.what, bad.by));
  const auto before = shop.files();
  const bool rig = bad.file == rig_case;
  const Outcome o = shop.run({"run", rig ? rig_case : engine_case, "--out", "bad.h5"});
  EXPECT_EQ(o.exit_code, 3) << o.err;
  EXPECT_TRUE(says(o.err, bad.said));
  EXPECT_TRUE(o.out.empty());
  EXPECT_EQ(shop.files(), before);
  // check, which computes nothing, says the same.
  const Outcome checked = shop.run({"check", rig ? rig_case : engine_case});
  EXPECT_EQ(checked.exit_code, 3);
  EXPECT_EQ(checked.err, o.err);
}

const std::string bore = "bore              = \"86 mm\"", length = "length = \"450 mm\"",
                  primary_two = "[[primary]]\ncylinder = 2\nclock    = \"270 deg\"\n";

INSTANTIATE_TEST_SUITE_P(
    Values, BadCase,
    testing::Values(
        BadInput{"WrongUnit", "engine.toml", bore, "bore = \"86 kg\"", {here, "86 kg", "length"}},
        BadInput{"MissingUnit", "engine.toml", bore, "bore = \"86\"", {here, "86"}},
        BadInput{"PlainNumber", "engine.toml", bore, "bore = 86", {here, "bore"}},
        BadInput{"MisspeltUnit", "engine.toml", bore, "bore = \"86 mmm\"", {here, "mmm"}},
        BadInput{"TemperatureForALength", engine_case, length, "length = \"900 C\"", {here, "900 C", "length"}},
        BadInput{"DecimalComma", engine_case, length, "length = \"36,6 mm\"", {here, "36,6 mm", "36.6"}},
        BadInput{"Negative", "engine.toml", bore, "bore = \"-86 mm\"", {here, "-86 mm"}},
        BadInput{"Zero", "engine.toml", bore, "bore = \"0 mm\"", {here, "0 mm"}},
        BadInput{"NoNumber", "engine.toml", bore, "bore = \"nan mm\"", {here, "bore"}},
        BadInput{"Infinite", "engine.toml", bore, "bore = \"inf mm\"", {here, "bore"}},
        BadInput{"Huge", "engine.toml", bore, "bore = \"1e300 mm\"", {here, "1e300"}},
        BadInput{"HugePlainNumber", "engine.toml", "redline           = 7500", "redline = 1e300", {here, "redline"}},
        BadInput{"NoNumberAsTomlHasIt", "engine.toml", "redline           = 7500", "redline = nan", {here, "redline"}},
        BadInput{"GaugeWhereAbsoluteIsAsked",
                 "engine.toml",
                 "altitude = \"300 m\"",
                 "pressure = \"14.7 psig\"",
                 {here, "psig", "pressure"}},
        BadInput{"AbsoluteWhereGaugeIsAsked",
                 "engine.toml",
                 "boost_gauge = \"1.0 bar\"",
                 "boost_gauge = \"30 psia\"",
                 {here, "psia", "boost_gauge"}}),
    [](const auto& one) { return std::string(one.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Keys, BadCase,
    testing::Values(BadInput{"Unknown", "engine.toml", "stroke ", "strok ", {here, "strok", "`stroke`"}},
                    BadInput{"UnknownTable", "engine.toml", "[charge]", "[chrage]", {here, "chrage", "charge"}},
                    BadInput{"SaidTwice", "engine.toml", bore, bore + "\nbore = \"80 mm\"", {line_below, "bore"}},
                    BadInput{"Syntax", "turbo.toml", "[turbine]", "[turbine", {"turbo.toml:2:"}},
                    BadInput{"UnclosedText", "turbo.toml", "\"63.5 mm\"", "\"63.5 mm", {"turbo.toml:"}}),
    [](const auto& one) { return std::string(one.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Network, BadCase,
    testing::Values(
        BadInput{"NameTwice",
                 engine_case,
                 "name    = \"gate\"",
                 "name = \"merge\"",
                 {"'merge' is taken", engine_case + ":"}},
        BadInput{"DuctToNowhere", engine_case, "to     = \"merge\"", "to = \"merg\"", {here, "'merg'", "merge"}},
        BadInput{
            "DuctEndTwice",
            "turbo.toml",
            "",
            "\n[[duct]]\nname = \"second\"\nfrom = \"turbine.out\"\nto = \"air\"\nlength = \"1 m\"\nbore = \"60 mm\"\n",
            {"two ducts start at 'turbine.out'", "turbo.toml:"}},
        BadInput{"EndOfARigTwice",
                 rig_case,
                 "to          = \"right\"",
                 "to = \"left\"",
                 {"two ducts stand at the end 'left'", rig_case + ":"}},
        BadInput{"NoPrimary", engine_case, primary_two, "", {"cylinder 2 has no primary"}},
        BadInput{"TwoPrimaries",
                 engine_case,
                 "[[primary]]\ncylinder = 2",
                 "[[primary]]\nname = \"other\"\ncylinder = 3",
                 {"cylinder 3 has two primaries", here, "cylinder 2 has no primary"}},
        BadInput{"NoTurbine", "turbo.toml", "[turbine]\ncapacity", "[ambient]\ncapacity", {"no turbine"}},
        BadInput{"MomentumWithoutAngles", engine_case, "angle  = \"15 deg\"\n", "", {"joint 'merge'", "angle"}},
        BadInput{
            "ImpossibleCam", "engine.toml", "\"18 deg after tdc\"", "\"170 deg before tdc\"", {here, "impossible cam"}},
        BadInput{"SpeedTwice", engine_case, "2500, 3500", "3500, 3500", {here, "3500", "twice"}},
        BadInput{"NoSpeed", engine_case, "[2500, 3500, 4500, 5500, 6500]", "[]", {here, "rpm", "empty"}},
        BadInput{"NoCamTiming", "engine.toml", "\"18 deg after tdc\"", "\"18 deg\"", {here, "18 deg"}}),
    [](const auto& one) { return std::string(one.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Use, BadCase,
    testing::Values(
        BadInput{"Missing", engine_case, "\"turbo.toml\"", "\"turbos.toml\"", {here, "turbos.toml", "does not exist"}},
        BadInput{"Circular",
                 "turbo.toml",
                 "[turbine]",
                 "use = [\"03_equal_primaries.toml\"]\n[turbine]",
                 {"turbo.toml:2:", "circle", "03_equal_primaries.toml uses turbo.toml uses 03_equal_primaries.toml"}},
        BadInput{"Climbing", engine_case, "\"turbo.toml\"", "\"../turbo.toml\"", {here, "../turbo.toml", "beside"}},
        BadInput{"Absolute", engine_case, "\"turbo.toml\"", "\"/etc/passwd\"", {here, "/etc/passwd", "beside"}},
        BadInput{"Folder", engine_case, "\"turbo.toml\"", "\".\"", {here}},
        BadInput{"NoName", engine_case, "\"turbo.toml\"", "7", {here + "25:", "`use`", "7"}}),
    [](const auto& one) { return std::string(one.param.name); });

/// A whole file of its own instead of a good case.
struct BadFile {
  const char* name;
  std::string text;
  std::vector<std::string> said;
};
void PrintTo(const BadFile& bad, std::ostream* out) { *out << bad.name; }

class BadCaseFile : public testing::TestWithParam<BadFile> {};

TEST_P(BadCaseFile, IsToldAndNothingIsWritten) {
  const Workshop shop;
  shop.write("bad.toml", GetParam().text);
  const auto before = shop.files();
  const Outcome o = shop.run({"run", "bad.toml", "--out", "bad.h5"});
  EXPECT_EQ(o.exit_code, 3) << o.err;
  EXPECT_TRUE(says(o.err, GetParam().said));
  EXPECT_TRUE(o.out.empty());
  EXPECT_EQ(shop.files(), before);
  // Nothing of it reaches the terminal as a command: every control character but the line's end is spelt out.
  EXPECT_TRUE(std::ranges::all_of(o.err, [](char c) { return static_cast<unsigned char>(c) >= 0x20 || c == '\n'; }));
}

INSTANTIATE_TEST_SUITE_P(
    Files, BadCaseFile,
    testing::Values(BadFile{"Empty", "", {"bad.toml", "empty"}}, BadFile{"Blank", " \n\t\n", {"bad.toml", "empty"}},
                    BadFile{"Binary",
                            std::string("\x7f"
                                        "ELF\x02\x01\x00\x00\x1b[2J",
                                        12),
                            {"bad.toml", "binary"}},
                    BadFile{"NoUtf8", "title = \"\xff\xfe\"\n", {"bad.toml:1"}},
                    BadFile{"Neither", "title = \"nothing else\"\n", {"[engine]", "[rig]"}},
                    BadFile{"UsesItself", "use = [\"bad.toml\"]\n", {"bad.toml:1", "circle"}},
                    BadFile{"TitleWithControlCharacters", "title = \"\\u001B[2J\\u0007\"\n[engine]\n", {"bad.toml:"}}),
    [](const auto& one) { return std::string(one.param.name); });

// Heat taken out of the gas faster than it holds any.
TEST(UnphysicalRig, StopsWithDuctCellDistanceTimeAndValues) {
  const Workshop shop;
  shop.write("frozen.toml", edited(shop.read(rig_case), "heat     = false", "heat = \"-100000 kW/m^2\""));
  const auto before = shop.files();
  const Outcome o = shop.run({"run", "frozen.toml", "--out", "frozen.h5", "--json"});
  EXPECT_EQ(o.exit_code, 5) << o.err;
  EXPECT_TRUE(says(
      o.err, {"duct driver", "cell ", " mm from its start", " ms", "density", "pressure", "temperature", "velocity"}));
  EXPECT_FALSE(says(o.err, {"nan"}));
  EXPECT_TRUE(o.out.empty());
  EXPECT_EQ(shop.files(), before);
}

// Velocities apart, faster than the gas can fill (both ways more than 2c/(gamma-1)): a vacuum forms where the diaphragm
// was. 1e-12: rounding, as for every closed rig.
TEST(VacuumInARig, IsFollowedWithoutLosingMassOrPrintingNoNumber) {
  const Workshop shop;
  const std::string text =
      edited(shop.read(rig_case), "pressure    = \"1 bar\"", "pressure = \"1 bar\"\nvelocity = \"-2900 m/s\"");
  shop.write("vacuum.toml",
             edited(text, "pressure    = \"0.1 bar\"", "pressure = \"0.1 bar\"\nvelocity = \"2900 m/s\""));
  const Outcome o = shop.run({"run", "vacuum.toml", "--json"});
  ASSERT_EQ(o.exit_code, 0) << o.err;
  EXPECT_FALSE(says(o.out, {"nan"}));
  EXPECT_LT(std::abs(nlohmann::json::parse(o.out)["mass_error"].get<double>()), 1e-12);
}

struct BadCall {
  const char* name;
  std::vector<std::string> options;  // after run CASE
  int exit_code;
  std::vector<std::string> said;
};
void PrintTo(const BadCall& bad, std::ostream* out) { *out << bad.name; }

class BadCommandLine : public testing::TestWithParam<BadCall> {};

TEST_P(BadCommandLine, IsToldAtOnceAndNothingIsWritten) {
  const Workshop shop;
  std::filesystem::create_directory(shop.folder() / "folder");
  const auto before = shop.files();
  std::vector<std::string> arguments = {"run", engine_case};
  arguments.insert(arguments.end(), GetParam().options.begin(), GetParam().options.end());
  const Outcome o = shop.run(arguments);
  EXPECT_EQ(o.exit_code, GetParam().exit_code) << o.err;
  EXPECT_TRUE(says(o.err, GetParam().said));
  EXPECT_TRUE(o.out.empty());
  EXPECT_EQ(shop.files(), before);
}

INSTANTIATE_TEST_SUITE_P(
    Calls, BadCommandLine,
    testing::Values(
        BadCall{"RpmOfLetters", {"--rpm", "fast"}, 2, {"'fast'", "--rpm"}},
        BadCall{"RpmOfNothing", {"--rpm", ""}, 2, {"--rpm"}},
        BadCall{"RpmOfNothingAfterAnEqualsSign", {"--rpm="}, 2, {"empty"}},
        BadCall{"RpmWithAHole", {"--rpm", "3000,,4000"}, 2, {"--rpm"}}, BadCall{"RpmZero", {"--rpm", "0"}, 2, {"'0'"}},
        BadCall{"RpmNegative", {"--rpm=-3000"}, 2, {"'-3000'"}}, BadCall{"RpmNoNumber", {"--rpm", "nan"}, 2, {"'nan'"}},
        BadCall{"RpmInfinite", {"--rpm", "inf"}, 2, {"'inf'"}}, BadCall{"RpmHuge", {"--rpm", "1e300"}, 2, {"1e300"}},
        BadCall{"RpmTwice", {"--rpm", "3000,3000"}, 2, {"3000"}},
        BadCall{"CellWithoutUnit", {"--cell", "5"}, 2, {"--cell"}},
        BadCall{"CellOfKelvin", {"--cell", "5 K"}, 2, {"5 K"}}, BadCall{"CellZero", {"--cell", "0 mm"}, 2, {"0 mm"}},
        BadCall{"CellNegative", {"--cell=-5 mm"}, 2, {"-5 mm"}},
        BadCall{"CellTooFine", {"--cell", "0.001 mm"}, 2, {"0.001 mm"}},
        BadCall{"CellNoNumber", {"--cell", "nan mm"}, 2, {"nan"}},
        BadCall{"UnknownOption", {"--rmp", "3000"}, 2, {"--rmp"}},
        BadCall{"OutIsAFolder", {"--out", "folder"}, 4, {"folder"}},
        BadCall{"ReportIsAFolder", {"--report", "folder"}, 4, {"folder"}},
        BadCall{"OutIsAFolderWithForce", {"--out", "folder", "--force"}, 4, {"folder"}},
        BadCall{"OutInNoFolder", {"--out", "nowhere/x.h5"}, 4, {"nowhere"}},
        BadCall{"OutIsAUsedFile", {"--out", "engine.toml", "--force"}, 2, {"engine.toml"}},
        BadCall{"OutIsTheCase", {"--out", engine_case, "--force"}, 2, {engine_case}},
        BadCall{"OutAndReportAreOne", {"--out", "one", "--report", "one"}, 2, {"one"}},
        BadCall{"OutAndReportAreOneInOtherWords", {"--out", "one", "--report", "./one"}, 2, {"one"}}),
    [](const auto& one) { return std::string(one.param.name); });

// A good case with a strange title: printed without its control characters, and the page holds none.
TEST(StrangeTitle, ControlCharactersReachNeitherTerminalNorPage) {
  const Workshop shop;
  shop.write("strange.toml",
             edited(shop.read(engine_case), "Hill-climb two-litre, equal primaries", "a\\u001B[2J\\u0007\\u0000b"));
  const Outcome o = shop.run({"run", "strange.toml", "--rpm", "3000", "--cell", "20 mm", "--report", "page.html"});
  const auto harmless = [](const std::string& text) {
    return std::ranges::all_of(text,
                               [](char c) { return static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t'; });
  };
  EXPECT_TRUE(o.exit_code == 0 || o.exit_code == 3) << o.err;
  EXPECT_TRUE(harmless(o.out));
  EXPECT_TRUE(harmless(o.err)) << o.err;
  if (o.exit_code == 0) {
    EXPECT_TRUE(harmless(shop.read("page.html")));
  }
}

}  // namespace
}  // namespace pulsewright
