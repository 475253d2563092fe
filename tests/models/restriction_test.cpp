#include "models/restriction.hpp"

#include <gtest/gtest.h>

#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

// J. Weisbach's table as pipe-flow handbooks print it. 1e-6: the table itself, put through areas and back.
TEST(Restriction, AButterflyCostsWhatWasMeasured) {
  const double measured[][2] = {{5, 0.24}, {10, 0.52}, {20, 1.54}, {40, 10.8}, {60, 118}};
  for (const auto& [angle, loss] : measured) EXPECT_NEAR(butterfly_loss(1 - angle / 90) / loss, 1, 1e-6) << angle;
}

TEST(Restriction, AButterflyShutLetsNothingThroughAndClosesSteadily) {
  EXPECT_EQ(jet_of_butterfly(0, 1), 0);
  for (double opening = 0.02; opening <= 1; opening += 0.02)
    EXPECT_GT(jet_of_butterfly(opening, 1), jet_of_butterfly(opening - 0.02, 1)) << opening;
}

// Weisbach's contraction: 0.632 at 0.2 of the pipe, 0.681 at 0.5, 0.892 at 0.9. 0.01: the fit.
TEST(Restriction, APlatesJetContractsAsMeasured) {
  EXPECT_NEAR(jet_of_plate(0.2, 1) / 0.2, 0.632, 0.01);
  EXPECT_NEAR(jet_of_plate(0.5, 1) / 0.5, 0.681, 0.01);
  EXPECT_NEAR(jet_of_plate(0.9, 1) / 0.9, 0.892, 0.01);
  EXPECT_DOUBLE_EQ(jet_of_plate(1.3, 1), 1);
}

const std::string coarse = test::with(test::engine_text, "cell = \"5 mm\"", "cell = \"20 mm\"");

std::string fault_of(const std::string& text) {
  try {
    test::read_engine(text);
  } catch (const Error& error) {
    return error.what();
  }
  return {};
}

SpeedResult run(const std::string& text) { return run_speed(test::read_engine(text), 4000); }

double drive(const std::string& more) { return run(coarse + more).turbine[0].stagnation_mean; }

TEST(Restriction, EveryNarrowingCostsDrivePressure) {
  const std::string at = "[[restriction]]\nname = \"valve\"\nat = \"downpipe:400mm\"\n";
  const double plain = drive(""), wide = drive(at + "butterfly = 1.0\n"), half = drive(at + "butterfly = 0.4\n");
  EXPECT_GT(wide, plain);
  EXPECT_GT(half, wide + 2e3);
  EXPECT_GT(drive(at + "bore = \"40 mm\"\n"), plain + 2e3);
  EXPECT_GT(drive(at + "loss = 3\n"), plain);
}

// A rotor near its choked flow feels little of what lies behind it: the pressure behind and the work show it.
TEST(Restriction, ACutOutAndALeftOutSilencerGiveTheWheelMore) {
  const SpeedResult plain = run(coarse),
                    open = run(coarse + "[[cut_out]]\nat = \"downpipe:400mm\"\nbore = \"50 mm\"\n"),
                    none = run("silencer = \"none\"\n" + coarse), bare = run(coarse + "silencer = \"none\"\n");
  for (const SpeedResult* r : {&open, &none}) {
    EXPECT_LT(r->shafts[0].outlet_pressure, plain.shafts[0].outlet_pressure);
    EXPECT_GT(r->shafts[0].power_shaft, plain.shafts[0].power_shaft);
  }
  EXPECT_NEAR(bare.shafts[0].outlet_pressure / none.shafts[0].outlet_pressure, 1,
              1e-9);  // said of the downpipe's own end
}

TEST(Restriction, EnergyStaysInTheBooks) {
  const SpeedResult r = run_speed(
      test::read_engine(coarse + "[[restriction]]\nname = \"valve\"\nat = \"downpipe:400mm\"\nbutterfly = 0.5\n"
                                 "[[cut_out]]\nat = \"downpipe:200mm\"\nbore = \"40 mm\"\nopening = 0.5\n"),
      4500);
  EXPECT_TRUE(r.settled) << r.unsettled_figure;
  EXPECT_LT(r.mass_error, 1e-12);
  EXPECT_LT(r.energy_error, 1e-12);
}

TEST(Restriction, ACutOutIsNoGateThatHoldsTheBoost) {
  const std::string held = test::with(coarse, "[run]\n", "[run]\nboost = \"hold\"\n");
  const EngineCase engine =
      test::read_engine(held + "[[cut_out]]\nat = \"downpipe:200mm\"\nbore = \"40 mm\"\nopening = 0.5\n");
  ASSERT_EQ(engine.plan.gates.size(), 2u);
  EXPECT_TRUE(engine.plan.gates[0].holds);
  EXPECT_FALSE(engine.plan.gates[1].holds);
  EXPECT_EQ(engine.plan.gates[1].opening, 0.5);
}

TEST(Restriction, FaultsSayWhatToDo) {
  const std::string head = "[[restriction]]\nname = \"valve\"\n";
  EXPECT_NE(fault_of(coarse + head + "at = \"downpipe:400mm\"\n").find("says nothing of its size"), std::string::npos);
  EXPECT_NE(fault_of(coarse + head + "at = \"downpipe:400mm\"\nloss = 1\nbutterfly = 0.5\n").find("more than one way"),
            std::string::npos);
  EXPECT_NE(fault_of(coarse + head + "at = \"downpipe:2 m\"\nloss = 1\n").find("inside the duct"), std::string::npos);
  EXPECT_NE(fault_of(coarse + head + "at = \"merge\"\nloss = 1\n").find("no place along a duct"), std::string::npos);
  EXPECT_NE(fault_of(coarse + head + "at = \"downpipe:400mm\"\nbutterfly = 0\n").find("butterfly"), std::string::npos);
  EXPECT_NE(fault_of(coarse + head +
                     "at = \"downpipe:400mm\"\nloss = 1\n[[cut_out]]\nat = \"downpipe:400mm\"\nbore = \"40 mm\"\n")
                .find("stands where something else does"),
            std::string::npos);
}

}  // namespace
}  // namespace pulsewright
