#include "models/turbine.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <random>
#include <vector>

#include "models/nozzle_pair.hpp"
#include "shared/error.hpp"
#include "solver/end_reservoir.hpp"
#include "solver/network.hpp"
#include "tests/solver/end_gas.hpp"

namespace pulsewright {
namespace {

const Gas exhaust = perfect_gas(1.33, 287);
constexpr double dt = 4e-6, throat = 6e-4, pipe = 3e-3;

TurbineSpec with_downpipe(int scrolls = 1) {
  TurbineSpec spec{"turbine", throat, scrolls * throat, 0.68};
  spec.outlet_port = scrolls;
  return spec;
}

TurbineSpec into_air(double exit_area) {
  TurbineSpec spec{"turbine", throat, throat, 0.68};
  spec.exit_area = exit_area;
  return spec;
}

// Scroll ends have the throat's area, as the volutes that lead to them.
std::vector<Port> ports_with(const std::vector<EndState>& scrolls, std::vector<EndState> outlet = {}) {
  std::vector<Port> ports;
  for (const EndState& s : scrolls) ports.push_back(port_with(s, throat));
  for (const EndState& s : outlet) ports.push_back(port_with(s, pipe));
  return ports;
}

EndState hot(double p, double w = 0, double T = 1100) { return gas_at(exhaust, p, T, w, 1); }

Content through(const std::vector<Port>& ports) {
  Content sum;
  for (const Port& port : ports) sum += content_through(port, dt);
  return sum;
}

void run(Turbine& turbine, std::vector<Port>& ports, int steps = 5) {
  for (int i = 0; i < steps; ++i) turbine.advance(ports, {i * dt, dt, exhaust});
}

// 1e-6: the solution leaves 1e-7 of the flow to the next step.
TEST(Turbine, PassesTheFlowOfItsTwoNozzles) {
  for (double p : {1.02e5, 1.2e5, 2e5, 4e5})
    for (double w : {0.0, 150.0}) {
      Turbine turbine(with_downpipe(), exhaust);
      auto ports = ports_with({hot(p, w)}, {hot(1e5, 0, 900)});
      run(turbine, ports);
      const TurbineReading& r = turbine.reading();
      const TotalState& in = r.scrolls[0].inlet;
      const PairFlow pair = pair_flow(r.outlet_pressure / in.p, 1, 1.33);
      EXPECT_NEAR(r.flow / (throat * in.p / std::sqrt(287 * in.T) * pair.flow), 1, 1e-6) << p;
      EXPECT_NEAR(r.middle_pressure / in.p, pair.middle, 1e-6);
    }
}

// 1e-6 as above; the total state is constant through throats and rotor, so the work is all that the gas has lost.
TEST(Turbine, OutletEnthalpyIsTheInletsLessTheWork) {
  Turbine turbine(with_downpipe(), exhaust);
  turbine.set_tip_speed(350);
  auto ports = ports_with({hot(2.2e5, 100)}, {hot(1.1e5, 0, 900)});
  run(turbine, ports, 30);
  const TurbineReading& r = turbine.reading();
  const double in = ports[0].flux.energy / ports[0].flux.mass, out = ports[1].flux.energy / ports[1].flux.mass;
  EXPECT_GT(r.power_shaft, 0);
  EXPECT_NEAR((in - out) / (r.power_shaft / r.flow), 1, 1e-6);
  EXPECT_NEAR(r.power_shaft / (r.efficiency * r.power_available), 1, 1e-6);
  EXPECT_NEAR(out / in, 1 - r.efficiency * (1 - std::pow(r.outlet_pressure / r.scrolls[0].inlet.p, 0.33 / 1.33)), 1e-6);
}

TEST(Turbine, TakesNoWorkAtRestOrBackward) {
  Turbine turbine(with_downpipe(), exhaust);
  auto still = ports_with({hot(2e5)}, {hot(1e5)});
  run(turbine, still);
  EXPECT_EQ(turbine.reading().power_shaft, 0);  // the wheel stands
  EXPECT_GT(turbine.reading().power_available, 0);
  turbine.set_tip_speed(350);
  auto backward = ports_with({hot(1e5)}, {hot(1.6e5)});
  run(turbine, backward);
  EXPECT_LT(turbine.reading().flow, 0);
  EXPECT_EQ(turbine.reading().power_shaft, 0);
  EXPECT_EQ(turbine.reading().power_available, 0);
}

TEST(Turbine, MovesNothingBetweenEqualPressures) {
  Turbine turbine(with_downpipe(2), exhaust);
  auto ports = ports_with({hot(1.3e5), hot(1.3e5)}, {hot(1.3e5, 0, 700)});
  run(turbine, ports);
  // The flow left open by the tolerance, 1e-9 of the choked one, is all there may be.
  EXPECT_NEAR(turbine.reading().flow, 0, 1e-9 * 2 * throat * 1.3e5 / std::sqrt(287 * 1100.0));
}

TEST(Turbine, AQuietScrollRunsBackward) {
  Turbine turbine(with_downpipe(2), exhaust);
  auto ports = ports_with({hot(3e5), hot(1.05e5)}, {hot(1e5)});
  run(turbine, ports);
  EXPECT_GT(turbine.reading().scrolls[0].flow, 0);
  EXPECT_LT(turbine.reading().scrolls[1].flow, 0);
}

TEST(Turbine, TwoAlikeScrollsAreOneOfTwiceTheArea) {
  TurbineSpec one = with_downpipe();
  one.scroll_throat = 2 * throat, one.rotor = 2 * throat;
  Turbine divided(with_downpipe(2), exhaust), plain(one, exhaust);
  for (Turbine* t : {&divided, &plain}) t->set_tip_speed(300);
  auto two = ports_with({hot(2e5), hot(2e5)}, {hot(1e5)});
  std::vector<Port> single = {port_with(hot(2e5), 2 * throat), port_with(hot(1e5), pipe)};
  run(divided, two, 10), run(plain, single, 10);
  EXPECT_NEAR(divided.reading().flow / plain.reading().flow, 1, 1e-6);  // the solution's tolerance
  EXPECT_NEAR(divided.reading().power_shaft / plain.reading().power_shaft, 1, 1e-6);
}

TEST(Turbine, TheTongueLeaksTowardTheQuietScrollOnly) {
  TurbineSpec leaky = with_downpipe(2);
  leaky.tongue_leak = 0.06;
  Turbine turbine(leaky, exhaust), tight(with_downpipe(2), exhaust);
  auto a = ports_with({hot(1.05e5), hot(3e5)}, {hot(1e5)}), b = a;
  run(turbine, a, 1), run(tight, b, 1);
  const double leak = throat * (a[1].flux.mass - b[1].flux.mass);
  EXPECT_GT(leak, 0);
  EXPECT_NEAR(throat * (b[0].flux.mass - a[0].flux.mass) / leak, 1, 1e-12);
  EXPECT_NEAR((b[0].flux.energy - a[0].flux.energy) / (a[1].flux.energy - b[1].flux.energy), 1, 1e-12);
  const EndState& f = b[1].face;
  EXPECT_LT(leak, 0.06 * throat * f.p / std::sqrt(287 * f.T) * flow_function(0, 1.33));  // never more than choked
}

TEST(Turbine, WithoutADownpipeTheRestrictionStandsBehindTheWheel) {
  Turbine turbine(into_air(9e-4), exhaust);
  auto ports = ports_with({hot(2.5e5)});
  run(turbine, ports);
  const TurbineReading& r = turbine.reading();
  EXPECT_GT(r.outlet_pressure, 101325);
  const double through_exit = 9e-4 * r.outlet_pressure / std::sqrt(287 * r.scrolls[0].inlet.T) *
                              flow_function(101325 / r.outlet_pressure, 1.33);
  EXPECT_NEAR(r.flow / through_exit, 1, 1e-6);  // the solution's tolerance
  Turbine open(into_air(1), exhaust);
  auto same = ports_with({hot(2.5e5)});
  run(open, same);
  EXPECT_NEAR(open.reading().outlet_pressure / 101325, 1, 1e-4);  // an exit of 1700 rotors costs nothing
}

TEST(Turbine, AirComesBackInWhereTheScrollDrawsIt) {
  Turbine turbine(into_air(9e-4), exhaust);
  auto ports = ports_with({hot(0.6e5)});
  run(turbine, ports);
  EXPECT_LT(turbine.reading().flow, 0);
  EXPECT_LT(turbine.left().mass, 0);
  EXPECT_NEAR(ports[0].flux.energy / ports[0].flux.mass / enthalpy(exhaust, 293, 0), 1, 1e-6);
}

// What comes in leaves or is held: only rounding may be lost, in units of all that ever crossed.
void expect_kept(Turbine& turbine, std::vector<Port>& ports, const Gas& gas, const std::function<EndState()>& any) {
  Content entered;
  double crossed = 0;
  for (int i = 0; i < 200; ++i) {
    for (Port& port : ports) port.state = any();
    turbine.set_tip_speed(i % 3 == 0 ? 0 : 400);
    turbine.advance(ports, {i * dt, dt, gas});
    entered += through(ports);
    for (const Port& port : ports) crossed += dt * port.area * std::abs(port.flux.energy);
    for (const Port& port : ports) ASSERT_TRUE(std::isfinite(port.flux.momentum) && port.face.p > 0 && port.face.T > 0);
  }
  const Content kept = turbine.left() + turbine.held() - entered;
  EXPECT_NEAR(kept.energy, 0, 1e-12 * crossed);
  EXPECT_NEAR(kept.mass, 0, 1e-12 * crossed / 1e5);
  EXPECT_NEAR(kept.burned, 0, 1e-12 * crossed / 1e5);
  EXPECT_LT(std::abs(turbine.held().energy), 1e-4 * crossed / 200);
}

void expect_kept_in_any_state(const Gas& gas) {
  std::mt19937 random(11);
  const auto between = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  const auto any = [&] {
    const double T = between(400, 1600), Y = between(0, 1);
    return gas_at(gas, std::pow(10, between(4.5, 6)), T, sound_speed(gas, T, Y) * between(-0.9, 0.9), Y);
  };
  for (int i = 0; i < 60 && !testing::Test::HasFatalFailure(); ++i) {
    const int scrolls = 1 + i % 2;
    TurbineSpec spec = i % 3 == 2 ? into_air(1e-3) : with_downpipe(scrolls);
    spec.tongue_leak = 0.06;
    Turbine turbine(spec, gas);
    std::vector<EndState> in(static_cast<std::size_t>(scrolls)), out(i % 3 == 2 ? 0 : 1);
    std::vector<Port> ports = ports_with(in, out);
    expect_kept(turbine, ports, gas, any);
  }
}

TEST(Turbine, KeepsMassEnergyAndBurnedMassInAnyState) { expect_kept_in_any_state(exhaust); }

TEST(Turbine, KeepsThemInBurnedGasToo) { expect_kept_in_any_state(mixture_gas(*find_fuel("petrol"), 0.85)); }

// Supply, two scrolls fed by unequal pipes, turbine, downpipe, air: what is lost is rounding; in the end the flow is
// steady, and what the gas loses is the work (1e-4: the last echoes in the pipes).
TEST(Turbine, InANetworkKeepsMassAndEnergyAndSettlesToItsNozzles) {
  Network network(exhaust);
  const double rho = 1e5 / (287 * 900.0);
  for (int i = 0; i < 2; ++i)
    network.add_duct(
        straight_duct("scroll", 0.2 + 0.1 * i, std::sqrt(4 * throat / std::numbers::pi), 20, {rho, 0, 1e5, 1}));
  network.add_duct(straight_duct("downpipe", 0.5, 0.06, 50, {rho, 0, 1e5, 1}));
  for (int i = 0; i < 2; ++i) network.attach(supply_end(make_reservoir(exhaust, 2.2e5, 1150, 1)), {{i, Side::start}});
  TurbineSpec spec = with_downpipe(2);
  spec.tongue_leak = 0.06;
  Turbine& turbine = network.attach(std::make_unique<Turbine>(spec, exhaust),
                                    {{0, Side::finish}, {1, Side::finish}, {2, Side::start}});
  turbine.set_tip_speed(350);
  network.attach(open_end(make_reservoir(exhaust, 1e5, 293, 0)), {{2, Side::finish}});
  network.start();
  const Content before = network.held();
  network.run_until(0.06);
  const Content lost = before - network.held() - network.left();
  EXPECT_NEAR(lost.mass / before.mass, 0, 1e-10);  // rounding of some 30 ducts full that passed
  EXPECT_NEAR(lost.energy / before.energy, 0, 1e-10);
  const TurbineReading& r = turbine.reading();
  const PairFlow pair = pair_flow(r.outlet_pressure / 2.2e5, 1, 1.33);
  EXPECT_NEAR(r.flow / (2 * throat * 2.2e5 / std::sqrt(287 * 1150.0) * pair.flow), 1, 1e-4);
  EXPECT_NEAR(r.power_shaft / (r.efficiency * r.power_available), 1, 1e-4);
}

TEST(Turbine, RefusesAreasThatAreNone) {
  TurbineSpec spec = with_downpipe();
  spec.rotor = 0;
  EXPECT_THROW(Turbine(spec, exhaust), Error);
}

}  // namespace
}  // namespace pulsewright
