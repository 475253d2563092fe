// Density and pressure stay positive, and nothing gets lost, from start states that no engine will ever see.

#include <gtest/gtest.h>

#include <cmath>
#include <memory>

#include "shared/error.hpp"
#include "solver/end_closed.hpp"
#include "solver/network.hpp"
#include "tests/solver/random_numbers.hpp"

namespace pulsewright {
namespace {

struct Roughness {
  int block;             // cells of one state
  double p_low, p_high;  // Pa
  double T_low, T_high;  // K
  double mach;           // up to this, either way
};

constexpr int cells = 80;
constexpr double R = 287, gamma = 1.4;

DuctSpec rough_duct(RandomNumbers& random, const Roughness& rough) {
  DuctSpec d = straight_duct("rough", 0.4, 0.04, cells, {});
  const double bore_area = d.face_area.front(), ratio = random.chance(0.5) ? random.spread(0.1, 10) : 1;
  for (std::size_t i = 0; i <= cells; ++i) d.face_area[i] = bore_area * std::pow(ratio, static_cast<double>(i) / cells);
  Primitive q{};
  for (std::size_t i = 0; i < cells; ++i) {
    d.cell_volume[i] = 0.5 * d.dx * (d.face_area[i] + d.face_area[i + 1]);
    if (i % static_cast<std::size_t>(rough.block) == 0) {
      const double T = random.spread(rough.T_low, rough.T_high), p = random.spread(rough.p_low, rough.p_high);
      q = {p / (R * T), random.between(-rough.mach, rough.mach) * std::sqrt(gamma * R * T), p, random.between(0, 1)};
    }
    d.initial[i] = q;
  }
  return d;
}

/// 400 steps in a closed duct. 1e-12: rounding of 400 sums of 80 cells.
void march(const Gas& gas, const DuctSpec& duct) {
  Network network(gas);
  network.add_duct(duct);
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::start}});
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  network.start();
  const Content before = network.held();
  for (int k = 0; k < 400; ++k) network.step(network.allowed_step());
  const Content change = network.held() - before;
  EXPECT_NEAR(change.mass / before.mass, 0, 1e-12);
  EXPECT_NEAR(change.energy / before.energy, 0, 1e-12);
  EXPECT_NEAR(change.burned / before.burned, 0, 1e-12);
  for (std::size_t i = 0; i < cells; ++i) {
    const Primitive q = network.cell(0, i);
    ASSERT_TRUE(q.rho > 0 && q.p > 0 && std::isfinite(q.u));
  }
}

void hold(const Roughness& rough, std::uint64_t seed) {
  RandomNumbers random(seed);
  const Gas gas = perfect_gas(gamma, R);
  for (int k = 0; k < 100; ++k) {
    const DuctSpec duct = rough_duct(random, rough);
    ASSERT_NO_THROW(march(gas, duct)) << "try " << k;
  }
}

TEST(Positivity, IsKeptWhereEveryCellDiffersFromTheNext) { hold({1, 2e4, 1e6, 300, 1800, 1}, 11); }

TEST(Positivity, IsKeptWhereEveryCellDiffersTenThousandfold) { hold({1, 1e3, 1e7, 200, 3000, 1}, 15); }

TEST(Positivity, IsKeptFromPressureRatiosOfTenThousandAtMachTwo) { hold({2, 1e3, 1e7, 200, 3000, 2}, 12); }

TEST(Positivity, IsKeptBetweenBlocksOfRandomGas) { hold({20, 1e3, 1e7, 200, 3000, 2}, 13); }

// Supersonic gas leaves the end cell thin: what stands behind it must not be taken for unsound gas.
TEST(Positivity, FastGasThatLeavesAClosedEndIsNoFault) { hold({80, 1e5, 1e5, 300, 300, 1.5}, 14); }

}  // namespace
}  // namespace pulsewright
