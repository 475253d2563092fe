// Gates on a running engine: what they pass, what they leave to the turbine, what pushes them open.

#include <gtest/gtest.h>

#include <cmath>

#include "models/engine_run.hpp"
#include "solver/composition.hpp"
#include "solver/orifice.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::with;

constexpr double bar = 1e5;

/// Long cells: what is asked for are balances and orders, not figures.
const std::string base = with(engine_text, "cell = \"5 mm\"", "cell = \"20 mm\"");

std::string with_gate(const std::string& keys) {
  return with(base, "[[wastegate]]\nat = \"merge\"\n", "[[wastegate]]\n" + keys);
}
SpeedResult run(const std::string& text, double rpm = 5000) { return run_speed(read_engine(text), rpm); }

double drive_pressure(const SpeedResult& s) { return s.turbine.at(0).pressure_mean; }

// The law of constant pressure has no head, so the joint's record holds all that the orifice formula needs. 0.5 %: the record
// is linear between samples half a degree apart, the gate's own books count every step.
TEST(GateRun, PassesWhatTheOrificeFormulaGivesOverTheCycle) {
  const std::string text = with(with_gate("at = \"merge\"\nbore = \"38 mm\"\nopening = 0.5\n"), "name = \"merge\"",
                                "name = \"merge\"\nlaw = \"constant-pressure\"");
  const EngineCase engine = read_engine(text);
  const SpeedResult s = run_speed(engine, 5000);
  ASSERT_TRUE(s.settled) << s.unsettled_figure;
  const Gas gas = mixture_gas(engine.engine.fuel, engine.engine.lambda);
  const GatePlan& gate = engine.plan.gates.at(0);
  for (const JointRecord& joint : s.record.joints) {
    if (joint.name != "merge") continue;
    double sum = 0;
    for (std::size_t i = 0; i + 1 < joint.p.size(); ++i) {
      const double p = joint.p[i], T = joint.T[i];
      sum += gate.flow_coefficient * gate_area(gate) * p / std::sqrt(gas_constant(gas, 1) * T) *
             flow_function(engine.ambient.pressure / p, heat_ratio(gas, T, 1));
    }
    EXPECT_NEAR(s.gates.at(0).flow / (sum / static_cast<double>(joint.p.size() - 1)), 1, 5e-3);
    return;
  }
  FAIL() << "the merge is not in the record";
}

TEST(GateRun, OpenGateLowersTheDrivePressureTheWiderTheMore) {
  double before = 1e9;
  for (const char* opening : {"0.0", "0.3", "1.0"}) {
    const SpeedResult s = run(with_gate("at = \"merge\"\nbore = \"44 mm\"\nopening = " + std::string(opening) + "\n"));
    EXPECT_LT(drive_pressure(s), before) << opening;
    EXPECT_LT(s.mass_error, 1e-5);  // the program's promise
    before = drive_pressure(s);
  }
}

TEST(GateRun, GasSentToTheDownpipeRaisesWhatIsBehindTheTurbine) {
  const std::string gate = "at = \"merge\"\nbore = \"44 mm\"\nopening = 1.0\n";
  const SpeedResult air = run(with_gate(gate + "to = \"air\"\n")),
                    pipe = run(with_gate(gate + "to = \"downpipe:250mm\"\n"));
  EXPECT_GT(pipe.shafts.at(0).outlet_pressure, air.shafts.at(0).outlet_pressure + 0.01 * bar);
  EXPECT_LT(pipe.turbine.at(0).power_shaft, air.turbine.at(0).power_shaft);
  EXPECT_GT(pipe.gates.at(0).behind, 1.01 * air.gates.at(0).behind);
}

// All the gas that the gate can reach comes by the merge; one primary's tap sees a quarter of it, and its own pulse only.
TEST(GateRun, OnABranchThatSeesLittleOfTheFlowTheSameBorePassesLess) {
  const std::string keys = "bore = \"38 mm\"\nopening = 1.0\nangle = \"45 deg\"\n";
  const SpeedResult merge = run(with_gate("at = \"merge\"\n" + keys));
  const SpeedResult branch = run(with_gate("at = \"primary 1:150mm\"\n" + keys));
  RecordProperty("share_at_merge", std::to_string(merge.gates.at(0).share_of_flow));
  RecordProperty("share_on_branch", std::to_string(branch.gates.at(0).share_of_flow));
  EXPECT_LT(branch.gates.at(0).share_of_flow, 0.95 * merge.gates.at(0).share_of_flow);
  EXPECT_GT(branch.turbine.at(0).power_shaft, merge.turbine.at(0).power_shaft);
}

TEST(GateRun, GatesOnBothScrollsKeepTheBooks) {
  std::string text = with(with_gate("name = \"a\"\nat = \"turbine.a\"\nopening = 0.4\nto = \"downpipe:250mm\"\n"
                                    "[[wastegate]]\nname = \"b\"\nat = \"turbine.b\"\nopening = 0.4\n"),
                          "[turbine]", "[turbine]\nscrolls = 2");
  text =
      with(text, "[[joint]]\nname = \"merge\"\noutlet = \"turbine\"\n",
           "[[joint]]\nname = \"merge\"\noutlet = \"turbine.a\"\n[[joint]]\nname = \"rear\"\noutlet = \"turbine.b\"\n");
  for (const char* c : {"2", "3"})
    text = with(text, std::string("cylinder = ") + c, std::string("cylinder = ") + c + "\nto = \"rear\"");
  const SpeedResult s = run(text);
  EXPECT_TRUE(s.settled) << s.unsettled_figure;
  EXPECT_LT(s.mass_error, 1e-5);
  EXPECT_LT(s.energy_error, 1e-5);
  ASSERT_EQ(s.gates.size(), 2u);
  EXPECT_GT(s.gates[0].flow, 0.005);
  EXPECT_GT(s.gates[1].flow, s.gates[0].flow);  // to air: less behind it
}

const std::string valve = "at = \"merge\"\nbore = \"38 mm\"\nspring = \"0.9 bar\"\nfully_open = \"1.3 bar\"\n";

// Boost 1 bar is given. A controller keeps it off the port, so only drive pressure can lift the valve.
TEST(GateRun, DrivePressurePushesAGateOpenAndItSettlesWhereForcesBalance) {
  const EngineCase engine = read_engine(with_gate(valve + "diaphragm = \"34 mm\"\ncontroller = true\n"));
  const SpeedResult s = run_speed(engine, 5000);
  ASSERT_TRUE(s.settled) << s.unsettled_figure;
  const GateFigures& g = s.gates.at(0);
  EXPECT_GT(g.opening, 0.02);
  EXPECT_LT(g.opening, 0.98);
  // Figures of the settled cycle against the balance: what is still to come is below 0.1 % of a tenth of the lift.
  EXPECT_NEAR(g.opening, forced_opening(*engine.plan.gates[0].spring, s.boost_gauge, g.before - g.behind), 2e-3);
  EXPECT_NEAR(*g.pushed_open, g.opening, 1e-12);  // all of it: the boost is kept off the port
  EXPECT_LT(*g.cracks_at, *g.spring);
  EXPECT_GT(g.share_of_flow, 0.01);
}

TEST(GateRun, LargerDiaphragmKeepsTheSameGateShut) {
  const SpeedResult s = run(with_gate(valve + "diaphragm = \"80 mm\"\ncontroller = true\n"));
  EXPECT_TRUE(s.settled) << s.unsettled_figure;
  EXPECT_EQ(s.gates.at(0).opening, 0);
  EXPECT_EQ(*s.gates.at(0).pushed_open, 0);
  EXPECT_EQ(s.gates.at(0).flow, 0);
}

TEST(GateRun, OpeningThatIsGivenStaysWhereTheForcesAreWeaker) {
  const SpeedResult s = run(with_gate(valve + "diaphragm = \"80 mm\"\ncontroller = true\nopening = 0.25\n"));
  EXPECT_EQ(s.gates.at(0).opening, 0.25);
  EXPECT_EQ(*s.gates.at(0).pushed_open, 0);
}

TEST(GateRun, WithoutASpringNothingIsClaimed) {
  const SpeedResult s = run(with_gate("at = \"merge\"\n"));
  EXPECT_FALSE(s.gates.at(0).pushed_open);
  EXPECT_FALSE(s.gates.at(0).cracks_at);
  EXPECT_GT(s.gates.at(0).before, s.gates.at(0).behind);
}

// Same bore, gates shut until the target is reached, then opened as far as it takes: on the branch the gate stands further open,
// or is wide open already with the boost above the target.
TEST(GateRun, OnABranchItHoldsTheBoostWorseThanAtTheMerge) {
  const auto balanced = [](const std::string& at) {
    return run(with(with_gate("at = \"" + at + "\"\nbore = \"40 mm\"\nangle = \"45 deg\"\nhold = true\n"), "[run]\n",
                    "[run]\nboost = \"balanced\"\n"),
               6500);
  };
  const SpeedResult merge = balanced("merge"), branch = balanced("primary 1:150mm");
  ASSERT_GT(merge.gates.at(0).opening, 0.05);  // the gate has work to do
  RecordProperty("merge_opening", std::to_string(merge.gates.at(0).opening));
  RecordProperty("branch_opening", std::to_string(branch.gates.at(0).opening));
  RecordProperty("merge_boost_Pa", std::to_string(merge.boost_gauge));
  RecordProperty("branch_boost_Pa", std::to_string(branch.boost_gauge));
  EXPECT_GT(branch.gates.at(0).opening + branch.boost_gauge / bar,
            merge.gates.at(0).opening + merge.boost_gauge / bar + 0.01);
  EXPECT_GE(branch.gates.at(0).opening, merge.gates.at(0).opening - 1e-3);
  EXPECT_GE(branch.boost_gauge, merge.boost_gauge - 200);  // 0.2 % of the absolute boost: what the balance lets pass
}

}  // namespace
}  // namespace pulsewright
