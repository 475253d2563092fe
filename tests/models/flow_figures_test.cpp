// Figures of one place over a cycle, from records written by hand.

#include "models/flow_figures.hpp"

#include <gtest/gtest.h>

#include <cmath>

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
  for (const auto& moments : {std::vector<Moment>{{1e5, -100, 1000}, {1e5, 100, 1000}}, {{1e5, 100, 1000}, {1e5, -100, 1000}}})
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

}  // namespace
}  // namespace pulsewright
