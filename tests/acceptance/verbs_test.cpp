// What every verb prints, writes and returns.

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

const std::string rig = "01_shock_tube.toml", equal = "03_equal_primaries.toml", unequal = "04_short_unequal.toml";
const std::vector<std::string> one_quick_speed = {"--rpm", "3000", "--quick"};

std::vector<std::string> joined(std::vector<std::string> a, const std::vector<std::string>& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

std::size_t count(const std::string& text, const std::string& word) {
  std::size_t n = 0;
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) ++n;
  return n;
}

TEST(Program, NamesTheNearestVerb) {
  const Outcome o = Workshop().run({"comparre"});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_NE(o.err.find("'compare'"), std::string::npos);
}

TEST(Program, WithoutAVerbSaysHowToAsk) {
  const Outcome o = Workshop().run({});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_NE(o.err.find("--help"), std::string::npos);
}

TEST(Run, OfARigKeepsMassAndEnergyAndSaysSo) {
  const Outcome o = Workshop().run({"run", rig, "--json"});
  ASSERT_EQ(o.exit_code, 0) << o.err;
  const auto j = nlohmann::json::parse(o.out);
  EXPECT_LT(std::abs(j["mass_error"].get<double>()), 1e-12);
  EXPECT_LT(std::abs(j["energy_error"].get<double>()), 1e-12);
}

TEST(Run, OfAnEngineCarriesEveryKeyOfTheContract) {
  const Outcome o = Workshop().run(joined({"run", equal, "--json"}, one_quick_speed));
  ASSERT_EQ(o.exit_code, 0) << o.err;
  const auto j = nlohmann::json::parse(o.out);
  for (const char* key : {"schema", "version", "title", "file", "hash", "assumed", "speeds"})
    EXPECT_TRUE(j.contains(key)) << key;
  const auto& s = j["speeds"][0];
  for (const char* key :
       {"rpm", "settled", "cycles", "mass_error", "energy_error", "unsettled_mass", "unsettled_energy", "turbine",
        "boost_gauge_bar", "intake_pressure_bar", "drive_to_boost_gauge", "drive_to_boost_absolute", "torque_Nm",
        "power_kW", "gates", "cylinders", "arrivals", "overlap"})
    EXPECT_TRUE(s.contains(key)) << key;
  for (const char* key : {"pressure_mean_bar", "pressure_mean_gauge_bar", "stagnation_mean_bar", "pressure_peak_bar",
                          "pressure_swing_bar", "temperature_flow_mean_K", "temperature_time_mean_K", "mass_flow_kg_s",
                          "power_available_kW", "power_shaft_kW"})
    EXPECT_TRUE(s["turbine"][0].contains(key)) << key;
  for (const char* key :
       {"cylinder", "volumetric_efficiency", "burned_gas_left", "pmep_bar", "imep_bar", "port_pressure_mean_bar",
        "port_pressure_peak_bar", "overlap_port_pressure_bar", "overlap_port_minus_intake_bar", "temperature_K"})
    EXPECT_TRUE(s["cylinders"][0].contains(key)) << key;
}

TEST(Run, TimingSaysWhereTheTimeGoes) {
  const Outcome o = Workshop().run(joined({"run", equal, "--json", "--timing"}, one_quick_speed));
  ASSERT_EQ(o.exit_code, 0) << o.err;
  const auto timing = nlohmann::json::parse(o.out)["speeds"][0]["timing"];
  for (const char* key : {"cells", "steps", "cell_updates", "seconds", "ns_per_cell_update", "fma_peak_gflops",
                          "peak_flops_per_cell_update", "shares", "step_set_by"})
    EXPECT_TRUE(timing.contains(key)) << key;
  double sum = 0;
  for (const auto& share : timing["shares"]) sum += share.get<double>();
  EXPECT_NEAR(sum, 1, 1e-9);
}

TEST(Run, WritesNoFileWithoutBeingTold) {
  const Workshop shop;
  const auto before = shop.files();
  ASSERT_EQ(shop.run(joined({"run", equal}, one_quick_speed)).exit_code, 0);
  EXPECT_EQ(shop.files(), before);
}

TEST(Run, NeverOverwritesWithoutForce) {
  const Workshop shop;
  shop.write("mine.html", "mine");
  const Outcome kept = shop.run(joined({"run", equal, "--report", "mine.html"}, one_quick_speed));
  EXPECT_EQ(kept.exit_code, 4);
  EXPECT_EQ(shop.read("mine.html"), "mine");
  EXPECT_EQ(shop.run(joined({"run", equal, "--report", "mine.html", "--force"}, one_quick_speed)).exit_code, 0);
  EXPECT_NE(shop.read("mine.html"), "mine");
}

TEST(Run, ACaseThatIsNotThereIsAFileFault) { EXPECT_EQ(Workshop().run({"run", "nowhere.toml"}).exit_code, 4); }

TEST(Run, ABadCaseIsToldWithLineAndNothingIsWritten) {
  const Workshop shop;
  std::string text = shop.read(equal);
  text.replace(text.find("450 mm"), 6, "450 C ");
  shop.write("bad.toml", text);
  const auto before = shop.files();
  const Outcome o = shop.run({"run", "bad.toml", "--out", "bad.h5", "--report", "bad.html"});
  EXPECT_EQ(o.exit_code, 3);
  EXPECT_NE(o.err.find("bad.toml:"), std::string::npos);
  EXPECT_EQ(shop.files(), before);
  EXPECT_TRUE(o.out.empty());
}

TEST(Compare, PutsTheLayoutsSideBySideUnderWhatWasHeldEqual) {
  const Outcome o = Workshop().run(joined({"compare", equal, unequal}, one_quick_speed));
  ASSERT_EQ(o.exit_code, 0) << o.err;
  const auto held = o.out.find("Held equal"), boost = o.out.find("Boost is held at the value you gave at every speed."),
             table = o.out.find("drive pressure");
  ASSERT_NE(held, std::string::npos);
  ASSERT_NE(boost, std::string::npos);
  EXPECT_LT(held, table);
  EXPECT_LT(boost, table);
}

TEST(Compare, TriesAChangedValue) {
  const Outcome o = Workshop().run(
      joined({"compare", equal, "--try", "each_primary.tube=\"NPS 1-1/2 sch 10S\"", "--json"}, one_quick_speed));
  ASSERT_EQ(o.exit_code, 0) << o.err;
  const auto j = nlohmann::json::parse(o.out);
  ASSERT_EQ(j["layouts"].size(), 2u);
  EXPECT_NE(j["layouts"][0]["speeds"][0]["turbine"][0]["pressure_mean_bar"],
            j["layouts"][1]["speeds"][0]["turbine"][0]["pressure_mean_bar"]);
}

TEST(Compare, RefusesCasesThatRunDifferentSpeeds) {
  const Workshop shop;
  std::string other = shop.read(unequal);
  other.replace(other.find("[2500,"), 6, "[2600,");
  shop.write("other_speeds.toml", other);
  const Outcome o = shop.run({"compare", equal, "other_speeds.toml", "--quick"});
  EXPECT_EQ(o.exit_code, 3);
  EXPECT_NE(o.err.find("2600"), std::string::npos) << o.err;
  EXPECT_EQ(shop.run(joined({"compare", equal, "other_speeds.toml"}, one_quick_speed)).exit_code, 0);
}

TEST(Compare, OfOneLayoutIsAUsageFault) { EXPECT_EQ(Workshop().run({"compare", equal}).exit_code, 2); }
TEST(Compare, OfARigIsAUsageFault) { EXPECT_EQ(Workshop().run({"compare", rig, equal}).exit_code, 2); }

TEST(Page, KeepsATitleWithMarkupAsText) {
  const Workshop shop;
  std::string text = shop.read(equal);
  text.replace(text.find("Hill-climb two-litre, equal primaries"), 10, "<script>alert(1)</script>&");
  shop.write("marked.toml", text);
  ASSERT_EQ(shop.run(joined({"compare", "marked.toml", unequal, "--report", "page.html"}, one_quick_speed)).exit_code,
            0);
  const std::string page = shop.read("page.html");
  EXPECT_EQ(page.find("<script"), std::string::npos);
  EXPECT_NE(page.find("&lt;script&gt;"), std::string::npos);
}

TEST(Page, DrawsTheTurbineTheMergeAndEveryPortInBothLayouts) {
  const Workshop shop;
  ASSERT_EQ(shop.run(joined({"compare", equal, unequal, "--report", "page.html"}, one_quick_speed)).exit_code, 0);
  const std::string page = shop.read("page.html");
  EXPECT_EQ(count(page, "<svg class=\"chart\""), 6u);
  EXPECT_EQ(count(page, "<polyline"), 12u);
  EXPECT_EQ(page.find("nan"), std::string::npos);
  EXPECT_NE(page.find("default-src 'none'"), std::string::npos);
}

TEST(Trace, PrintsASeriesOfARig) {
  const Workshop shop;
  ASSERT_EQ(shop.run({"run", rig, "--out", "tube.h5"}).exit_code, 0);
  const Outcome o = shop.run({"trace", "tube.h5", "--at", "driver:250mm"});
  ASSERT_EQ(o.exit_code, 0) << o.err;
  EXPECT_TRUE(o.out.starts_with("time_s,pressure_Pa,temperature_K,velocity_m_s,density_kg_m3,burned\n"));
  EXPECT_GT(count(o.out, "\n"), 10u);
}

TEST(Trace, PrintsAProfileOfAnEngineAtAnAngle) {
  const Workshop shop;
  ASSERT_EQ(shop.run(joined({"run", equal, "--out", "four.h5"}, one_quick_speed)).exit_code, 0);
  const Outcome o = shop.run({"trace", "four.h5", "--along", "primary 1", "--when", "130 deg"});
  ASSERT_EQ(o.exit_code, 0) << o.err;
  EXPECT_TRUE(o.out.starts_with("distance_m,pressure_Pa,temperature_K,velocity_m_s,density_kg_m3,burned,bore_m\n"));
}

TEST(Trace, NamesTheNearestDuct) {
  const Workshop shop;
  ASSERT_EQ(shop.run({"run", rig, "--out", "tube.h5"}).exit_code, 0);
  const Outcome o = shop.run({"trace", "tube.h5", "--at", "drivr:250mm"});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_NE(o.err.find("driver"), std::string::npos);
}

TEST(Trace, OfAFileThatIsNoResultIsAFileFault) {
  const Workshop shop;
  EXPECT_EQ(shop.run({"trace", rig, "--at", "driver:0mm"}).exit_code, 4);
}

}  // namespace
}  // namespace pulsewright
