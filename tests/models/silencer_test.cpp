#include "models/silencer.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "shared/error.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {
namespace {

// 1e-12: the flow put back into the area that was made from it.
TEST(Silencer, CostsItsDropAtItsFlow) {
  const Gas gas = perfect_gas(1.33, 287);
  const double area = silencer_area({0.15e5, 0.22, 950, 101325}, gas), p0 = 101325 + 0.15e5;
  EXPECT_NEAR(area * p0 / std::sqrt(287 * 950) * flow_function(101325 / p0, 1.33), 0.22, 1e-12);
}

// 5 %: the flow of an incompressible orifice, A sqrt(2 rho dp), lies that near at this drop.
TEST(Silencer, IsNearTheIncompressibleOrifice) {
  const Gas gas = perfect_gas(1.33, 287);
  const double area = silencer_area({0.15e5, 0.22, 950, 101325}, gas), rho = 101325 / (287 * 950.0);
  EXPECT_NEAR(area * std::sqrt(2 * rho * 0.15e5) / 0.22, 1, 0.05);
}

TEST(Silencer, NoDropIsNoRestriction) {
  const Gas gas = perfect_gas(1.33, 287);
  EXPECT_TRUE(std::isinf(silencer_area({0, 0.22, 950, 101325}, gas)));
  EXPECT_THROW(silencer_area({-1, 0.22, 950, 101325}, gas), Error);
  EXPECT_THROW(silencer_area({0.15e5, 0, 950, 101325}, gas), Error);
}

}  // namespace
}  // namespace pulsewright
