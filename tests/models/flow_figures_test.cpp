// Figures of one place over a cycle, from records written by hand.

#include "models/flow_figures.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace pulsewright {
namespace {

const Gas burned = mixture_gas(*find_fuel("petrol"), 0.85);
constexpr double area = 1e-3;

struct Moment {
  double p, u, T;
};

PlaceRecord record_of(const std::vector<Moment>& moments) {
  PlaceRecord place{"place", 0, 0, {}, {}, {}, {}, {}, {}};
  for (const Moment& m : moments) {
    place.p.push_back(m.p);
    place.u.push_back(m.u);
    place.T.push_back(m.T);
    place.Y.push_back(1);
    place.c.push_back(sound_speed(burned, m.T, 1));
    place.rho.push_back(m.p / (gas_constant(burned, 1) * m.T));
  }
  return place;
}

// The bag holds what the gas carried, its motion included; 1e-9 is the inverse's own error.
TEST(PlaceFigures, FlowTemperatureIsThatOfTheGasBroughtToRest) {
  const PlaceFigures f = place_figures(record_of({{2e5, 400, 1200}, {2e5, 400, 1200}}), area, burned);
  EXPECT_NEAR(enthalpy(burned, f.temperature_flow_mean, 1), enthalpy(burned, 1200, 1) + 400.0 * 400 / 2, 1e-9 * 1.5e6);
  EXPECT_DOUBLE_EQ(f.temperature_time_mean, 1200);
}

// Twice the mass at 1300 K, back-flow of a quarter of it at 900 K: sums by hand, to rounding.
TEST(PlaceFigures, FlowTemperatureWeighsByMassWithItsSign) {
  const PlaceRecord r = record_of({{2e5, 200, 1300}, {1e5, -50, 900}});
  const PlaceFigures f = place_figures(r, area, burned);
  const double a = r.rho[0] * 200, b = -r.rho[1] * 50;
  const double h = (a * (enthalpy(burned, 1300, 1) + 2e4) + b * (enthalpy(burned, 900, 1) + 1250)) / (a + b);
  EXPECT_NEAR(enthalpy(burned, f.temperature_flow_mean, 1), h, 1e-9 * h);
  EXPECT_NEAR(f.mass_flow, area * (a + b) / 2, 1e-12);
}

TEST(PlaceFigures, NoNetFlowGivesTheTimeMean) {
  const PlaceFigures f = place_figures(record_of({{1e5, 0, 1000}, {1e5, 0, 1100}}), area, burned);
  EXPECT_DOUBLE_EQ(f.temperature_flow_mean, 1050);
}

// Out and back in is no pulse, wherever in the cycle the record begins; bounds are rounding.
TEST(ForwardEnergyFlow, PaysBackFlowBackBeforeItCounts) {
  for (const auto& moments :
       {std::vector<Moment>{{1e5, -100, 1000}, {1e5, 100, 1000}}, {{1e5, 100, 1000}, {1e5, -100, 1000}}})
    for (double flow : forward_energy_flow(record_of(moments), area, burned)) EXPECT_NEAR(flow, 0, 1e-9);
  const Series net = forward_energy_flow(record_of({{1e5, -100, 1000}, {1e5, 300, 1000}}), area, burned);
  EXPECT_DOUBLE_EQ(net[0], 0);
  EXPECT_GT(net[1], 0);
}

TEST(OverlapPercent, IsZeroApartAndHundredTogether) {
  EXPECT_DOUBLE_EQ(overlap_percent({1, 2, 0, 0}, {0, 0, 3, 1}), 0);
  EXPECT_DOUBLE_EQ(overlap_percent({1, 2, 0, 0}, {1, 2, 0, 0}), 100);
  EXPECT_DOUBLE_EQ(overlap_percent({2, 2, 0, 0}, {0, 2, 2, 0}), 50);
  EXPECT_DOUBLE_EQ(overlap_percent({0, 0}, {0, 0}), 0);
}

// NACA Report 1135, table II, gamma 1.4, Mach 0.5: p/p0 = 0.8430, four digits.
TEST(StagnationPressure, IsTheIsentropicOne) {
  const double rho = 1.2, p = 1e5, c = std::sqrt(1.4 * p / rho);
  EXPECT_NEAR(p / stagnation_pressure(p, 0.5 * c, rho, c), 0.8430, 5e-5);
}

// The same table at Mach 1 and 2.
TEST(StagnationPressure, KnowsNoDirectionAndIsStaticAtRest) {
  const double rho = 1.2, p = 1e5, c = std::sqrt(1.4 * p / rho);
  EXPECT_NEAR(p / stagnation_pressure(p, c, rho, c), 0.5283, 5e-5);
  EXPECT_NEAR(p / stagnation_pressure(p, -2 * c, rho, c), 0.1278, 5e-5);
  EXPECT_DOUBLE_EQ(stagnation_pressure(p, 0, rho, c), p);
}

constexpr double rounding = 1e-12;  // relative: sums of some hundred terms in double precision

double sum(const Series& s) { return std::accumulate(s.begin(), s.end(), 0.0); }

TEST(PlaceFigures, MeanPeakAndValleyAreThoseOfASine) {
  std::vector<Moment> moments;
  for (int i = 0; i < 360; ++i) moments.push_back({2e5 + 5e4 * std::sin(2 * std::numbers::pi * i / 360), 0, 1000});
  const PlaceFigures f = place_figures(record_of(moments), area, burned);
  EXPECT_NEAR(f.pressure_mean, 2e5, 2e5 * rounding);
  EXPECT_NEAR(f.pressure_peak, 2.5e5, 2e5 * rounding);    // moment 90 stands on the crest
  EXPECT_NEAR(f.pressure_valley, 1.5e5, 2e5 * rounding);  // and 270 in the trough
  EXPECT_NEAR(f.stagnation_mean, f.pressure_mean, 2e5 * rounding);
}

TEST(PlaceFigures, NetBackFlowGivesTheTimeMean) {
  const PlaceFigures f = place_figures(record_of({{1e5, 10, 1000}, {1e5, -80, 500}}), area, burned);
  EXPECT_LT(f.mass_flow, 0);
  EXPECT_DOUBLE_EQ(f.temperature_flow_mean, 750);
}

// Fresh and burned gas in one flow; 1e-9 is the inverse's own error.
TEST(PlaceFigures, FlowTemperatureIsThatOfTheMixedGas) {
  PlaceRecord r = record_of({{3e5, 200, 1200}, {1e5, 80, 400}});
  r.Y[1] = 0.2;
  r.rho[1] = 1e5 / (gas_constant(burned, 0.2) * 400);
  const double a = r.rho[0] * 200, b = r.rho[1] * 80;
  const double h = (a * (enthalpy(burned, 1200, 1) + 2e4) + b * (enthalpy(burned, 400, 0.2) + 3200)) / (a + b);
  EXPECT_NEAR(enthalpy(burned, place_figures(r, area, burned).temperature_flow_mean, (a + 0.2 * b) / (a + b)), h,
              1e-9 * h);
}

TEST(ForwardEnergyFlow, OfSteadyFlowIsEnthalpyAbove298WithTheVelocityHead) {
  const PlaceRecord r = record_of({{1e5, 100, 900}, {1e5, 100, 900}});
  const double expected = r.rho[0] * 100 * area * (enthalpy(burned, 900, 1) - enthalpy(burned, 298, 1) + 5000);
  for (double flow : forward_energy_flow(r, area, burned)) EXPECT_NEAR(flow, expected, expected * rounding);
}

// A quarter of the time back, a quarter forward at twice the speed, half at rest: the first forward samples pay.
TEST(ForwardEnergyFlow, CountsOnlyWhatIsLeftWhenTheBackFlowIsPaid) {
  std::vector<Moment> moments(400, {1e5, 0, 900});
  for (std::size_t i = 0; i < 100; ++i) moments[i].u = -60, moments[100 + i].u = 120;
  const PlaceRecord r = record_of(moments);
  const Series flow = forward_energy_flow(r, area, burned);
  const double above = enthalpy(burned, 900, 1) - enthalpy(burned, 298, 1);
  const double back = r.rho[0] * 60 * area * (above + 1800), forth = r.rho[0] * 120 * area * (above + 7200);
  EXPECT_NEAR(sum(flow), 100 * (forth - back), 100 * forth * rounding);
  EXPECT_NEAR(flow[100], 0, forth * rounding);      // still paying
  EXPECT_NEAR(flow[199], forth, forth * rounding);  // all paid
  EXPECT_GE(*std::min_element(flow.begin(), flow.end()), 0);
}

TEST(OverlapPercent, OfAPulseWithOneThreeTimesAsStrongIsHalf) { EXPECT_DOUBLE_EQ(overlap_percent({1, 1}, {3, 3}), 50); }

}  // namespace
}  // namespace pulsewright
