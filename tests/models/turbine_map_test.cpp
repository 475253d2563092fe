#include "models/turbine_map.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>

#include "models/engine_run.hpp"
#include "models/turbine.hpp"
#include "models/turbine_work.hpp"
#include "tests/models/case_text.hpp"
#include "tests/solver/end_gas.hpp"

namespace pulsewright {
namespace {

const Gas exhaust = perfect_gas(1.33, 287);
constexpr double inducer = 0.064, dt = 4e-6;
const std::vector<double> speeds = {1800, 2600, 3300};  // rpm over root K
const std::vector<double> ratios = {1.2, 1.5, 2.0, 2.6, 3.4};

/// U/C0 of a perfect gas at a point of a map, by hand.
double velocity_ratio(double rpm_per_root, double ratio) {
  const double cp = 287 * 1.33 / 0.33, c0 = std::sqrt(2 * cp * (1 - std::pow(ratio, -0.33 / 1.33)));
  return std::numbers::pi * inducer * rpm_per_root / 60 / c0;
}

/// What two nozzles and the parabola would measure on a stand.
std::string map_of(const TurbineAreas& areas, int scrolls, double peak) {
  std::string text =
      "# made up from two nozzles\nspeed_rpm_per_sqrtK, expansion_ratio, flow_parameter_kg_sqrtK_per_s_kPa, "
      "efficiency\n";
  for (double n : speeds)
    for (double r : ratios) {
      const double throat = scrolls * areas.scroll_throat;
      const double flow = 1e3 * throat / std::sqrt(287.0) * pair_flow(1 / r, areas.rotor / throat, 1.33).flow;
      text += fmt::format("{},{},{:.15g},{:.15g}\n", n, r, flow, turbine_efficiency(peak, velocity_ratio(n, r), 1));
    }
  return text;
}

std::vector<std::string> faults_of(const std::string& text) {
  std::vector<std::string> faults;
  const MapFault add = [&](std::string message, std::string) { faults.push_back(std::move(message)); };
  if (const auto file = parse_map_file(text, "turbine.csv", turbine_map_columns, add)) turbine_map_table(*file, add);
  return faults;
}

TurbineMapTable table_of(const std::string& text) {
  const MapFault fail = [](std::string message, std::string) { FAIL() << message; };
  return *turbine_map_table(*parse_map_file(text, "turbine.csv", turbine_map_columns, fail), fail);
}

// 1e-9: fifteen digits in the file, pair_flow good to 1e-12 in pressure.
TEST(TurbineMap, MadeFromTwoNozzlesGivesThemBackEverywhere) {
  const TurbineAreas areas{6e-4, 7e-4};
  const TurbineMap map(table_of(map_of(areas, 1, 0.68)), 7.0 / 6.0, 1, inducer, 0, exhaust);
  EXPECT_NEAR(map.areas().scroll_throat / areas.scroll_throat, 1, 1e-9);
  EXPECT_NEAR(map.areas().rotor / areas.rotor, 1, 1e-9);
  for (double ratio : {1.01, 1.2, 1.77, 3.4, 6.0})
    for (double speed : {100.0, 320.0, 500.0}) {
      const TurbineMap::Answer a = map.at(speed, 1100, ratio);
      EXPECT_NEAR(a.area, 1, 1e-9) << ratio << ' ' << speed;
      EXPECT_NEAR(a.efficiency, 0.68, 1e-9) << ratio << ' ' << speed;
    }
}

// The whole element, pulse by pulse: 1e-6 is the element's own tolerance.
TEST(TurbineMap, ATurbineWithThatMapRunsAsTheTwoNozzlesDo) {
  TurbineSpec plain{"turbine", 3e-4, 7e-4, 0.68};
  plain.outlet_port = 2;
  TurbineSpec mapped = plain;
  mapped.map = std::make_shared<TurbineMap>(table_of(map_of({3e-4, 7e-4}, 2, 0.68)), 7.0 / 6.0, 2, inducer, 0, exhaust);
  Turbine a(plain, exhaust), b(mapped, exhaust);
  for (Turbine* t : {&a, &b}) t->set_tip_speed(330);
  std::vector<Port> pa(3), pb;
  for (int i = 0; i < 400; ++i) {
    const double pulse = std::sin(i * std::numbers::pi / 100), other = std::cos(i * std::numbers::pi / 100);
    pa = {port_with(gas_at(exhaust, 1.7e5 + 0.6e5 * pulse, 1100, 60, 1), 3e-4),
          port_with(gas_at(exhaust, 1.7e5 + 0.6e5 * other, 1100, 60, 1), 3e-4),
          port_with(gas_at(exhaust, 1.05e5, 900, 0, 1), 3e-3)};
    pb = pa;
    a.advance(pa, {i * dt, dt, exhaust}), b.advance(pb, {i * dt, dt, exhaust});
    ASSERT_NEAR(b.reading().flow, a.reading().flow, 2e-6 * std::abs(a.reading().flow) + 1e-9) << i;
    if (i == 0) continue;  // the work is that of the step before
    ASSERT_NEAR(b.reading().power_shaft, a.reading().power_shaft, 1e-5 * a.reading().power_shaft) << i;
  }
}

TEST(TurbineMap, SaysWhereItDoesNotReach) {
  const TurbineMap map(table_of(map_of({6e-4, 7e-4}, 1, 0.68)), 7.0 / 6.0, 1, inducer, 0, exhaust);
  const double root = std::sqrt(1100), slow = std::numbers::pi * inducer * 30 * root;  // 1800 rpm over root K
  EXPECT_TRUE(map.at(1.2 * slow, 1100, 2).inside);
  EXPECT_FALSE(map.at(0.9 * slow, 1100, 2).inside);
  EXPECT_FALSE(map.at(2.1 * slow, 1100, 2).inside);
  EXPECT_FALSE(map.at(1.2 * slow, 1100, 1.1).inside);
  EXPECT_FALSE(map.at(1.2 * slow, 1100, 3.6).inside);
}

// A point of 2 at 8 g sqrt(K)/(s kPa): both nozzles pass that, and what is measured at other points bends the areas.
TEST(TurbineMap, PassesItsPointsAndTheirEfficiency) {
  const std::string text =
      "speed_rpm_per_sqrtK,expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa,efficiency\n"
      "3000,1.4,0.0190,0.62\n3000,2.0,0.0225,0.66\n5000,1.8,0.0205,0.70\n5000,2.6,0.0235,0.64\n";
  const TurbineMapTable table = table_of(text);
  const TurbineMap map(table, 1, 1, inducer, 0, exhaust);
  for (const TurbineMapPoint& p : table.points) {
    const double tip = std::numbers::pi * inducer * p.speed * std::sqrt(873.15);
    const TurbineMap::Answer a = map.at(tip * (1 + 1e-12), 873.15, p.ratio);
    const double flow = a.area * map.areas().scroll_throat / std::sqrt(287.0) * pair_flow(1 / p.ratio, 1, 1.33).flow;
    EXPECT_NEAR(flow / p.flow, 1, 1e-8);
    const double drop = isentropic_drop(exhaust, {p.ratio, 873.15, 1}, 1);
    EXPECT_NEAR(turbine_efficiency(a.efficiency, tip, spouting_velocity(drop)), p.efficiency, 1e-8);
  }
}

// Corrected to 288.15 K and 1.01325 bar, 0.16 kg/s is 0.16 sqrt(288.15)/101325.
TEST(TurbineMap, CorrectedFiguresReferToTheStateThatTheFileNames) {
  const TurbineMapTable table = table_of(
      "reference, 288.15 K, 1.01325 "
      "bar\ncorrected_speed_rpm,expansion_ratio,corrected_flow_kg_s\n60000,1.5,0.14\n60000,2,0.16\n");
  EXPECT_FALSE(table.has_efficiency);
  EXPECT_NEAR(table.points[1].flow, 0.16 * std::sqrt(288.15) / 101325, 1e-15);
  EXPECT_NEAR(table.points[1].speed, 1000 / std::sqrt(288.15), 1e-10);
}

TEST(TurbineMap, EveryFaultOfAFileIsToldWithItsLine) {
  const std::string heading = "speed_rpm_per_sqrtK,expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa,efficiency\n";
  const auto all = faults_of(heading + "3000,0.9,0.02,0.6\n3000,1.4,-1,0.6\n3000,1.3,0.02,1.6\n2000,1.2,0.02,0.6\n");
  ASSERT_EQ(all.size(), 4u);
  EXPECT_TRUE(all[0].starts_with("turbine.csv:2: an expansion ratio lies above 1")) << all[0];
  EXPECT_TRUE(all[1].starts_with("turbine.csv:3: a flow must be above 0")) << all[1];
  EXPECT_TRUE(all[2].starts_with("turbine.csv:4: an efficiency lies between")) << all[2];
  EXPECT_TRUE(all[3].starts_with("turbine.csv:5: speeds must rise")) << all[3];
  const auto fields = faults_of(heading + "3000,1.2,0.02\n3000,x,0.02,0.6\n3000,nan,0.02,0.6\n");
  ASSERT_EQ(fields.size(), 3u);
  EXPECT_TRUE(fields[0].starts_with("turbine.csv:2: 3 values stand under 4")) << fields[0];
  EXPECT_TRUE(fields[1].starts_with("turbine.csv:3: 'x' is not a number")) << fields[1];
}

// Per kPa, not per bar: the commonest slip, a factor of a hundred.
TEST(TurbineMap, AsksForTheUnitWhereNoTurbinePassesThat) {
  const auto faults = faults_of("expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa\n1.5,2.5\n2,2.7\n");
  ASSERT_EQ(faults.size(), 2u);
  EXPECT_NE(faults[0].find("is the unit right?"), std::string::npos) << faults[0];
}

TEST(TurbineMap, HeadingsAreHeldToTheirNames) {
  EXPECT_NE(faults_of("speed,ratio\n1,2\n").size(), 0u);
  EXPECT_NE(faults_of("").size(), 0u);
  EXPECT_NE(faults_of("expansion_ratio,corrected_flow_kg_s\n1.5,0.1\n2,0.12\n").size(), 0u);  // no reference
  EXPECT_NE(faults_of("expansion_ratio,expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa\n1.5,1.5,0.02\n").size(), 0u);
  EXPECT_EQ(faults_of("expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa\n1.5,0.02\n2,0.022\n").size(), 0u);
}

/// A case in a folder of its own with a map beside it.
class MapCase : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() / ("turbine_map_" + std::to_string(::getpid()));
    std::filesystem::create_directory(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  void write(const std::string& name, const std::string& text) const { std::ofstream(folder_ / name) << text; }
  EngineCase read(const std::string& keys) const {
    write("case.toml", test::with(test::engine_text, "[turbine]\n", "[turbine]\n" + keys + "\n"));
    CaseFile file = CaseFile::load(folder_ / "case.toml");
    return read_engine_case(file, 0.02);
  }
  std::string fault(const std::string& keys) const {
    try {
      read(keys);
    } catch (const Error& error) {
      return error.what();
    }
    return {};
  }

 private:
  std::filesystem::path folder_;
};

TEST_F(MapCase, RunsWithAMapAndSaysHowMuchGasPassedOutsideIt) {
  const EngineCase plain = read("inducer = \"64 mm\"");
  const Gas gas = mixture_gas(plain.engine.fuel, plain.engine.lambda);
  const double gamma = heat_ratio(gas, capacity_temperature, 1), R = gas_constant(gas, 1);
  const TurbineAreas& areas = plain.turbines[0].areas;
  const auto map = [&](double low, double high) {
    std::string text = "expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa\n";
    for (int i = 0; i <= 20; ++i) {
      const double r = low + (high - low) * i / 20;
      text += fmt::format(
          "{},{:.15g}\n", r,
          1e3 * areas.scroll_throat / std::sqrt(R) * pair_flow(1 / r, areas.rotor / areas.scroll_throat, gamma).flow);
    }
    return text;
  };
  write("wide.csv", map(1.001, 9));
  write("narrow.csv", map(1.9, 2.1));
  const SpeedResult without = run_speed(plain, 4000),
                    wide = run_speed(read("map = \"wide.csv\"\ninducer = \"64 mm\""), 4000),
                    narrow = run_speed(read("map = \"narrow.csv\"\ninducer = \"64 mm\""), 4000);
  EXPECT_FALSE(without.shafts[0].outside_map.has_value());
  EXPECT_LT(*wide.shafts[0].outside_map, 0.01);
  EXPECT_GT(*narrow.shafts[0].outside_map, 0.5);
  // The same turbine three ways; 1e-4: each is settled to 1e-3 of what is still to come.
  for (const SpeedResult* r : {&wide, &narrow}) {
    EXPECT_NEAR(r->shafts[0].power_shaft / without.shafts[0].power_shaft, 1, 1e-4);
    EXPECT_NEAR(r->turbine[0].pressure_mean / without.turbine[0].pressure_mean, 1, 1e-4);
    EXPECT_LT(r->energy_error, 1e-12);
  }
}

TEST_F(MapCase, FaultsNameTheCaseAndTheFile) {
  write("short.csv", "expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa\n1.5,0.02\n1.4,0.02\n");
  write("speeds.csv",
        "speed_rpm_per_sqrtK,expansion_ratio,flow_parameter_kg_sqrtK_per_s_kPa\n3000,1.5,0.02\n3000,2,0.02\n");
  EXPECT_NE(fault("map = \"short.csv\"").find("short.csv:3: expansion ratios must rise"), std::string::npos);
  EXPECT_NE(fault("map = \"speeds.csv\"").find("the wheel's size is missing"), std::string::npos);
  EXPECT_NE(fault("map = \"none.csv\"").find("none.csv"), std::string::npos);
  EXPECT_NE(fault("map = \"../short.csv\"").find("does not lie beside the case"), std::string::npos);
  EXPECT_NE(fault("map = \"/etc/hostname\"").find("does not lie beside the case"), std::string::npos);
  const std::string point =
      "\ncapacity = { flow = \"0.16 kg/s\", ratio = 2.0, temperature = \"288.15 K\", pressure = \"1.01325 bar\" }";
  EXPECT_NE(fault("map = \"short.csv\"" + point).find("already says what the turbine passes"), std::string::npos);
}

}  // namespace
}  // namespace pulsewright
