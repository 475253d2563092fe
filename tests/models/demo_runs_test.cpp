// Every engine case of the demo ladder runs and settles, on cells coarse enough for a test.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "models/engine_case.hpp"
#include "models/engine_run.hpp"
#include "models/rig_case.hpp"

namespace pulsewright {
namespace {

namespace fs = std::filesystem;

constexpr double coarse = 0.015;  // m; on 20 mm a log section of two cells flickers and does not settle

std::string text_of(const fs::path& file) {
  std::ifstream in(file);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// The numbered cases, in their order.
std::vector<std::string> ladder() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(PULSEWRIGHT_CASES)) {
    const std::string name = entry.path().stem().string();
    if (entry.path().extension() == ".toml" && name[0] >= '0' && name[0] <= '9') names.push_back(name);
  }
  std::ranges::sort(names);
  return names;
}

CaseFile load(const std::string& name) { return CaseFile::load(std::string(PULSEWRIGHT_CASES) + "/" + name + ".toml"); }

std::vector<std::string> engines() {
  std::vector<std::string> names = ladder();
  std::erase_if(names, [](const std::string& name) {
    CaseFile file = load(name);
    return is_rig(file);
  });
  return names;
}

class DemoRuns : public testing::TestWithParam<std::string> {};

// Mass is booked by the very fluxes that move it: what is left is rounding, summed over some ten thousand steps.
constexpr double mass_kept = 1e-10;

TEST_P(DemoRuns, SettleAtTheirLowestAndHighestSpeed) {
  CaseFile file = load(GetParam());
  const EngineCase engine = read_engine_case(file, coarse);
  for (const double rpm : {engine.run.rpm.front(), engine.run.rpm.back()}) {
    const SpeedResult result = run_speed(engine, rpm, {}, {});
    EXPECT_TRUE(result.settled) << rpm << " rpm: " << result.unsettled_figure;
    EXPECT_LT(result.mass_error, mass_kept) << rpm;
    EXPECT_GT(result.torque, 0) << rpm;
    for (const CylinderFigures& c : result.cylinders) EXPECT_GT(c.volumetric_efficiency, 0.5) << c.cylinder << rpm;
  }
}
INSTANTIATE_TEST_SUITE_P(Ladder, DemoRuns, testing::ValuesIn(engines()),
                         [](const auto& param_info) { return "Case" + param_info.param; });

TEST(DemoLadder, EveryCaseOpensWithItsQuestionAndSaysWhatToExpect) {
  for (const std::string& name : ladder()) {
    const std::string text = text_of(fs::path(PULSEWRIGHT_CASES) / (name + ".toml"));
    EXPECT_TRUE(text.starts_with("# QUESTION  ")) << name;
    EXPECT_NE(text.find("\n# EXPECT    "), std::string::npos) << name;
  }
}

TEST(DemoLadder, IsNumberedWithoutAGap) {
  int number = 0;
  for (const std::string& name : ladder()) EXPECT_EQ(std::stoi(name.substr(0, 2)), ++number) << name;
}

}  // namespace
}  // namespace pulsewright
