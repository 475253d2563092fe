#include "models/duct_drawing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>

#include "models/losses.hpp"
#include "shared/error.hpp"
#include "solver/friction.hpp"

namespace pulsewright {
namespace {

constexpr double pi = std::numbers::pi, deg = pi / 180;
constexpr double rounding = 1e-12;  // relative; sums of some hundred terms

DuctSection cone(double length, double bore_from, double bore_to) {
  DuctSection s = straight_section(length, round_section(bore_from), 3e-5, 900);
  s.finish = round_section(bore_to);
  return s;
}

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

// Total-pressure loss of slow flow over the head at the area: the sum over cells of K per metre on each cell's own
// head.
double loss_on(double area, const DuctSpec& spec, const std::vector<double>& per_metre) {
  double k = 0;
  for (std::size_t i = 0; i < spec.cells(); ++i) {
    const double here = spec.cell_volume[i] / spec.dx;
    k += per_metre[i] * spec.dx * (area / here) * (area / here);
  }
  return k;
}

TEST(CutDuct, EveryLengthIsMetExactlyWithCellsNearTheOneAskedFor) {
  for (double length : {0.004, 0.0124, 0.31, 1.2345}) {
    const DuctSpec spec = cut_duct("d", {{straight_section(length, round_section(0.04), 0, 300)}}, 0.005);
    EXPECT_NEAR(spec.length() / length, 1, rounding);
    EXPECT_EQ(spec.cells(), std::max<std::size_t>(2, static_cast<std::size_t>(std::lround(length / 0.005))));
    EXPECT_EQ(spec.face_area.size(), spec.cells() + 1);
  }
}

TEST(CutDuct, AStraightDuctIsTheSameInEveryCellToTheLastBit) {
  const DuctSpec spec = cut_duct("d",
                                 {{straight_section(0.1, round_section(0.04), 3e-5, 900),
                                   straight_section(0.213, round_section(0.04), 3e-5, 900)}},
                                 0.005);
  for (double area : spec.face_area) EXPECT_EQ(area, spec.face_area[0]);
  for (std::size_t i = 0; i < spec.cells(); ++i) {
    EXPECT_NEAR(spec.cell_volume[i] / (spec.face_area[0] * spec.dx), 1, rounding);
    EXPECT_NEAR(spec.hydraulic_diameter[i], 0.04, 0.04 * rounding);
    EXPECT_EQ(spec.loss_forward[i], 0);
    EXPECT_EQ(spec.loss_backward[i], 0);
  }
}

// Section ends fall inside cells here; frusta have a closed form.
TEST(CutDuct, VolumeOfTapersIsExact) {
  const DuctSpec spec = cut_duct("d", {{cone(0.0731, 0.03, 0.05), cone(0.0412, 0.05, 0.042)}}, 0.005);
  const double frusta = pi / 12 * (0.0731 * (9 + 15 + 25) + 0.0412 * (25 + 5 * 4.2 + 4.2 * 4.2)) * 1e-4;
  EXPECT_NEAR(sum(spec.cell_volume) / frusta, 1, rounding);
  EXPECT_NEAR(spec.face_area.front(), pi / 4 * 0.03 * 0.03, rounding * 1e-3);
  EXPECT_NEAR(spec.face_area.back(), pi / 4 * 0.042 * 0.042, rounding * 1e-3);
}

TEST(CutDuct, AreaAtAFaceIsLinearInBore) {
  const DuctSpec spec = cut_duct("d", {{cone(0.1, 0.03, 0.05)}}, 0.01);
  for (std::size_t i = 0; i <= 10; ++i) {
    const double bore = 0.03 + 0.002 * static_cast<double>(i);
    EXPECT_NEAR(spec.face_area[i] / (pi / 4 * bore * bore), 1, rounding);
  }
}

TEST(CutDuct, ATransitionFromOvalToRoundGoesFromOneHydraulicDiameterToTheOther) {
  DuctSection s = straight_section(0.03, oval_section(0.036, 0.028), 3e-5, 900);
  s.finish = round_section(equal_area_bore(s.start.area));
  const DuctSpec spec = cut_duct("d", {{s, straight_section(0.1, s.finish, 3e-5, 900)}}, 0.005);
  EXPECT_NEAR(sum(spec.cell_volume) / (0.13 * s.start.area), 1,
              1e-9);  // equal areas: one tube in volume, no taper loss
  EXPECT_EQ(sum(spec.loss_forward) + sum(spec.loss_backward), 0);
  EXPECT_LT(spec.hydraulic_diameter[0], spec.hydraulic_diameter[5]);
  EXPECT_NEAR(spec.hydraulic_diameter.back(), equal_area_bore(s.start.area), 1e-12);
}

TEST(CutDuct, RoughnessAndWallFollowTheSections) {
  DuctSection hot = straight_section(0.1, round_section(0.04), 1e-5, 1000),
              cool = straight_section(0.1, round_section(0.04), 5e-5, 500);
  const DuctSpec spec = cut_duct("d", {{hot, cool}}, 0.04);  // five cells, the third half and half
  EXPECT_NEAR(spec.wall_temperature[0], 1000, 1e-9);
  EXPECT_NEAR(spec.wall_temperature[2], 750, 1e-9);
  EXPECT_NEAR(spec.roughness[4], 5e-5, 1e-17);
}

TEST(CutDuct, WideningLosesTheDiffuserLossAndNarrowingNothing) {
  const DuctSpec spec =
      cut_duct("d", {{straight_section(0.05, round_section(0.04), 0, 900), cone(0.083, 0.04, 0.06)}}, 0.005);
  const double half = std::atan(0.01 / 0.083), expected = diffuser_loss(half, 4.0 / 9);
  EXPECT_GT(expected, 0.02);
  EXPECT_NEAR(loss_on(pi / 4 * 0.04 * 0.04, spec, spec.loss_forward) / expected, 1, rounding);
  EXPECT_EQ(sum(spec.loss_backward), 0);
  EXPECT_EQ(spec.loss_forward[0], 0);
}

TEST(CutDuct, TurningTheDrawingRoundTurnsTheLossesRound) {
  const DuctSpec out = cut_duct("d", {{cone(0.02, 0.04, 0.06)}}, 0.005),
                 back = cut_duct("d", {{cone(0.02, 0.06, 0.04)}}, 0.005);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(out.loss_forward[i], back.loss_backward[3 - i], 1e-9);
    EXPECT_NEAR(out.loss_backward[i], back.loss_forward[3 - i], 1e-9);
  }
  EXPECT_GT(sum(out.loss_backward), 0);  // 26 degrees half-angle: narrowing is steep enough to lose
}

TEST(CutDuct, AConeDrawnInTwoLosesWhatItLosesWhole) {
  const DuctSpec whole = cut_duct("d", {{cone(0.1, 0.04, 0.06)}}, 0.005),
                 halves = cut_duct("d", {{cone(0.025, 0.04, 0.045), cone(0.075, 0.045, 0.06)}}, 0.005);
  const double small = pi / 4 * 0.04 * 0.04;
  EXPECT_NEAR(loss_on(small, halves, halves.loss_forward) / loss_on(small, whole, whole.loss_forward), 1, 1e-9);
}

TEST(CutDuct, BendsAreSpreadOverTheirArcInBothDirections) {
  DuctSection arc = straight_section(0.075, round_section(0.0366), 3e-5, 900);
  arc.bend_angle = 90 * deg;
  arc.bend_radius = 0.0476;
  const DuctSpec spec = cut_duct(
      "d", {{straight_section(0.1, arc.start, 3e-5, 900), arc, straight_section(0.1, arc.start, 3e-5, 900)}}, 0.005);
  const double expected = bend_loss(90 * deg, 0.0476 / 0.0366, darcy_factor(1e5, 3e-5 / 0.0366));
  EXPECT_NEAR(sum(spec.loss_forward) * spec.dx / expected, 1, rounding);
  EXPECT_EQ(spec.loss_forward, spec.loss_backward);
  EXPECT_EQ(spec.loss_forward.front(), 0);
}

TEST(CutDuct, SeveralBendsGivenAsOneAngleLoseAsSeveral) {
  DuctSection s = straight_section(0.3, round_section(0.0366), 3e-5, 900);
  s.bend_angle = 180 * deg;
  s.bend_radius = 0.0476;
  s.bends = 2;
  DuctSection one = s;
  one.bend_angle = 90 * deg;
  one.bends = 1;
  EXPECT_NEAR(sum(cut_duct("d", {{s}}, 0.005).loss_forward) / sum(cut_duct("d", {{one}}, 0.005).loss_forward), 2,
              rounding);
}

TEST(CutDuct, WithoutLocalLossesNothingIsLost) {
  DuctDrawing drawing{{cone(0.02, 0.04, 0.06)}, false};
  drawing.sections[0].bend_angle = 1;
  drawing.sections[0].bend_radius = 0.05;
  const DuctSpec spec = cut_duct("d", drawing, 0.005);
  EXPECT_EQ(sum(spec.loss_forward) + sum(spec.loss_backward), 0);
}

TEST(CutDuct, WhatCannotBeCutIsAnError) {
  EXPECT_THROW(cut_duct("d", {}, 0.005), Error);
  EXPECT_THROW(cut_duct("d", {{cone(0, 0.04, 0.06)}}, 0.005), Error);
  EXPECT_THROW(cut_duct("d", {{cone(0.1, 0.04, 0.06), cone(0.1, 0.061, 0.06)}}, 0.005), Error);
}

TEST(AreaTable, IsLinearInBoreBetweenItsRows) {
  const std::vector<BoreAt> table{{0, 0.05}, {0.25, 0.042}, {0.3, 0.042}};
  const DuctDrawing drawing{sections_from_table(table, 0, 300), false};
  EXPECT_NEAR(drawing.length(), 0.3, rounding);
  EXPECT_NEAR(equal_area_bore(area_at(drawing, 0.125)), 0.046, rounding);
  EXPECT_NEAR(equal_area_bore(area_at(drawing, 0.28)), 0.042, rounding);
  EXPECT_NEAR(equal_area_bore(area_at(drawing, 9)), 0.042, rounding);
}

TEST(AreaTable, ABadTableIsACaseErrorThatSaysWhy) {
  const std::vector<std::vector<BoreAt>> bad{{},
                                             {{0, 0.05}},
                                             {{0.1, 0.05}, {0.2, 0.05}},
                                             {{0, 0.05}, {0, 0.04}},
                                             {{0, 0.05}, {0.1, 0}},
                                             {{0, 0.05}, {0.2, 0.05}, {0.1, 0.05}}};
  for (const auto& table : bad) {
    try {
      sections_from_table(table, 0, 300);
      ADD_FAILURE() << "read without an error";
    } catch (const Error& error) {
      EXPECT_EQ(error.kind(), ErrorKind::case_file);
    }
  }
}

}  // namespace
}  // namespace pulsewright
