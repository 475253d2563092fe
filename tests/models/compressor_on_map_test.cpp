// A case with a compressor's map: efficiency, wheel speed and charge temperature come from it, and its edges are told.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "models/compressor.hpp"
#include "models/engine_model.hpp"
#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::says;
using test::with;

/// Two lines, 250 and 450 m/s: surge at 0.03 and 0.08 kg/s, choke at 0.15 and 0.35 kg/s.
const std::string map_text =
    "reference, 293 K, 1.013 bar\n"
    "corrected_tip_speed_m_s,corrected_flow_kg_s,pressure_ratio,efficiency\n"
    "250,0.03,1.6,0.66\n250,0.09,1.55,0.74\n250,0.15,1.3,0.62\n"
    "450,0.08,3.4,0.68\n450,0.22,3.2,0.75\n450,0.35,2.4,0.60\n";

const std::string case_text = with(engine_text, "cell = \"5 mm\"", "cell = \"20 mm\"") +
                              "[ambient]\npressure = \"1.013 bar\"\ntemperature = \"293 K\"\n"
                              "[cooler]\neffectiveness = 0.75\npressure_drop = \"0.1 bar\"\n";

CaseFile files(const std::string& text, const std::string& map) {
  return CaseFile::load("case.toml", CaseFolder({{"case.toml", text}, {"map.csv", map}}));
}
EngineCase read(const std::string& text, const std::string& map = map_text) {
  CaseFile file = files(text, map);
  return read_engine_case(file);
}
std::string fault(const std::string& text, const std::string& map = map_text) {
  return test::fault_in([&](const std::string& t) { return read(t, map); }, text);
}

const std::string mapped = case_text + "[compressor]\nmap = \"map.csv\"\n";

TEST(CompressorOnMap, EfficiencyAndWorkComeFromTheMapAtTheCoolersRatio) {
  const EngineCase engine = read(mapped);
  const EngineModel model(engine, 5000);
  const double air = 0.2;
  const CompressorPoint point = compressor_point(engine, model.network().gas(), 1e5, air);
  const double drop = cooler_drop(engine.charge, air);
  EXPECT_GT(drop, 0);
  EXPECT_NEAR(point.pressure_ratio, (1.013e5 + 1e5 + drop) / 1.013e5, 1e-12);  // one division
  const CompressorMapAnswer answer = engine.charge.map->at({293, 1.013e5}, air, point.pressure_ratio);
  EXPECT_NEAR(point.efficiency, answer.efficiency, 1e-9);  // the ratio is rounded another way
  EXPECT_TRUE(answer.inside());
  // Work by hand: air of c_p 1005 J/(kg K). 0.5 %: c_p rises by 0.4 % up to 370 K.
  const double ideal = 1005 * 293 * (std::pow(point.pressure_ratio, 0.4 / 1.4) - 1);
  EXPECT_NEAR(point.work * answer.efficiency / ideal, 1, 5e-3);
}

// The cooler takes three quarters of the wheel's rise; its pressure drop has warmed the air already.
TEST(CompressorOnMap, ChargeIsWarmedByTheMapsEfficiencyAndCooledByTheCooler) {
  const EngineCase engine = read(mapped);
  const EngineModel model(engine, 5000);
  const CompressorPoint point = compressor_point(engine, model.network().gas(), 1e5, 0.2);
  EXPECT_NEAR(charge_temperature_at(engine, model.network().gas(), 1e5, 0.2), 293 + 0.25 * point.rise, 1e-9);
}

TEST(CompressorOnMap, DropOfTheCoolerGoesWithTheSquareOfTheFlow) {
  const EngineCase engine = read(mapped);
  const double full = engine.charge.full_flow;
  EXPECT_NEAR(cooler_drop(engine.charge, full), 0.1e5, 1e-6);
  EXPECT_NEAR(cooler_drop(engine.charge, full / 2), 0.025e5, 1e-6);
}

TEST(CompressorOnMap, WheelTurnsAsFastAsTheMapSays) {
  const EngineCase engine = read(mapped);
  const EngineModel model(engine, 5000);
  const CompressorPoint point = compressor_point(engine, model.network().gas(), model.boost(), model.air_flow());
  const double tip = compressor_on_map(engine.charge, point.pressure_ratio, model.air_flow()).tip_speed;
  EXPECT_NEAR(model.tip_speed() * engine.turbines[0].wheel_ratio, tip, 1e-9);
  EXPECT_GT(tip, 250);
  EXPECT_LT(tip, 450);
}

TEST(CompressorOnMap, BoostFromWorkIsTheInverseOfWorkFromBoost) {
  const EngineCase engine = read(mapped);
  const EngineModel model(engine, 5000);
  for (double boost : {0.6e5, 1.0e5, 1.6e5}) {
    const double work = compressor_point(engine, model.network().gas(), boost, 0.2).work;
    EXPECT_NEAR(boost_from_work(engine, model.network().gas(), work, 0.2) / boost, 1, 1e-3);  // found in turns
  }
}

TEST(CompressorOnMap, AssumesNoEfficiencyAndNoWorkCoefficient) {
  for (const AssumedEntry& entry : read(mapped).assumed) {
    EXPECT_NE(entry.key, "compressor.efficiency");
    EXPECT_NE(entry.key, "compressor.work_coefficient");
  }
}

TEST(CompressorOnMap, SpeedsOfTheShaftNeedTheExducer) {
  const std::string shaft = with(map_text, "corrected_tip_speed_m_s", "corrected_speed_rpm");
  EXPECT_TRUE(says(fault(mapped, shaft), {"exducer is missing"}));
  EXPECT_EQ(fault(mapped + "exducer = \"60 mm\"\n", shaft), "");
}

TEST(CompressorOnMap, SaysWhatIsWrongInTheCase) {
  EXPECT_TRUE(says(fault(mapped + "efficiency = 0.7\n"), {"the map already says it"}));
  EXPECT_TRUE(says(fault(mapped, with(map_text, "250,0.09", "250,0.02")), {"map.csv:4", "flows must rise"}));
}

TEST(CompressorOnMap, RunTellsChokeWhereTheAirIsTooMuch) {
  std::string small = map_text;  // all flows a third: far too small for two litres at 5000
  for (const auto& [from, to] : {std::pair{"0.03,", "0.01,"},
                                 {"0.09,", "0.03,"},
                                 {"0.15,", "0.05,"},
                                 {"0.08,", "0.027,"},
                                 {"0.22,", "0.073,"},
                                 {"0.35,", "0.117,"}})
    small = with(small, from, to);
  const SpeedResult choked = run_speed(read(mapped, small), 5000), fine = run_speed(read(mapped), 5000);
  ASSERT_EQ(choked.compressors.size(), 1u);
  EXPECT_TRUE(choked.compressors[0].mapped && choked.compressors[0].choke);
  EXPECT_FALSE(choked.compressors[0].surge || choked.compressors[0].overspeed || choked.compressors[0].too_slow);
  EXPECT_TRUE(fine.compressors.at(0).mapped);
  EXPECT_FALSE(fine.compressors[0].choke || fine.compressors[0].surge || fine.compressors[0].overspeed);
  EXPECT_NEAR(fine.compressors[0].flow / fine.air_flow, 1, 1e-3);  // the reference is the ambient
}

TEST(CompressorOnMap, WithoutAMapNothingIsFlagged) {
  const SpeedResult s = run_speed(read(case_text), 4000);
  ASSERT_EQ(s.compressors.size(), 1u);
  EXPECT_FALSE(s.compressors[0].mapped);
}

}  // namespace
}  // namespace pulsewright
