#include "models/tube_stock.hpp"

#include <gtest/gtest.h>

#include <numbers>
#include <string>

#include "models/cross_section.hpp"
#include "shared/error.hpp"

namespace pulsewright {
namespace {

constexpr double pi = std::numbers::pi;

Error error_of(void (*read)(std::string_view), std::string_view text) {
  try {
    read(text);
  } catch (const Error& error) {
    return error;
  }
  return {ErrorKind::internal, "no error"};
}
Error tube_error(std::string_view text) {
  return error_of([](std::string_view t) { parse_tube(t); }, text);
}
Error shape_error(std::string_view text) {
  return error_of([](std::string_view t) { parse_cross_section(t); }, text);
}

bool says(const Error& error, std::string_view part) {
  return (error.message() + error.hint()).find(part) != std::string::npos;
}

// Sums of decimal millimetres: rounding only.
constexpr double rounding = 1e-15;

TEST(TubeStock, EveryPipeOfTheTableReadsBackFromItsOwnName) {
  for (const StockPipe& pipe : stock_pipes()) {
    const Tube tube = parse_tube(pipe.tube().name);
    EXPECT_EQ(tube.name, pipe.tube().name);
    EXPECT_NEAR(tube.bore(), 1e-3 * (pipe.outside_diameter_mm - 2 * pipe.wall_mm), rounding);
  }
}

TEST(TubeStock, AHeavierScheduleIsAThickerWall) {
  const auto pipes = stock_pipes();
  for (std::size_t i = 1; i < pipes.size(); ++i) {
    if (pipes[i].nominal_size == pipes[i - 1].nominal_size)
      EXPECT_GT(pipes[i].wall_mm, pipes[i - 1].wall_mm);
    else
      EXPECT_GT(pipes[i].outside_diameter_mm, pipes[i - 1].outside_diameter_mm);
  }
}

TEST(TubeStock, PipeIsReadInTheSpellingsOfTheTrade) {
  for (std::string_view text :
       {"NPS 1-1/4 sch 10S", "nps 1 1/4 SCH 10s", " NPS 1-1/4 schedule 10S ", "NPS 1-1/4 sch. 10S"})
    EXPECT_EQ(parse_tube(text).name, "NPS 1-1/4 sch 10S") << text;
}

TEST(TubeStock, TubeIsOutsideDiameterTimesWall) {
  EXPECT_NEAR(parse_tube("42.4 mm OD x 2 mm").bore(), 0.0384, rounding);
  EXPECT_NEAR(parse_tube("1.5 in OD x 0.065 in").bore(), (1.5 - 2 * 0.065) * 0.0254, rounding);
  EXPECT_NEAR(parse_tube("1-1/2 in od x 1.65 mm").bore(), 0.0381 - 2 * 0.00165, rounding);
}

TEST(TubeStock, ABareSizeIsRefusedNamingBothMeanings) {
  for (std::string_view text : {"1-1/2", "1-1/2 in", "1 1/2"}) {
    const Error error = tube_error(text);
    EXPECT_EQ(error.kind(), ErrorKind::case_file);
    EXPECT_TRUE(says(error, "NPS 1-1/2")) << error.message();
    EXPECT_TRUE(says(error, "outside diameter")) << error.message();
    EXPECT_TRUE(says(error, "1-1/2 in OD x 0.065 in")) << error.hint();
  }
}

TEST(TubeStock, WhatIsNoTubeIsACaseErrorThatSaysWhy) {
  for (std::string_view text :
       {"", "NPS", "NPS 1-1/4", "NPS 7 sch 10S", "NPS 1-1/4 sch 80S", "42.4 mm x 2 mm", "big", "20 mm OD x 10 mm",
        "-20 mm OD x 2 mm", "42.4 mm OD x 0 mm", "42.4 mm OD x 2 K", "42.4 mm OD x", "nan mm OD x 2 mm"}) {
    const Error error = tube_error(text);
    EXPECT_EQ(error.kind(), ErrorKind::case_file) << text << ": " << error.message();
    EXPECT_FALSE(error.message().empty());
  }
  EXPECT_TRUE(says(tube_error("NPS 1-1/4 sch 80S"), "10S"));
  EXPECT_TRUE(says(tube_error("NPS 7 sch 10S"), "3-1/2"));
  EXPECT_TRUE(says(tube_error("20 mm OD x 10 mm"), "no bore"));
}

TEST(TubeStock, TheNextPipeAboveABoreIsTheSmallestThatIsLargeEnough) {
  EXPECT_EQ(stock_pipe_above(0.0366).tube().name, "NPS 1-1/4 sch 10S");
  EXPECT_EQ(stock_pipe_above(0.0367).tube().name, "NPS 1-1/4 sch 5S");
  EXPECT_THROW(stock_pipe_above(0.2), Error);
}

TEST(CrossSection, ShapesHaveTheirArea) {
  const double size = 1e-12;  // m2, rounding of a product of two lengths
  EXPECT_NEAR(parse_cross_section("round 32 mm").area, pi / 4 * 0.032 * 0.032, size);
  EXPECT_NEAR(parse_cross_section("rectangle 34 mm x 28 mm").area, 0.034 * 0.028, size);
  EXPECT_NEAR(parse_cross_section("oval 36 mm x 28 mm").area, pi / 4 * 0.028 * 0.028 + 0.008 * 0.028, size);
  EXPECT_NEAR(parse_cross_section("oval 28 mm x 36 mm").perimeter, pi * 0.028 + 0.016, rounding);
}

TEST(CrossSection, AnOvalOfEqualSidesIsRoundAndHydraulicDiameterOfRoundIsItsBore) {
  EXPECT_NEAR(oval_section(0.03, 0.03).area, round_section(0.03).area, rounding);
  EXPECT_NEAR(oval_section(0.03, 0.03).hydraulic_diameter(), 0.03, rounding);
  EXPECT_NEAR(equal_area_bore(round_section(0.03).area), 0.03, rounding);
  EXPECT_LT(oval_section(0.036, 0.028).hydraulic_diameter(), equal_area_bore(oval_section(0.036, 0.028).area));
}

TEST(CrossSection, WhatIsNoShapeIsACaseErrorThatNamesTheThree) {
  for (std::string_view text :
       {"", "32 mm", "square 3 mm", "oval 36 mm", "round -3 mm", "oval 36 mm x 0 mm", "round 900 C"})
    EXPECT_EQ(shape_error(text).kind(), ErrorKind::case_file) << text;
  EXPECT_TRUE(says(shape_error("32 mm"), "rectangle 34 mm x 28 mm"));
}

}  // namespace
}  // namespace pulsewright
