// Any valid rig runs: no failure, nothing negative, nothing that is not a number, nothing lost.

#include "tests/solver/random_rig.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

void all_states_are_sound(const Network& network) {
  for (int d = 0; d < network.ducts(); ++d)
    for (std::size_t i = 0; i < network.cells(d); ++i) {
      const Primitive q = network.cell(d, i);
      ASSERT_TRUE(q.rho > 0 && std::isfinite(q.rho) && q.p > 0 && std::isfinite(q.p) && std::isfinite(q.u))
          << network.name(d);
      ASSERT_TRUE(q.Y > -1e-9 && q.Y < 1 + 1e-9) << network.name(d) << " Y " << q.Y;  // 1e-9: rounding
    }
}

/// What is held and what has left, less what the walls gave.
Content balance(const Network& network) {
  Content sum = network.held() + network.left();
  sum.energy -= network.heat_taken();
  return sum;
}

/// 1e-11 of all that is or was in play: rounding of sums over 300 steps.
void keeps_its_balance(const Network& network, const Content& start) {
  const Content change = balance(network) - start, left = network.left();
  const double mass = start.mass + std::abs(left.mass);
  const double energy = start.energy + std::abs(left.energy) + std::abs(network.heat_taken());
  ASSERT_LE(std::abs(change.mass), 1e-11 * mass);
  ASSERT_LE(std::abs(change.energy), 1e-11 * energy);
  ASSERT_LE(std::abs(change.burned), 1e-11 * mass);
}

void run(RandomNumbers& random, const Gas& gas) {
  Network network = random_rig(random, gas);
  const Content start = balance(network);
  for (int k = 1; k <= 300; ++k) {
    network.step(network.allowed_step());
    if (k % 30 == 0) all_states_are_sound(network);
  }
  keeps_its_balance(network, start);
}

void run_many(const Gas& gas, int rigs, std::uint64_t seed) {
  for (int i = 0; i < rigs; ++i) {
    RandomNumbers random(seed + static_cast<std::uint64_t>(i));
    ASSERT_NO_FATAL_FAILURE(ASSERT_NO_THROW(run(random, gas))) << "rig " << i << " of seed " << seed;
  }
}

TEST(RandomRig, FourHundredRunWithoutFaultOnAPerfectGas) { run_many(perfect_gas(1.33, 287), 400, 1000); }

TEST(RandomRig, FourHundredRunWithoutFaultOnAirAndBurnedGas) {
  run_many(mixture_gas(known_fuels().front(), 1), 400, 2000);
}

}  // namespace
}  // namespace pulsewright
