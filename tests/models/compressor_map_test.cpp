// Where a point stands on a compressor's map.

#include "models/compressor_map.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace pulsewright {
namespace {

constexpr double rounding = 1e-10;  // the search stops at 44 bits, 6e-14, and what follows multiplies that a little

// A surface of our own. U tip speed, w share of the way from surge to choke:
//   flow = 0.04 (U/200) + w 0.08 (U/200), ratio = 1 + (U/300)^2 (1 - 0.3 w^2), efficiency = 0.78 - 0.4 (w - 0.5)^2 - ((U - 350)/1000)^2
double flow_of(double U, double w) { return (0.04 + 0.08 * w) * U / 200; }
double ratio_of(double U, double w) { return 1 + U * U / 9e4 * (1 - 0.3 * w * w); }
double efficiency_of(double U, double w) { return 0.78 - 0.4 * (w - 0.5) * (w - 0.5) - (U - 350) * (U - 350) / 1e6; }
const std::vector<double> speeds{200, 300, 400, 500}, ways{0, 0.25, 0.5, 0.75, 1};

std::string map_text(const std::string& reference = "reference, 288.15 K, 1 bar\n") {
  std::string text =
      "# a wheel of our own\n" + reference + "corrected_tip_speed_m_s,corrected_flow_kg_s,pressure_ratio,efficiency\n";
  char line[120];
  for (double U : speeds)
    for (double w : ways) {
      std::snprintf(line, sizeof line, "%.17g,%.17g,%.17g,%.17g\n", U, flow_of(U, w), ratio_of(U, w),
                    efficiency_of(U, w));
      text += line;
    }
  return text;
}

std::string faults_in(const std::string& text) {
  std::string faults;
  const MapFault fault = [&](const std::string& message, const std::string& hint) {
    faults += message + " " + hint + "\n";
  };
  const auto file = parse_map_file(text, "map.csv", compressor_map_columns, fault);
  if (file && compressor_map_table(*file, fault)) return {};
  return faults.empty() ? "nothing said" : faults;
}

CompressorMap map_from(const std::string& text, double exducer = 0) {
  const MapFault fault = [](const std::string& message, const std::string&) { throw std::logic_error(message); };
  const auto file = parse_map_file(text, "map.csv", compressor_map_columns, fault);
  return {*compressor_map_table(*file, fault), exducer};
}

const CompressorInlet as_reference{288.15, 1e5};

TEST(CompressorMap, IsReproducedAtItsOwnPoints) {
  const CompressorMap map = map_from(map_text());
  for (double U : speeds)
    for (double w : ways) {
      const CompressorMapAnswer a = map.at(as_reference, flow_of(U, w), ratio_of(U, w));
      EXPECT_NEAR(a.tip_speed / U, 1, rounding) << U << " " << w;
      EXPECT_NEAR(a.efficiency / efficiency_of(U, w), 1, rounding) << U << " " << w;
      EXPECT_TRUE(a.inside()) << U << " " << w;
    }
}

// Half way between two lines and two points of each: the mean of the four corners.
TEST(CompressorMap, IsBilinearBetweenItsPoints) {
  const CompressorMap map = map_from(map_text());
  const auto mean = [](double (*f)(double, double), double U, double w) {
    return 0.25 * (f(U, w) + f(U + 100, w) + f(U, w + 0.25) + f(U + 100, w + 0.25));
  };
  for (double U : {200.0, 300.0, 400.0})
    for (double w : {0.0, 0.25, 0.5, 0.75}) {
      const CompressorMapAnswer a = map.at(as_reference, mean(flow_of, U, w), mean(ratio_of, U, w));
      EXPECT_NEAR(a.tip_speed / (U + 50), 1, rounding) << U << " " << w;
      EXPECT_NEAR(a.efficiency / mean(efficiency_of, U, w), 1, rounding) << U << " " << w;
      EXPECT_TRUE(a.inside());
    }
}

TEST(CompressorMap, SaysOnWhichSideAPointLiesOutside) {
  const CompressorMap map = map_from(map_text());
  const auto at = [&](double flow, double ratio) { return map.at(as_reference, flow, ratio); };
  const CompressorMapAnswer surge = at(0.98 * flow_of(300, 0), ratio_of(300, 0));
  EXPECT_TRUE(surge.surge && !surge.choke && !surge.overspeed && !surge.too_slow);
  EXPECT_NEAR(surge.efficiency / efficiency_of(300, 0), 1, rounding);  // the edge stands in
  const CompressorMapAnswer choke = at(flow_of(300, 1), 0.95 * ratio_of(300, 1));
  EXPECT_TRUE(choke.choke && !choke.surge && !choke.overspeed && !choke.too_slow);
  EXPECT_NEAR(choke.tip_speed / 300, 1, 1e-8);  // the line that still passes this flow; edge is told within 1e-9
  EXPECT_TRUE(at(1.02 * flow_of(500, 1), ratio_of(500, 1)).choke);
  const CompressorMapAnswer over = at(flow_of(500, 0.5), 1.02 * ratio_of(500, 0.5));
  EXPECT_TRUE(over.overspeed && !over.surge && !over.choke);
  EXPECT_NEAR(over.tip_speed, 500, 1e-6);
  const CompressorMapAnswer slow = at(flow_of(200, 0.5), 0.98 * ratio_of(200, 0.5));
  EXPECT_TRUE(slow.too_slow && !slow.surge && !slow.choke);
}

TEST(CompressorMap, EveryPointOfALineIsInsideAndHalfAPercentBeyondItsEndsIsNot) {
  const CompressorMap map = map_from(map_text());
  for (double U : {200.0, 300.0, 400.0, 500.0}) {
    EXPECT_TRUE(map.at(as_reference, 0.995 * flow_of(U, 0), ratio_of(U, 0)).surge) << U;
    EXPECT_TRUE(map.at(as_reference, 1.005 * flow_of(U, 1), ratio_of(U, 1)).choke) << U;
  }
}

// Corrected flow by hand: 0.1 kg/s at 300 K and 0.95 bar are 0.1 sqrt(300/288.15)/0.95; the tip turns sqrt(300/288.15) faster.
TEST(CompressorMap, CorrectsFlowAndSpeedToItsReference) {
  const CompressorMap map = map_from(map_text());
  const double root = std::sqrt(300 / 288.15), flow = flow_of(400, 0.5);
  const CompressorMapAnswer a = map.at({300, 0.95e5}, flow / root * 0.95, ratio_of(400, 0.5));
  EXPECT_NEAR(a.corrected_flow / flow, 1, rounding);
  EXPECT_NEAR(a.tip_speed / (400 * root), 1, rounding);
}

TEST(CompressorMap, ShaftSpeedsTurnTheExducer) {
  std::string text = map_text();
  text.replace(text.find("corrected_tip_speed_m_s"), 23, "corrected_speed_rpm");
  // The same numbers read as revolutions a minute of a 60 mm wheel.
  const CompressorMapAnswer a = map_from(text, 0.06).at(as_reference, flow_of(400, 0.5), ratio_of(400, 0.5));
  EXPECT_NEAR(a.tip_speed / (std::numbers::pi * 0.06 * 400 / 60), 1, rounding);
}

TEST(CompressorMap, SaysWhatIsWrongWithItsFile) {
  EXPECT_EQ(faults_in(map_text()), "");
  const auto has = [](const std::string& faults, const std::string& part) {
    return faults.find(part) != std::string::npos;
  };
  EXPECT_TRUE(has(faults_in(map_text("")), "state that they refer to"));
  const std::string head =
      "reference, 288.15 K, 1 bar\ncorrected_speed_rpm,corrected_flow_kg_s,pressure_ratio,efficiency\n";
  const std::string good = "90000,0.05,1.5,0.7\n90000,0.1,1.3,0.7\n";
  EXPECT_TRUE(has(faults_in(head + good), "two speeds"));
  EXPECT_TRUE(has(faults_in(head + good + "80000,0.1,1.4,0.7\n"), "map.csv:5: speeds must rise"));
  EXPECT_TRUE(has(faults_in(head + good + "90000,0.09,1.4,0.7\n"), "map.csv:5: flows must rise"));
  EXPECT_TRUE(has(faults_in(head + good + "99000,0.09,1.4,70\n"), "map.csv:5: an efficiency"));
  EXPECT_TRUE(has(faults_in(head + good + "99000,0.09,0.9,0.7\n"), "map.csv:5: a pressure ratio"));
  EXPECT_TRUE(has(faults_in(head + good + "99000,0.06,1.7,0.7\n"), "one point only"));
  EXPECT_TRUE(has(faults_in(head + good + "99000,0.04,1.7,0.7\n99000,0.12,1.5,0.7\n"), "surge and choke must move"));
  EXPECT_TRUE(has(faults_in(head + good + "99000,0.06,1.4,0.7\n99000,0.12,1.2,0.7\n"), "ratio at surge must rise"));
  EXPECT_TRUE(has(faults_in("reference, 288.15 K, 1 bar\ncorrected_flow_kg_s,pressure_ratio\n0.1,1.5\n0.2,1.4\n"),
                  "efficiency"));
}

}  // namespace
}  // namespace pulsewright
