// Engines of every arrangement of the table, their banks merged and the merges led to one turbine.

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "models/arrangement.hpp"
#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

/// Which merge each cylinder runs to: its bank's; eight in one line are more than a joint takes, so they are halved.
std::vector<int> merges(const Arrangement& a) {
  std::vector<int> merge = a.bank;
  if (std::ranges::count(merge, 1) == 0 && merge.size() > 7)
    std::fill(merge.begin() + static_cast<std::ptrdiff_t>(merge.size() / 2), merge.end(), 1);
  return merge;
}

std::string merge_of(int bank) { return bank == 0 ? "first" : "second"; }

/// Each merge sends a duct to the joint before the turbine where there are two.
std::string text_of(const Arrangement& a) {
  const std::vector<int> merge = merges(a);
  const bool two = std::ranges::count(merge, 1) > 0;
  std::string text = "title = \"" + std::string(a.name) + "\"\n[engine]\narrangement = \"" + std::string(a.name) +
                     "\"\nbore = \"80 mm\"\nstroke = \"80 mm\"\nredline = 6500\n[charge]\nboost_gauge = \"0.7 bar\"\n"
                     "[turbine]\n[run]\nrpm = [4000]\ncell = \"15 mm\"\n[each_primary]\nbore = \"36 mm\"\nlength = "
                     "\"300 mm\"\nangle = \"15 deg\"\n";
  for (std::size_t i = 0; i < a.bank.size(); ++i) {
    const std::string to = a.bank.size() == 1 ? "turbine" : merge_of(merge[i]);
    text += "[[primary]]\ncylinder = " + std::to_string(i + 1) + "\nto = \"" + to + "\"\n";
  }
  if (a.bank.size() == 1) return text;
  for (const int bank : {0, 1})
    if (bank == 0 || two)
      text += "[[joint]]\nname = \"" + merge_of(bank) + "\"\noutlet = \"" +
              (two ? merge_of(bank) + " duct" : std::string("turbine")) + "\"\n";
  for (const int bank : {0, 1})
    if (two)
      text += "[[duct]]\nname = \"" + merge_of(bank) + " duct\"\nfrom = \"" + merge_of(bank) +
              "\"\nto = \"last\"\nto_angle = \"30 deg\"\nlength = \"400 mm\"\nbore = \"50 mm\"\n";
  if (two) text += "[[joint]]\nname = \"last\"\noutlet = \"turbine\"\n";
  return text;
}

class EveryArrangement : public testing::TestWithParam<std::size_t> {};

// The program's promise for mass and energy, as for the demo engine.
TEST_P(EveryArrangement, RunsSettlesAndKeepsMassAndEnergy) {
  const Arrangement& a = arrangements()[GetParam()];
  const SpeedResult s = run_speed(test::read_engine(text_of(a)), 4000);
  EXPECT_TRUE(s.settled) << a.name << ": " << s.unsettled_figure;
  EXPECT_LT(s.mass_error, 1e-5) << a.name;
  EXPECT_LT(s.energy_error, 1e-5) << a.name;
  EXPECT_LT(std::abs(s.energy.rest() / s.energy.fuel), 3e-3) << a.name;
  EXPECT_EQ(s.cylinders.size(), a.bank.size());
  // Torque goes with displacement, whatever the manifold: 0.40 l and 1.7 bar give 50 to 85 Nm a cylinder.
  EXPECT_GT(s.torque / static_cast<double>(a.bank.size()), 35) << a.name;
  EXPECT_LT(s.torque / static_cast<double>(a.bank.size()), 85) << a.name;
}
INSTANTIATE_TEST_SUITE_P(Table, EveryArrangement, testing::Range(std::size_t{0}, arrangements().size()),
                         [](const auto& p) {
                           std::string name(arrangements()[p.param].name);
                           for (char& c : name)
                             if (!std::isalnum(static_cast<unsigned char>(c))) c = '_';
                           return name;
                         });

}  // namespace
}  // namespace pulsewright
