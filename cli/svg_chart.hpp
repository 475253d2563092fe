#pragma once
// A line chart as SVG text: pressure against crank angle, the layouts told apart by dash, never by colour alone.

#include <string>
#include <vector>

#include "models/records.hpp"

namespace pulsewright {

struct ChartLine {
  std::string label;  // stands at the line's end
  int dash;           // 0 solid, 1 dashed, 2 dotted, 3 dash-dot
  Series values;      // over 0..720 degrees
};

/// A stretch of crank angle that is shaded; may run past 720.
struct ChartBand {
  double from_deg, to_deg;
  std::string label;
};

struct Chart {
  std::string title, unit;
  std::vector<ChartLine> lines;
  std::vector<ChartBand> bands;
};

/// Text is escaped. Lines drawn a point a degree.
std::string svg_chart(const Chart& chart);

/// &, <, >, " and ' as HTML writes them; control characters dropped.
std::string escaped(std::string_view text);

}  // namespace pulsewright
