#include "shared/cam_angle.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double rounding = 1e-12;

TEST(CamAngle, ReadsTheWordsOfACamCard) {
  const CamAngle opens = parse_cam_angle("54 deg before bdc", "opens");
  EXPECT_NEAR(opens.after, -54 * degree, rounding);
  EXPECT_EQ(opens.dead, DeadCentre::bottom);
  EXPECT_FALSE(opens.centre);
  const CamAngle closes = parse_cam_angle("18 deg after tdc", "closes");
  EXPECT_NEAR(closes.after, 18 * degree, rounding);
  EXPECT_EQ(closes.dead, DeadCentre::top);
}

TEST(CamAngle, ReadsALobeCentre) {
  const CamAngle lobe = parse_cam_angle("centre 108 deg after tdc", "centre");
  EXPECT_TRUE(lobe.centre);
  EXPECT_NEAR(lobe.after, 108 * degree, rounding);
}

TEST(CamAngle, TakesShortFormsAndAnyCase) {
  EXPECT_NEAR(parse_cam_angle("54 DEG BBDC", "opens").after, -54 * degree, rounding);
  EXPECT_NEAR(parse_cam_angle("50 deg  ABDC", "closes").after, 50 * degree, rounding);
  EXPECT_NEAR(parse_cam_angle("-3 deg before TDC", "opens").after, 3 * degree, rounding);
}

TEST(CamAngle, RefusesWhatIsNotOnACard) {
  for (const char* text : {"54 deg", "bdc", "before bdc", "54 before bdc", "54 mm before bdc", "54 deg at bdc",
                           "540 deg after tdc", "", "centre after tdc", "nan deg after tdc", "54 deg before bdc tdc"})
    EXPECT_THROW(parse_cam_angle(text, "opens"), Error) << text;
}

}  // namespace
}  // namespace pulsewright
