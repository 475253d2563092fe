// The line charts: text as text, axes on round numbers, and no figure that is none.

#include <gtest/gtest.h>

#include <cmath>
#include <regex>
#include <set>
#include <sstream>

#include "cli/svg_axes.hpp"

namespace pulsewright {
namespace {

Series wave(double low, double high) {
  Series s;
  for (std::size_t i = 0; i < record_samples; ++i)
    s.push_back(low +
                (high - low) * (0.5 - 0.5 * std::cos(6.283185307179586 * static_cast<double>(i) / record_samples)));
  return s;
}

Chart chart_of(Series values) { return {"At the turbine", "bar", {{"A", 0, std::move(values)}}, {}, {}, {}, {}}; }

/// Labels of the ticks at the left.
std::vector<double> ticks(const std::string& svg) {
  std::vector<double> values;
  const std::regex label("text-anchor=\"end\">([^<]*)<");
  for (std::sregex_iterator at(svg.begin(), svg.end(), label), end; at != end; ++at)
    values.push_back(std::stod((*at)[1]));
  return values;
}

std::vector<double> heights(const std::string& svg) {
  std::vector<double> y;
  const std::size_t from = svg.find("points=\"") + 8;
  std::istringstream points(svg.substr(from, svg.find('"', from) - from));
  for (std::string point; points >> point;) y.push_back(std::stod(point.substr(point.find(',') + 1)));
  return y;
}

bool has_no_number(const std::string& svg) {
  return svg.find("nan") != std::string::npos || svg.find("inf") != std::string::npos;
}

TEST(Escaped, MarkupBecomesText) {
  EXPECT_EQ(escaped("<a href=\"x\">'&'</a>"), "&lt;a href=&quot;x&quot;&gt;&#39;&amp;&#39;&lt;/a&gt;");
}
TEST(Escaped, ControlCharactersGoAndLettersOfAnyTongueStay) {
  EXPECT_EQ(escaped(std::string("a\x01\x1b[2J\x7f é\n", 12)), "a[2J é\n");
}

TEST(SvgChart, EscapesEveryTextOfACase) {
  Chart chart = chart_of(wave(1, 2));
  chart.title = chart.unit = chart.lines[0].label = "<script>";
  chart.bands = {{10, 50, "<script>"}};
  EXPECT_EQ(svg_chart(chart).find("<script"), std::string::npos);
}

class AxisRange : public testing::TestWithParam<std::pair<double, double>> {};

TEST_P(AxisRange, EndsOnRoundNumbersAroundTheValues) {
  const auto [low, high] = GetParam();
  const std::string svg = svg_chart(chart_of(wave(low, high)));
  const auto at = ticks(svg);
  ASSERT_GE(at.size(), 3u) << svg;
  ASSERT_LE(at.size(), 9u);
  const double tick = at[1] - at[0], slack = 1e-6 * (high - low);  // labels are rounded to the tick's own decimals
  EXPECT_LE(at.front(), low + slack);
  EXPECT_GE(at.back(), high - slack);
  const double leading = tick / std::pow(10, std::floor(std::log10(tick) + 1e-9));
  EXPECT_TRUE(std::abs(leading - 1) < 1e-6 || std::abs(leading - 2) < 1e-6 || std::abs(leading - 5) < 1e-6) << tick;
  for (double y : heights(svg)) ASSERT_TRUE(y >= ChartFrame::top && y <= ChartFrame::bottom) << y;  // within the frame
}
INSTANTIATE_TEST_SUITE_P(SvgChart, AxisRange,
                         testing::Values(std::pair{1.0, 2.0}, std::pair{1.98, 3.17}, std::pair{0.0, 1.0},
                                         std::pair{-0.3, 0.7}, std::pair{950.0, 1210.0}, std::pair{2.013, 2.047}));

TEST(SvgChart, APressureThatNeverMovesIsALineAndNotNoNumber) {
  for (const double value : {2.0, 0.0, 1.013, -3.0, 1e5}) {
    const std::string svg = svg_chart(chart_of(Series(record_samples, value)));
    EXPECT_FALSE(has_no_number(svg)) << value;
    for (double y : heights(svg)) ASSERT_TRUE(y >= ChartFrame::top && y <= ChartFrame::bottom) << value;
    EXPECT_LE(ticks(svg).size(), 9u);
  }
}

TEST(SvgChart, DrawsAPointADegreeAndEachLineInItsOwnDash) {
  Chart chart = chart_of(wave(1, 2));
  for (int dash = 1; dash < 4; ++dash) chart.lines.push_back({"B", dash, wave(1, 2)});
  const std::string svg = svg_chart(chart);
  EXPECT_EQ(heights(svg).size(), 721u);
  std::set<std::string> patterns;
  const std::regex dash("stroke-dasharray=\"([^\"]*)\"");
  for (std::sregex_iterator at(svg.begin(), svg.end(), dash), end; at != end; ++at) patterns.insert((*at)[1]);
  EXPECT_EQ(patterns.size(), 3u);  // the first is solid
}

// From 700 to 740: twenty degrees at the right edge and twenty at the left.
TEST(SvgChart, ABandThatRunsPastTheCycleComesBackAtTheLeft) {
  Chart chart = chart_of(wave(1, 2));
  chart.bands = {{700, 740, "overlap"}};
  const std::string svg = svg_chart(chart);
  std::vector<double> x;
  const std::regex band("<rect class=\"band\" x=\"([^\"]*)\"");
  for (std::sregex_iterator at(svg.begin(), svg.end(), band), end; at != end; ++at) x.push_back(std::stod((*at)[1]));
  ASSERT_EQ(x.size(), 2u);
  EXPECT_LT(x[1], x[0]);
  chart.bands = {{-20, 20, "overlap"}};
  EXPECT_EQ(svg_chart(chart), svg);  // the same band, named from the other side
}

}  // namespace
}  // namespace pulsewright
