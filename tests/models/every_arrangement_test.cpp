// With the boost given, an engine of every arrangement settles from 1500 rpm to the redline, without boost and at the
// highest: the program's promise.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "models/arrangement.hpp"
#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

std::string primary(int cylinder, const std::string& to) {
  return fmt::format("[[primary]]\ncylinder = {}\nto = \"{}\"\nlength = \"{} mm\"\n", cylinder, to,
                     280 + 15 * cylinder);
}

/// All into one merge, or each bank (each half of an inline 8: a joint takes eight ducts) into its own and on to the
/// turbine.
std::string manifold(const Arrangement& a) {
  const bool vee = std::ranges::count(a.bank, 1) > 0, halves = !vee && a.bank.size() > 7, banks = vee || halves;
  std::string text = "[each_primary]\ntube = \"NPS 1-1/4 sch 10S\"\nangle = \"15 deg\"\n";
  for (std::size_t c = 0; c < a.bank.size(); ++c)
    text += primary(static_cast<int>(c) + 1, banks ? fmt::format("bank {}", vee ? a.bank[c] : int{c > 3}) : "merge");
  for (int b = 0; banks && b < 2; ++b)
    text += fmt::format(
        "[[joint]]\nname = \"bank {0}\"\noutlet = \"crossover {0}\"\n[[duct]]\nname = \"crossover {0}\"\nto = "
        "\"merge\"\n"
        "to_angle = \"30 deg\"\nlength = \"{1} mm\"\nbore = \"50 mm\"\n",
        b, 200 + 150 * b);
  return text + "[[joint]]\nname = \"merge\"\noutlet = \"turbine\"\n";
}

/// 25 mm cells: what is asked for is that it settles, not the figures.
std::string engine(const Arrangement& a, double boost) {
  return fmt::format(
             "title = \"{0} at {1} bar\"\n[engine]\narrangement = \"{0}\"\nbore = \"86 mm\"\nstroke = \"86 "
             "mm\"\nredline = 7500\n"
             "[charge]\nboost_gauge = \"{1} bar\"\n[turbine]\n[run]\nrpm = [1500, 3500, 5500, 7500]\ncell = \"25 "
             "mm\"\n",
             a.name, boost) +
         manifold(a);
}

class EveryArrangement : public testing::TestWithParam<std::size_t> {};

TEST_P(EveryArrangement, SettlesFrom1500ToTheRedlineAtAnyBoost) {
  for (const double boost : {0.0, 0.8, 1.6, 2.5}) {
    const EngineCase e = test::read_engine(engine(arrangements()[GetParam()], boost));
    for (const double rpm : e.run.rpm) {
      const SpeedResult s = run_speed(e, rpm);
      EXPECT_TRUE(s.settled) << e.title << ", " << rpm << " rpm: " << s.unsettled_figure;
      EXPECT_LT(s.mass_error, 1e-5);
      EXPECT_LT(s.energy_error, 1e-5);
    }
  }
}
INSTANTIATE_TEST_SUITE_P(Table, EveryArrangement, testing::Range(std::size_t{0}, arrangements().size()));

}  // namespace
}  // namespace pulsewright
