#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "solver/end_closed.hpp"
#include "solver/friction.hpp"
#include "solver/fuel.hpp"
#include "solver/network.hpp"
#include "solver/sweep.hpp"

namespace pulsewright {
namespace {

constexpr double bore = 0.04, rough = 3e-5;

// Cells from -300 to 300 m/s, hot burned gas; losses differ by direction.
Arena moving_arena() {
  Arena a;
  a.resize(601);
  for (std::size_t i = 0; i < a.size(); ++i) {
    a.rho[i] = 0.8;
    a.u[i] = static_cast<double>(i) - 300;
    a.T[i] = 900;
    a.Y[i] = 1;
    a.hydraulic_diameter[i] = bore;
    a.roughness_term[i] = roughness_term(rough / bore);
    a.loss_forward[i] = 2;
    a.loss_backward[i] = 3;
  }
  return a;
}

double reynolds(const Arena& a, const Gas& gas, std::size_t i) {
  return a.rho[i] * std::abs(a.u[i]) * bore / viscosity(gas, a.T[i], a.Y[i]);
}

class SourcesOfEveryBuild : public testing::TestWithParam<const Sweep*> {};
INSTANTIATE_TEST_SUITE_P(Builds, SourcesOfEveryBuild,
                         testing::ValuesIn(available_sweeps().begin(), available_sweeps().end()),
                         [](const auto& about) { return about.param->name; });

TEST_P(SourcesOfEveryBuild, AreTheScalarLawsInEveryCell) {
  const Gas gas = mixture_gas(*find_fuel("petrol"), 1);
  Arena a = moving_arena();
  GetParam()->sources(a, gas, {true, 0, true, 1.3});
  for (std::size_t i = 0; i < a.size(); ++i) {
    const double re = reynolds(a, gas, i), factor = darcy_factor(std::max(re, 2000.0), rough / bore);
    const double local = a.u[i] > 0 ? 2 : 3;
    EXPECT_NEAR(a.loss[i] / (factor / bore + local), 1, 1e-8) << a.u[i];  // the quick logarithm's bound
    const double exchange = 1.3 * 4 * nusselt(re) * conductivity(gas, a.T[i], a.Y[i]) / (bore * bore);
    EXPECT_NEAR(a.heat_exchange[i] / exchange, 1, 1e-12) << a.u[i];  // rounding
  }
}

TEST_P(SourcesOfEveryBuild, ConstantFrictionAndNoneAreWhatTheySay) {
  const Gas gas = perfect_gas(1.4, 287);
  Arena a = moving_arena();
  GetParam()->sources(a, gas, {false, 0.02, false, 0});
  for (double loss : a.loss) EXPECT_DOUBLE_EQ(loss, 0.02 / bore);
  for (double exchange : a.heat_exchange) EXPECT_EQ(exchange, 0);
  GetParam()->sources(a, gas, {false, 0, false, 0});
  for (double loss : a.loss) EXPECT_EQ(loss, 0);
}

// Fastest gas behind a 3 : 1 shock that has run 0.3 m down a tube at rest.
double fastest_behind_shock(const NetworkOptions& options) {
  Network network(perfect_gas(1.4, 287), options);
  DuctSpec duct = straight_duct("d", 0.6, bore, 120, {1e5 / (287 * 300), 0, 1e5, 0});
  duct.roughness.assign(120, rough);
  for (std::size_t i = 0; i < 40; ++i) duct.initial[i] = {3e5 / (287 * 300), 0, 3e5, 0};
  network.add_duct(duct);
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::start}});
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  network.start();
  network.run_until(0.6e-3);
  double fastest = 0;
  for (std::size_t i = 0; i < 120; ++i) fastest = std::max(fastest, network.cell(0, i).u);
  return fastest;
}

// The factor is some steps old where a front runs into gas at rest: it must not be that of creeping gas. Over this path
// a rough wall takes 1 % of the speed; a quarter of that is the difference between 0.02 and the true factor of
// turbulent flow.
TEST(Sources, AFrontThatRunsIntoGasAtRestMeetsTheFrictionOfMovingGas) {
  NetworkOptions rough_wall, constant;
  rough_wall.friction = NetworkOptions::Friction::rough_wall;
  constant.friction = NetworkOptions::Friction::constant;
  constant.darcy_factor = 0.02;
  EXPECT_NEAR(fastest_behind_shock(rough_wall) / fastest_behind_shock(constant), 1, 0.0025);
}

// A closed hot-walled duct: the gas takes the walls' temperature, and what it gained is what the walls gave.
TEST(WallHeat, AGasAtRestWarmsToItsWallsAndTheHeatIsAccountedFor) {
  NetworkOptions options;
  options.wall_heat = true;
  options.friction = NetworkOptions::Friction::rough_wall;
  Network network(perfect_gas(1.4, 287), options);
  DuctSpec duct = straight_duct("d", 0.2, 0.01, 20, {1e5 / (287 * 300), 0, 1e5, 0});
  duct.wall_temperature.assign(20, 600);
  network.add_duct(duct);
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::start}});
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  network.start();
  const double energy = network.held().energy;
  network.run_until(0.5);
  // rho cv D^2/(4 Nu k) = 0.16 s at the start: after 0.5 s some e^-4 of the difference is left
  EXPECT_NEAR(network.arena().T[network.first(0) + 10], 600, 30);
  EXPECT_GT(network.arena().T[network.first(0) + 10], 550);
  EXPECT_NEAR((network.held().energy - network.heat_taken()) / energy, 1, 1e-11);  // rounding of 1e5 steps
}

}  // namespace
}  // namespace pulsewright
