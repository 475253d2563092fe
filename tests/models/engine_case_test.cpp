// What an engine case is once read: angles, sizes and charge as a fabricator would work them out.

#include "models/engine_case.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::read_engine;
using test::with;

std::vector<double> firing_degrees(const EngineCase& c) {
  std::vector<double> degrees;
  for (const CrankAngle angle : c.engine.firing_at) degrees.push_back(angle.degrees());
  return degrees;
}

TEST(EngineCase, InlineFourFiresEvenlyOneThreeFourTwo) {
  const EngineCase c = read_engine(engine_text);
  EXPECT_EQ(c.engine.firing_order, (std::vector<int>{1, 3, 4, 2}));
  const std::vector<double> expected{0, 540, 180, 360};  // cylinders 1, 2, 3, 4
  for (std::size_t k = 0; k < 4; ++k) EXPECT_NEAR(firing_degrees(c)[k], expected[k], 1e-9);
}

TEST(EngineCase, FiringAnglesOverruleTheArrangement) {
  const EngineCase c = read_engine(
      with(engine_text, "redline", "firing_at = [\"10 deg\", \"190 deg\", \"500 deg\", \"300 deg\"]\nredline"));
  EXPECT_EQ(c.engine.firing_order, (std::vector<int>{1, 2, 4, 3}));
  EXPECT_NEAR(firing_degrees(c)[2], 490, 1e-9);
}

TEST(EngineCase, UnevenArrangementsKeepTheirAnglesAndTheirBanks) {
  const std::string boxer = with(engine_text, "inline 4", "boxer 4");
  EXPECT_EQ(read_engine(boxer).engine.bank, (std::vector<int>{0, 1, 0, 1}));
  EXPECT_EQ(read_engine(with(boxer, "redline", "bank = [1, 1, 2, 2]\nredline")).engine.bank,
            (std::vector<int>{0, 0, 1, 1}));
  const EngineCase cross = read_engine(with(engine_text, "inline 4", "inline 4, cross-plane"));
  const std::vector<double> expected{0, 450, 270, 540};
  for (std::size_t k = 0; k < 4; ++k) EXPECT_NEAR(firing_degrees(cross)[k], expected[k], 1e-9);
}

TEST(EngineCase, BlendsAreFuelsWithTheirOwnAirAndHeat) {
  const EngineCase c = read_engine(with(engine_text, "redline", "fuel = \"E85\"\nredline"));
  EXPECT_EQ(c.engine.fuel.name, "E85");
  EXPECT_FALSE(c.engine.diesel);
  EXPECT_EQ(c.engine.lambda, 0.85);
  EXPECT_LT(c.engine.burn_efficiency, 0.85);  // the rich mixture keeps carbon monoxide and hydrogen
  EXPECT_GT(c.engine.burn_efficiency, 0.70);
}

TEST(EngineCase, CamCardLandsOnTheCylindersOwnScale) {
  const EngineCase c = read_engine(engine_text);
  EXPECT_NEAR(c.engine.exhaust.card.opens.degrees(), 126, 1e-9);
  EXPECT_NEAR(c.engine.exhaust.card.closes.degrees(), 378, 1e-9);
  EXPECT_NEAR(c.engine.intake.card.opens.degrees(), 346, 1e-9);
  EXPECT_NEAR(c.engine.intake.card.closes.degrees(), 590, 1e-9);
}

// A lift table counts from the dead centre between exhaust and intake; its card's figures follow from it.
TEST(EngineCase, LiftTableReplacesTheCard) {
  const EngineCase c = read_engine(engine_text +
                                   "[engine.exhaust_valve]\nlift_table = [[\"-250 deg\", \"0 mm\"], [\"-200 deg\", \"2 "
                                   "mm\"], [\"-110 deg\", \"9 mm\"], "
                                   "[\"-20 deg\", \"2 mm\"], [\"30 deg\", \"0 mm\"]]\nseat_load = \"250 N\"\n"
                                   "flow_coefficient = { lift = [\"1 mm\", \"8 mm\"], coefficient = [0.7, 0.55] }\n");
  EXPECT_NEAR(c.engine.exhaust.card.lift, 0.009, 1e-12);
  EXPECT_GT(c.engine.exhaust.card.opens.degrees(), 110);
  EXPECT_LT(c.engine.exhaust.card.opens.degrees(), 160);
  EXPECT_EQ(c.engine.exhaust.seat_load, 250);
  EXPECT_EQ(c.engine.exhaust.shape.coefficients.size(), 2U);
  for (const AssumedEntry& a : c.assumed)
    for (const char* key :
         {"exhaust_valve.lift", "exhaust_valve.opens", "exhaust_valve.stated_at", "exhaust_valve.flow_coefficient"})
      EXPECT_NE(a.key, key);
  EXPECT_FALSE(c.engine.intake.seat_load);
}

TEST(EngineCase, CentreAndDurationSayTheSameAsTheCard) {
  const EngineCase c =
      read_engine(engine_text +
                  "[engine.exhaust_valve]\nopens = \"centre 108 deg before tdc\"\nduration = \"252 deg\"\n"
                  "[engine.intake_valve]\nopens = \"centre 108 deg after tdc\"\nduration = \"244 deg\"\n");
  EXPECT_NEAR(c.engine.exhaust.card.opens.degrees(), 126, 1e-9);
  EXPECT_NEAR(c.engine.exhaust.card.closes.degrees(), 378, 1e-9);
  EXPECT_NEAR(c.engine.intake.card.opens.degrees(), 346, 1e-9);
  EXPECT_NEAR(c.engine.intake.card.closes.degrees(), 590, 1e-9);
}

// At ratio (101.3 + 100 + 8)/101.3 = 2.0661, efficiency 0.70 and effectiveness 0.75:
// rise 293 (2.0661^0.2857 - 1)/0.70 = 96.4 K, of which a quarter stays.
TEST(EngineCase, WarmsTheChargeByCompressorAndCooler) {
  const double ratio = (101.3 + 100 + 8) / 101.3;
  const double rise = 293 * (std::pow(ratio, 0.4 / 1.4) - 1) / 0.70;
  EXPECT_NEAR(read_engine(engine_text).charge.temperature, 293 + 0.25 * rise, 1e-6);
}

TEST(EngineCase, AltitudeGivesTheStandardAtmosphere) {
  // ISO 2533 at 1000 m over that at sea level: pressure 898.74/1013.25, from the printed table.
  const EngineCase c = read_engine(engine_text + "[ambient]\naltitude = \"1000 m\"\n");
  EXPECT_NEAR(c.ambient.pressure / 101300, 898.74 / 1013.25, 2e-4);
}

TEST(EngineCase, CommandLineOverrulesCellAndSpeeds) {
  CaseFile file = CaseFile::from_text(engine_text, "case.toml");
  const EngineCase c = read_engine_case(file, 0.01, {2000, 4000});
  EXPECT_EQ(c.run.cell, 0.01);
  EXPECT_EQ(c.run.rpm, (std::vector<double>{2000, 4000}));
}

TEST(EngineCase, CellOfTheCommandLineHasLimits) {
  CaseFile file = CaseFile::from_text(engine_text, "case.toml");
  EXPECT_THROW(read_engine_case(file, 1e-30), Error);
}

TEST(EngineCase, OwnKeyOfAPrimaryWinsOverWhatAllShare) {
  const EngineCase c =
      read_engine(with(engine_text, "cylinder = 3", "cylinder = 3\nbore = \"40 mm\"\nangle = \"25 deg\""));
  const auto bore = [&](const char* name) {
    const PlanPlace place = locate(c.plan, name, 0.1);
    return equal_area_bore(area_at(c.plan.ducts[static_cast<std::size_t>(place.duct)].drawing, place.distance));
  };
  EXPECT_NEAR(bore("primary 3"), 0.040, 1e-9);
  EXPECT_NEAR(bore("primary 1"), 0.03666, 1e-5);  // NPS 1-1/4 sch 10S: 42.2 - 2 x 2.77 mm (ASME B36.19M)
}

TEST(EngineCase, SilencerCanBeLeftOut) {
  EXPECT_TRUE(read_engine(engine_text).silencer.fitted);
  EXPECT_FALSE(read_engine("silencer = \"none\"\n" + engine_text).silencer.fitted);
  EXPECT_NEAR(read_engine("silencer = \"0.1 bar\"\n" + engine_text).silencer.pressure_drop, 1e4, 1e-9);
}

}  // namespace
}  // namespace pulsewright
