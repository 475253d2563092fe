#include "models/losses.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace pulsewright {
namespace {

constexpr double deg = std::numbers::pi / 180;
constexpr double rounding = 1e-12;

TEST(BendLoss, NoBendLosesNothing) { EXPECT_EQ(bend_loss(0, 1.3, 0.02), 0); }

TEST(BendLoss, ATighterASharperAndARougherBendLosesMore) {
  for (double r : {0.75, 1.0, 1.3, 2.0}) {
    EXPECT_GT(bend_loss(90 * deg, r, 0.02), bend_loss(90 * deg, r * 1.1, 0.02));
    EXPECT_GT(bend_loss(90 * deg, r, 0.02), bend_loss(60 * deg, r, 0.02));
    EXPECT_GT(bend_loss(90 * deg, r, 0.03), bend_loss(90 * deg, r, 0.02));
  }
}

TEST(BendLoss, FrictionAlongTheArcIsTheOnlyDifferenceToThePrintedFigure) {
  EXPECT_NEAR(bend_loss_with_friction(90 * deg, 2, 0.02) - bend_loss(90 * deg, 2, 0.02), 0.02 * 2 * 90 * deg, rounding);
}

TEST(DiffuserLoss, ASuddenWideningIsBordaCarnot) {
  for (double ratio : {0.1, 0.5, 0.9}) EXPECT_NEAR(diffuser_loss(90 * deg, ratio), (1 - ratio) * (1 - ratio), rounding);
}

TEST(DiffuserLoss, GrowsWithTheAngleWithoutAJump) {
  double last = 0;
  for (double half = 0; half <= 90; half += 0.25) {
    const double share = diffuser_share(half * deg);
    EXPECT_GE(share, last) << half;
    EXPECT_LT(share - last, 0.02) << half;  // steepest where it meets the sudden loss: 0.064 a degree
    last = share;
  }
  EXPECT_EQ(diffuser_share(0), 0);
  EXPECT_EQ(last, 1);
}

TEST(ContractionLoss, NarrowingLosesNothingUpToFifteenDegreesHalfAngle) {
  EXPECT_EQ(contraction_loss(0, 0.3), 0);
  EXPECT_EQ(contraction_loss(15 * deg, 0.3), 0);
  EXPECT_GT(contraction_loss(16 * deg, 0.3), 0);
  EXPECT_NEAR(contraction_loss(90 * deg, 0.3), 0.35, rounding);
}

TEST(TaperLosses, ATaperThatChangesNothingLosesNothing) {
  EXPECT_EQ(diffuser_loss(90 * deg, 1), 0);
  EXPECT_EQ(contraction_loss(90 * deg, 1), 0);
}

}  // namespace
}  // namespace pulsewright
