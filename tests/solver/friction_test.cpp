#include "solver/friction.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

// Colebrook's implicit law, solved by repetition; what Haaland's explicit one stands for.
double colebrook(double reynolds, double rough) {
  double root = 0.15;  // of f
  for (int i = 0; i < 60; ++i) root = 1 / (-2 * std::log10(rough / 3.7 + 2.51 / (reynolds * root)));
  return root * root;
}

TEST(Friction, LaminarIsHagenPoiseuilleWhateverTheRoughness) {
  for (double re : {10.0, 500.0, 2300.0})
    for (double e : {0.0, 0.01}) EXPECT_DOUBLE_EQ(darcy_factor(re, e), 64 / re);
}

// Haaland promises 2 % of Colebrook between Re 4000 and 1e8.
TEST(Friction, TurbulentFollowsColebrookWithinTwoPercent) {
  for (double re = 4000; re < 1e7; re *= 1.3)
    for (double e : {0.0, 1e-4, 1e-3, 1e-2})
      EXPECT_NEAR(darcy_factor(re, e) / colebrook(re, e), 1, 0.02) << re << ' ' << e;
}

TEST(Friction, TheBlendHasNoJumpAndNoKink) {
  const double step = 1e-3;
  for (double re : {laminar_up_to, turbulent_from}) {
    const double before = darcy_factor(re, 1e-3) - darcy_factor(re - step, 1e-3);
    const double after = darcy_factor(re + step, 1e-3) - darcy_factor(re, 1e-3);
    EXPECT_NEAR(before, after, 1e-9) << re;  // second difference: curvature 2e-8 times step squared, and rounding
  }
}

TEST(Friction, RougherIsNeverLess) {
  for (double re : {4000.0, 1e5, 1e7}) {
    EXPECT_GT(darcy_factor(re, 1e-3), darcy_factor(re, 1e-4));
    EXPECT_GT(darcy_factor(re, 1e-4), darcy_factor(re, 0));
  }
}

// The bound that friction.hpp states.
TEST(Friction, TheQuickLogarithmIsExactToFourInABillion) {
  for (double x = 1e-12; x < 1e6; x *= 1.00137) EXPECT_NEAR(quick_log10(x), std::log10(x), 4e-9) << x;
  EXPECT_NEAR(quick_log10(1), 0, 1e-15);
}

TEST(Friction, TheQuickFactorIsTheFactor) {
  for (double re = 2000; re < 1e7; re *= 1.01)
    for (double e : {0.0, 7.5e-4, 0.02})
      EXPECT_NEAR(quick_darcy(re, roughness_term(e)) / darcy_factor(re, e), 1, 1e-8) << re << ' ' << e;
}

TEST(Nusselt, IsTheLaminarFigureInSlowGasAndThePowerLawAbove) {
  EXPECT_EQ(nusselt(0), 3.66);
  EXPECT_EQ(nusselt(100), 3.66);
  for (double re : {1e3, 1e5, 1e6}) EXPECT_NEAR(nusselt(re) / (0.07 * std::pow(re, 0.75)), 1, 1e-14) << re;  // rounding
}

}  // namespace
}  // namespace pulsewright
