#include "cli/svg_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>

#include "cli/svg_axes.hpp"
#include "models/pulse_parts.hpp"

namespace pulsewright {
namespace {

using F = ChartFrame;

struct Stroke {
  const char* dashes;
  double weight;
};
constexpr std::array strokes{
    Stroke{"", 2.1},    Stroke{"6 3", 1.3},  Stroke{"1.5 3", 2.2},         Stroke{"9 3 1.5 3", 1.5},
    Stroke{"3 2", 2.2}, Stroke{"12 4", 1.1}, Stroke{"9 3 1.5 3 1.5 3", 2}, Stroke{"1.5 6", 2.6}};
constexpr std::size_t inks = 4;  // colours of the style sheet: beyond them dash and weight tell alone
constexpr double letter_height = 12;

std::size_t stroke_of(int dash) { return static_cast<std::size_t>(dash) % strokes.size(); }

std::string pen(int dash) {
  const std::size_t k = stroke_of(dash);
  const std::string dashes =
      *strokes[k].dashes == '\0' ? "" : fmt::format(" stroke-dasharray=\"{}\"", strokes[k].dashes);
  return fmt::format("class=\"line ink{}\" stroke-width=\"{:g}\"{}", k % inks, strokes[k].weight, dashes);
}

std::string polyline(const ChartLine& line, const ValueAxis& axis) {
  std::string points;
  for (int deg = 0; deg <= 720; ++deg)
    points += fmt::format("{:.1f},{:.1f} ", F::x_of(deg), axis.y_of(at_degree(line.values, deg)));
  points.pop_back();
  return fmt::format("<polyline {} points=\"{}\"/>", pen(line.dash), points);
}

/// Heights of labels beside the ends of the lines: as near as they can be without standing on each other.
std::vector<double> label_heights(std::vector<double> wanted) {
  std::vector<std::size_t> order(wanted.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, {}, [&](std::size_t k) { return wanted[k]; });
  for (std::size_t k = 1; k < order.size(); ++k) {
    const double overlap = wanted[order[k - 1]] + letter_height - wanted[order[k]];
    if (overlap <= 0) continue;
    if (k == 1) wanted[order[0]] -= overlap / 2;
    wanted[order[k]] = wanted[order[k - 1]] + letter_height;
  }
  const double beyond = order.empty() ? 0 : wanted[order.back()] - (F::bottom + 4);
  if (beyond > 0)
    for (double& y : wanted) y -= beyond;
  return wanted;
}

std::string end_labels(const Chart& chart, const ValueAxis& axis) {
  std::vector<double> wanted;
  for (const ChartLine& line : chart.lines) wanted.push_back(axis.y_of(line.values.back()) + 4);
  const std::vector<double> y = label_heights(wanted);
  std::string svg;
  for (std::size_t k = 0; k < chart.lines.size(); ++k)
    svg += svg_text(F::width - F::right + 5, y[k], "start", chart.lines[k].label);
  return svg;
}

std::string level(const ChartLevel& l, const ValueAxis& axis) {
  return fmt::format("<path class=\"level\" d=\"M{:.1f} {:.1f}H{:.1f}\"><title>{}</title></path>", F::left,
                     axis.y_of(l.value), F::width - F::right, escaped(l.label));
}

std::string bars(const Chart& chart) {
  std::string svg;
  for (std::size_t k = 0; k < chart.bars.size(); ++k) {
    const double top = F::bottom + 6 + F::bar_row * static_cast<double>(k);
    svg += svg_stretch(chart.bars[k], "bar", top + 3, 5) + svg_text(F::left - 5, top + 10, "end", chart.bars[k].label);
  }
  return svg;
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : text) switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      default:
        if ((static_cast<unsigned char>(c) >= 0x20 && c != 0x7f) || c == '\n' || c == '\t') safe += c;
    }
  return safe;
}

std::optional<ChartRange> value_range(const Chart& chart) {
  std::optional<ChartRange> range;
  const auto add = [&range](double low, double high) {
    if (!range) range = ChartRange{low, high};
    range->low = std::min(range->low, low), range->high = std::max(range->high, high);
  };
  for (const ChartLine& line : chart.lines)
    if (!line.values.empty()) add(*std::ranges::min_element(line.values), *std::ranges::max_element(line.values));
  if (range)
    for (const ChartLevel& l : chart.levels) add(l.value, l.value);
  return range;
}

std::string svg_sample(int dash) {
  return fmt::format("<svg class=\"sample\" viewBox=\"0 0 40 10\" aria-hidden=\"true\"><path {} d=\"M0 5H40\"/></svg>",
                     pen(dash));
}

std::string svg_chart(const Chart& chart) {
  ChartRange range = value_range(chart).value_or(chart.range.value_or(ChartRange{0, 1}));
  if (chart.range) range = {std::min(range.low, chart.range->low), std::max(range.high, chart.range->high)};
  const ValueAxis axis = round_axis(range);
  const double height = F::bottom + F::bar_row * static_cast<double>(chart.bars.size()) + F::below;
  std::string svg = fmt::format("<svg class=\"chart\" viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" aria-label=\"{}\">",
                                F::width, height, escaped(chart.title));
  svg += fmt::format("<text class=\"title\" x=\"{:.0f}\" y=\"19\">{}</text>", F::left,
                     escaped(chart.title + ", " + chart.unit));
  for (const ChartBand& band : chart.bands) svg += svg_stretch(band, "band", F::top, F::plot);
  svg += svg_grid(axis, chart.bars.size()) + bars(chart);
  for (const ChartLevel& l : chart.levels) svg += level(l, axis);
  for (const ChartLine& line : chart.lines) svg += polyline(line, axis);
  return svg + end_labels(chart, axis) + "</svg>\n";
}

}  // namespace pulsewright
