#pragma once
// A line chart as SVG text: pressure against crank angle, the layouts told apart by dash and weight, never by colour alone.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "models/records.hpp"

namespace pulsewright {

struct ChartLine {
  std::string label;  // stands at the line's end
  int dash;           // 0 solid, 1 dashed, 2 dotted, ... to 7
  Series values;      // over 0..720 degrees
};

/// A stretch of crank angle that is shaded; may run past 720.
struct ChartBand {
  double from_deg, to_deg;
  std::string label;
};

/// A value that is held, drawn thin across.
struct ChartLevel {
  double value;
  std::string label;
};

struct ChartRange {
  double low, high;
};

struct Chart {
  std::string title, unit;
  std::vector<ChartLine> lines;
  std::vector<ChartBand> bands;
  std::vector<ChartBand> bars = {};  // drawn under the axis, one row each, the label at the left
  std::vector<ChartLevel> levels = {};
  std::optional<ChartRange> range = {};  // of the y axis at least; none: that of the lines
};

/// Text is escaped. Lines drawn a point a degree. A chart without lines is an empty axis.
std::string svg_chart(const Chart& chart);

/// From the lowest to the highest value of lines and levels; none without a line.
std::optional<ChartRange> value_range(const Chart& chart);

/// A short piece of a layout's line, for the legend.
std::string svg_sample(int dash);

/// &, <, >, " and ' as HTML writes them; control characters dropped.
std::string escaped(std::string_view text);

}  // namespace pulsewright
