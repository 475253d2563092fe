// A good case with one line damaged is read or refused as a fault of the case; nothing else happens, whatever the
// damage.

#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "models/describe.hpp"
#include "models/signal_file.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::says;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::string text_of(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

const std::vector<std::string> wrong_values = {"\"1e300 m\"", "\"-1 mm\"", "-1",   "0",     "1e300",  "nan",    "\"\"",
                                               "[]",          "{}",        "true", "\"x\"", "[1, 2]", "\"0 K\""};

/// The text with one line dropped, doubled, or with another value; all of these for every line.
std::vector<std::string> damaged(const std::string& text) {
  const auto lines = lines_of(text);
  std::vector<std::string> result;
  for (std::size_t k = 0; k < lines.size(); ++k) {
    auto dropped = lines, doubled = lines;
    dropped.erase(dropped.begin() + static_cast<std::ptrdiff_t>(k));
    doubled.insert(doubled.begin() + static_cast<std::ptrdiff_t>(k), lines[k]);
    result.push_back(text_of(dropped));
    result.push_back(text_of(doubled));
    const auto equals = lines[k].find(" = ");
    if (equals == std::string::npos) continue;
    for (const std::string& value : wrong_values) {
      auto changed = lines;
      changed[k] = lines[k].substr(0, equals + 3) + value;
      result.push_back(text_of(changed));
    }
  }
  return result;
}

/// What was read must be finite and positive where it is a size.
void expect_sound(const ManifoldPlan& plan) {
  for (const DuctPlan& duct : plan.ducts) {
    EXPECT_TRUE(duct.drawing.length() > 0 && std::isfinite(duct.drawing.length()));
    for (const DuctSection& s : duct.drawing.sections) EXPECT_TRUE(s.start.area > 0 && s.finish.area > 0);
    EXPECT_TRUE(duct.start.node >= 0 && duct.finish.node >= 0);
  }
}

TEST(DamagedCase, EngineIsReadOrRefused) {
  for (const std::string& text : damaged(test::engine_text)) {
    std::string fault;
    ASSERT_NO_THROW(fault = test::engine_fault(text)) << text;
    if (!fault.empty()) continue;
    const EngineCase engine = test::read_engine(text);
    expect_sound(engine.plan);
    EXPECT_FALSE(describe(engine).empty());
  }
}

TEST(DamagedCase, RigIsReadOrRefused) {
  for (const std::string& text : damaged(test::rig_text)) {
    std::string fault;
    ASSERT_NO_THROW(fault = test::rig_fault(text)) << text;
    if (fault.empty()) expect_sound(test::read_rig(text).setup.plan);
  }
}

std::string signal_fault(const std::string& text) {
  return test::fault_in([](const std::string& t) { return parse_signal(t, "wave.csv"); }, text);
}

TEST(SignalFile, ReadsRowsAndLeavesOutRemarks) {
  const auto points =
      parse_signal("# a remark\ntime_s,pressure_Pa,temperature_K\n0,1e5,900\n0.001, 2e5 ,950\n", "wave.csv");
  ASSERT_EQ(points.size(), 2u);
  EXPECT_EQ(points[1].pressure, 2e5);
}

TEST(SignalFile, FaultsNameTheLine) {
  const std::string head = "time_s,pressure_Pa,temperature_K\n0,1e5,900\n";
  EXPECT_EQ(signal_fault(head + "1,1e5,900\n"), "");
  EXPECT_TRUE(says(signal_fault("t,p,T\n0,1,2\n"), {"wave.csv:1", "heading"}));
  EXPECT_TRUE(says(signal_fault(head + "0,1e5,900\n"), {"wave.csv:3", "times must rise"}));
  EXPECT_TRUE(says(signal_fault(head + "1,-1e5,900\n"), {"wave.csv:3", "above 0"}));
  EXPECT_TRUE(says(signal_fault(head + "1,1e5,nan\n"), {"wave.csv:3", "not a number"}));
  EXPECT_TRUE(says(signal_fault(head + "1,1e5\n"), {"wave.csv:3", "not three values"}));
  EXPECT_TRUE(says(signal_fault(head), {"fewer than two rows"}));
}

TEST(SignalFile, StaysBesideTheCase) {
  const auto read = [](const std::string& name) {
    const std::string text =
        test::with(test::rig_text, "kind = \"anechoic\"", "kind = \"signal\"\nfile = \"" + name + "\"");
    CaseFile file = CaseFile::load(
        "shop/case.toml", CaseFolder({{"shop/case.toml", text},
                                      {"wave.csv", "time_s,pressure_Pa,temperature_K\n0,1e5,900\n1,1e5,900\n"},
                                      {"shop/wave.csv", "time_s,pressure_Pa,temperature_K\n0,1e5,900\n1,2e5,900\n"}}));
    return read_rig_case(file);
  };
  EXPECT_EQ(test::fault_in(read, "wave.csv"), "");
  EXPECT_EQ(test::fault_in(read, "./wave.csv"), "");
  EXPECT_TRUE(says(test::fault_in(read, "/etc/passwd"), {"beside the case"}));
  EXPECT_TRUE(says(test::fault_in(read, "../wave.csv"), {"beside the case"}));
  EXPECT_TRUE(says(test::fault_in(read, "no such file.csv"), {"no such file.csv", "does not exist"}));
}

}  // namespace
}  // namespace pulsewright
