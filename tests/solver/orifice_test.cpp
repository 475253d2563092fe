#include "solver/orifice.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "solver/wave.hpp"
#include "tests/solver/end_gas.hpp"

namespace pulsewright {
namespace {

const Gas exhaust = perfect_gas(1.33, 287);
constexpr double bore_area = 1e-3;

double mass_flow(const Reservoir& r, double share, const EndState& state, Port* out = nullptr) {
  Port port = port_with(state, bore_area);
  const double flow = flow_through_orifice(r, share * bore_area, exhaust, port);
  if (out) *out = port;
  return flow;
}

// 1e-6: the same closed form, with the throat pressure that the solution found; what is left is its speed tolerance.
TEST(Orifice, InflowIsTheFlowFunctionAtTheDuctsPressure) {
  for (double p0 : {1.001e5, 1.05e5, 1.4e5, 3e5}) {
    const Reservoir r = make_reservoir(exhaust, p0, 1200, 0);
    Port port;
    const double flow = mass_flow(r, 0.2, gas_at(exhaust, 1e5, 900, 0), &port);
    const double expected = 0.2 * bore_area * p0 / std::sqrt(r.R * r.T) * flow_function(port.face.p / p0, 1.33);
    EXPECT_NEAR(-flow / expected, 1, 1e-6) << p0;
  }
}

// 1e-6 as above: here the duct's total state is upstream.
TEST(Orifice, OutflowIsTheFlowFunctionFromTheDuctsTotalState) {
  for (double p : {1.001e5, 1.05e5, 1.4e5, 3e5}) {
    const Reservoir r = make_reservoir(exhaust, 1e5, 300, 0);
    Port port;
    const double flow = mass_flow(r, 0.3, gas_at(exhaust, p, 900, 20), &port);
    const EndState& f = port.face;
    const double mach2 = f.w * f.w / (f.c * f.c), ratio = 1 + 0.33 / 2 * mach2;
    const double p_total = f.p * std::pow(ratio, 1.33 / 0.33);
    const double expected =
        0.3 * bore_area * p_total / std::sqrt(287 * f.T * ratio) * flow_function(1e5 / p_total, 1.33);
    EXPECT_NEAR(flow / expected, 1, 1e-6) << p;
  }
}

// 1e-12: one total enthalpy written twice.
TEST(Orifice, JetEntersWithTheReservoirsTotalEnthalpy) {
  const Reservoir r = make_reservoir(exhaust, 6e5, 1700, 0.7);
  Port port;
  mass_flow(r, 0.33, gas_at(exhaust, 2e5, 1100, 0), &port);
  EXPECT_NEAR(port.flux.energy / port.flux.mass / r.h, 1, 1e-12);
  EXPECT_NEAR((enthalpy(exhaust, port.face.T, 0.7) + port.face.w * port.face.w / 2) / r.h, 1, 1e-12);
  EXPECT_NEAR(port.flux.burned / port.flux.mass, 0.7, 1e-12);
  EXPECT_NEAR(port.face.rho * port.face.w / port.flux.mass, 1, 1e-12);
}

// 1e-6 as above.
TEST(Orifice, WholeBoreInflowIsIsentropic) {
  const Reservoir r = make_reservoir(exhaust, 1.3e5, 400, 0);
  Port port;
  mass_flow(r, 1, gas_at(exhaust, 1e5, 900, 0), &port);
  EXPECT_NEAR(port.face.T / (400 * std::pow(port.face.p / 1.3e5, 0.33 / 1.33)), 1, 1e-6);
}

TEST(Orifice, WholeBoreOutflowMeetsTheReservoirsPressure) {
  Port port;
  mass_flow(make_reservoir(exhaust, 1e5, 300, 0), 1, gas_at(exhaust, 1.3e5, 900, 50), &port);
  EXPECT_NEAR(port.face.p / 1e5, 1, 1e-12);
}

TEST(Orifice, WholeBoreOutflowIsSonicWhereThePressureCannotBeMet) {
  Port port;
  mass_flow(make_reservoir(exhaust, 1e4, 300, 0), 1, gas_at(exhaust, 3e5, 900, 50), &port);
  EXPECT_NEAR(port.face.w / port.face.c, 1, 1e-12);
}

// 1e-9: the mass of the choked jet, whose pressure in the mouth is the critical one.
TEST(Orifice, WholeBoreInflowIsSonicIntoADuctThatRecedes) {
  Port port;
  const Reservoir r = make_reservoir(exhaust, 3e5, 900, 0);
  mass_flow(r, 1, gas_at(exhaust, 0.2e5, 900, -300), &port);
  EXPECT_NEAR(-port.face.w / port.face.c, 1, 1e-9);
  EXPECT_NEAR(port.face.p / (3e5 * critical_pressure_ratio(1.33)), 1, 1e-9);
}

TEST(Orifice, AnswersTheSameFromAnyLastFace) {
  const Reservoir r = make_reservoir(exhaust, 1.6e5, 900, 0);
  for (double p : {0.4e5, 1.5e5, 1.7e5, 6e5}) {
    Port cold = port_with(gas_at(exhaust, p, 700, 0), bore_area), warm = cold;
    flow_through_orifice(r, 0.4e-3, exhaust, cold);
    for (double last : {-900.0, -1e-200, 1e-9, 3.0, 400.0, 5000.0}) {
      warm.face.w = last;
      flow_through_orifice(r, 0.4e-3, exhaust, warm);
      EXPECT_NEAR(warm.flux.mass / cold.flux.mass, 1, 1e-6) << p << ' ' << last;
    }
  }
}

// A/A* of Mach 0.5 at gamma 1.33 from its closed form; 1e-6 as above.
TEST(Orifice, ChokedOutflowSetsTheMachNumberOfTheAreaRatio) {
  const double mach = 0.5, g = 1.33;
  const double area_ratio = std::pow(2 / (g + 1) * (1 + (g - 1) / 2 * mach * mach), (g + 1) / (2 * (g - 1))) / mach;
  Port port;
  mass_flow(make_reservoir(exhaust, 1e5, 300, 0), 1 / area_ratio, gas_at(exhaust, 5e5, 900, 0), &port);
  EXPECT_NEAR(port.face.w / port.face.c, mach, 1e-6);
}

TEST(Orifice, NoAreaIsAClosedEnd) {
  for (double share : {0.0, -1.0, 1e-15}) {
    Port port, shut = port_with(gas_at(exhaust, 1.2e5, 900, 70), bore_area);
    EXPECT_EQ(mass_flow(make_reservoir(exhaust, 4e5, 1500, 0), share, shut.state, &port), 0);
    close_port(shut);
    EXPECT_EQ(port.flux.momentum, shut.flux.momentum);
    EXPECT_EQ(port.flux.energy, 0);
  }
}

TEST(Orifice, AnAreaBeyondTheDuctsIsThatOfTheDuct) {
  const Reservoir r = make_reservoir(exhaust, 2e5, 900, 0);
  const EndState d = gas_at(exhaust, 1e5, 900, 0);
  EXPECT_EQ(mass_flow(r, 1, d), mass_flow(r, 7, d));
}

// Near equal pressures the wave carries the flow: it is -dp A/c on both sides of zero, whatever the orifice. 1 %: the
// share that the orifice takes at a millionth of the pressure; without the wave the flow would go with the root of dp.
TEST(Orifice, FlowPassesThroughEqualPressuresInAStraightLine) {
  const EndState d = gas_at(exhaust, 1e5, 900, 0);
  for (double dp : {1e-6, 1e-4, 1e-2, 0.1})
    for (double sign : {-1.0, 1.0}) {
      const double flow = mass_flow(make_reservoir(exhaust, 1e5 + sign * dp, 900, 0), 0.5, d);
      EXPECT_NEAR(flow / (-sign * dp * bore_area / d.c), 1, 0.01) << dp;
    }
}

TEST(Orifice, AtRestNothingMoves) {
  for (double share : {0.01, 0.5, 1.0})
    EXPECT_EQ(mass_flow(make_reservoir(exhaust, 1.37e5, 640, 0), share, gas_at(exhaust, 1.37e5, 900, 0)), 0);
}

TEST(Orifice, AWiderOneNeverPassesLess) {
  for (double p : {0.2e5, 0.8e5, 0.99e5, 1.01e5, 1.5e5, 4e5})
    for (double w : {-200.0, 0.0, 300.0}) {
      double before = 0;
      for (double share = 0.02; share < 1.01; share += 0.02) {
        const double flow =
            std::abs(mass_flow(make_reservoir(exhaust, 1e5, 700, 0), share, gas_at(exhaust, p, 900, w)));
        EXPECT_GE(flow, before * (1 - 1e-7)) << p << ' ' << w << ' ' << share;
        before = flow;
      }
    }
}

TEST(Orifice, SupersonicGasPassesUntouchedWhereTheOrificeCanSwallowIt) {
  const EndState d = gas_at(exhaust, 1e5, 700, 900);
  Port port;
  mass_flow(make_reservoir(exhaust, 1e5, 300, 0), 0.97, d, &port);
  EXPECT_EQ(port.face.p, d.p);
  mass_flow(make_reservoir(exhaust, 1e5, 300, 0), 0.5, d, &port);
  EXPECT_LT(port.face.w, port.face.c);  // too small for it: a shock runs back into the duct
}

// Mass flow per area cannot exceed the choked flow of the true upstream total state. 1e-6: the solution's tolerance.
void expect_physical(const Reservoir& r, double share, const EndState& d) {
  Port port;
  const double flow = mass_flow(r, share, d, &port);
  const EndState& f = port.face;
  ASSERT_TRUE(std::isfinite(flow) && std::isfinite(port.flux.momentum) && std::isfinite(port.flux.energy));
  ASSERT_TRUE(f.p > 0 && f.rho > 0 && f.T > 0 && std::isfinite(f.p + f.rho + f.T));
  const double choked = flow_function(0, 1.33);
  if (flow < 0) {
    EXPECT_LE(-flow, share * bore_area * r.p / std::sqrt(287 * r.T) * choked * (1 + 1e-6));
  } else if (d.w < d.c && f.w > 0) {
    const double ratio = 1 + 0.33 / 2 * f.w * f.w / (f.c * f.c);
    const double p_total = f.p * std::pow(ratio, 1.33 / 0.33);
    EXPECT_LE(flow, share * bore_area * p_total / std::sqrt(287 * f.T * ratio) * choked * (1 + 1e-6));
    EXPECT_GE(p_total, r.p * (1 - 1e-6));
  }
}

TEST(Orifice, AnyStateIsAnsweredFinitelyAndWithinTheChokedFlow) {
  std::mt19937 random(7);
  const auto between = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  for (int i = 0; i < 20000 && !HasFatalFailure(); ++i) {
    const double T = between(200, 2500), c = std::sqrt(1.33 * 287 * T);
    const EndState d = gas_at(exhaust, std::pow(10, between(2, 7)), T, c * between(-2.5, 2.5));
    const double share = i % 10 == 0 ? 1 : std::pow(10, between(-8, 0));
    expect_physical(make_reservoir(exhaust, std::pow(10, between(2, 7.3)), between(200, 3000), 0.5), share, d);
  }
}

// The choked flow of a gas whose heat ratio changes on the way: the largest mass flow density along the isentrope.
double choked_flow_along_the_isentrope(const Gas& gas, const Reservoir& r) {
  double largest = 0;
  for (double ratio = 0.65; ratio > 0.45; ratio -= 1e-3) {
    const double T = isentropic_temperature(gas, r.T, r.Y, ratio);
    largest = std::max(largest, ratio * r.p / (r.R * T) * std::sqrt(2 * (r.h - enthalpy(gas, T, r.Y))));
  }
  return largest;
}

// 0.2 %: the throat's heat ratio is taken at the total temperature, 0.18 % of the flow at 900 K.
TEST(Orifice, PassesBurnedGasWithinAFifthOfAPercentOfItsIsentrope) {
  const Gas gas = mixture_gas(*find_fuel("petrol"), 0.85);
  for (double T : {900.0, 1300.0, 1700.0, 2200.0}) {
    const Reservoir r = make_reservoir(gas, 5e5, T, 1);
    Port port = port_with(gas_at(gas, 1e5, 900, 0, 1), bore_area);
    const double flow = -flow_through_orifice(r, 0.2 * bore_area, gas, port);
    EXPECT_NEAR(flow / (0.2 * bore_area * choked_flow_along_the_isentrope(gas, r)), 1, 0.002) << T;
    EXPECT_NEAR(port.flux.energy / port.flux.mass / r.h, 1, 1e-12);
  }
}

TEST(Orifice, AnyStateOfBurnedGasIsAnsweredFinitely) {
  const Gas gas = mixture_gas(*find_fuel("petrol"), 0.85);
  std::mt19937 random(5);
  const auto between = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  for (int i = 0; i < 5000; ++i) {
    const double T = between(250, 2500), Y = between(0, 1);
    Port port =
        port_with(gas_at(gas, std::pow(10, between(3, 7)), T, between(-2, 2) * sound_speed(gas, T, Y), Y), bore_area);
    const Reservoir r = make_reservoir(gas, std::pow(10, between(3, 7.3)), between(250, 2800), between(0, 1));
    flow_through_orifice(r, std::pow(10, between(-6, 0)) * bore_area, gas, port);
    ASSERT_TRUE(std::isfinite(port.flux.mass + port.flux.momentum + port.flux.energy)) << i;
    ASSERT_TRUE(port.face.p > 0 && port.face.rho > 0 && port.face.T > 0) << i;
  }
}

}  // namespace
}  // namespace pulsewright
