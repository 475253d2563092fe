#pragma once
// The frame of a chart: where a crank angle and a value stand, grid, ticks, shading.

#include <string>

#include "cli/svg_chart.hpp"

namespace pulsewright {

/// In the units of the drawing: as wide as a phone's page, so that its letters keep their size there.
struct ChartFrame {
  static constexpr double width = 360, left = 50, right = 18, top = 30, plot = 150, bar_row = 13, below = 44;
  static constexpr double bottom = top + plot;

  static double x_of(double deg) { return left + (width - left - right) * deg / 720; }
};

/// Ends on round numbers, with three to seven ticks between.
struct ValueAxis {
  double low, high, tick;
  double y_of(double value) const { return ChartFrame::bottom - ChartFrame::plot * (value - low) / (high - low); }
};

ValueAxis round_axis(ChartRange range);

std::string svg_text(double x, double y, std::string_view anchor, std::string_view text);

/// Grid and numbers; the crank angles stand under `rows` rows of bars.
std::string svg_grid(const ValueAxis& axis, std::size_t rows);

/// A stretch of crank angle, in two pieces where it runs past 720.
std::string svg_stretch(const ChartBand& band, const char* css_class, double top, double height);

}  // namespace pulsewright
