#include "cli/svg_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "models/pulse_parts.hpp"

namespace pulsewright {
namespace {

constexpr double width = 480, height = 236, left = 44, right = 26, top = 30, bottom = 34;
constexpr std::array dashes{"", "6 4", "1.5 3", "8 3 1.5 3"};

double x_of(double deg) { return left + (width - left - right) * deg / 720; }

struct Axis {
  double low, high, tick;
  double y_of(double value) const { return height - bottom - (height - top - bottom) * (value - low) / (high - low); }
};

/// Ends on round numbers, with three to seven ticks between.
Axis round_axis(double low, double high) {
  const double span = std::max(high - low, 1e-6 * std::max(std::abs(high), 1.0));
  const double decade = std::pow(10, std::floor(std::log10(span / 4)));
  const double part = span / 4 / decade, tick = decade * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10);
  return {std::floor(low / tick) * tick, std::ceil(high / tick) * tick, tick};
}

Axis axis_of(const Chart& chart) {
  double low = 1e300, high = -1e300;
  for (const ChartLine& line : chart.lines) {
    const auto [a, b] = std::minmax_element(line.values.begin(), line.values.end());
    low = std::min(low, *a), high = std::max(high, *b);
  }
  return round_axis(low, high);
}

std::string text_at(double x, double y, std::string_view anchor, std::string_view text) {
  return fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\">{}</text>", x, y, anchor, escaped(text));
}

std::string grid(const Axis& axis) {
  std::string svg;
  const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(axis.tick) - 1e-9)));
  for (double v = axis.low; v <= axis.high + 0.5 * axis.tick; v += axis.tick)
    svg += fmt::format("<path class=\"grid\" d=\"M{:.1f} {:.1f}H{:.1f}\"/>", left, axis.y_of(v), width - right) + text_at(left - 5, axis.y_of(v) + 4, "end", fmt::format("{:.{}f}", v, decimals));
  for (int deg = 0; deg <= 720; deg += 180)
    svg += fmt::format("<path class=\"grid\" d=\"M{:.1f} {:.1f}V{:.1f}\"/>", x_of(deg), top, height - bottom) + text_at(x_of(deg), height - bottom + 15, "middle", std::to_string(deg));
  return svg + text_at(x_of(360), height - 4, "middle", "crank degrees after cylinder 1 fires");
}

std::string shaded(const ChartBand& band) {
  std::string svg;
  const double from = band.from_deg - 720 * std::floor(band.from_deg / 720), to = from + band.to_deg - band.from_deg;
  for (const auto& [a, b] : {std::pair{from, std::min(to, 720.0)}, std::pair{0.0, to - 720}}) {
    if (b <= a) continue;
    svg += fmt::format("<rect class=\"band\" x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\"><title>{}</title></rect>", x_of(a), top,
                       x_of(b) - x_of(a), height - top - bottom, escaped(band.label));
  }
  return svg;
}

std::string polyline(const ChartLine& line, const Axis& axis, std::size_t rank) {
  std::string points;
  for (int deg = 0; deg <= 720; ++deg) points += fmt::format("{:.1f},{:.1f} ", x_of(deg), axis.y_of(at_degree(line.values, deg)));
  points.pop_back();
  const auto dash = static_cast<std::size_t>(line.dash) % dashes.size();
  const std::string pattern = *dashes[dash] == '\0' ? "" : fmt::format(" stroke-dasharray=\"{}\"", dashes[dash]);
  const double y = axis.y_of(line.values.back()) + 4 + 12 * static_cast<double>(rank) - 6;
  return fmt::format("<polyline class=\"line ink{}\"{} points=\"{}\"/>", dash, pattern, points) + text_at(width - right + 4, y, "start", line.label);
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : text) switch (c) {
      case '&': safe += "&amp;"; break;
      case '<': safe += "&lt;"; break;
      case '>': safe += "&gt;"; break;
      case '"': safe += "&quot;"; break;
      case '\'': safe += "&#39;"; break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t') safe += c;
    }
  return safe;
}

std::string svg_chart(const Chart& chart) {
  const Axis axis = axis_of(chart);
  std::string svg = fmt::format("<svg viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" aria-label=\"{}\">", width, height, escaped(chart.title));
  svg += fmt::format("<text class=\"title\" x=\"{:.0f}\" y=\"16\">{}</text>", left, escaped(chart.title + ", " + chart.unit));
  for (const ChartBand& band : chart.bands) svg += shaded(band);
  svg += grid(axis);
  for (std::size_t i = 0; i < chart.lines.size(); ++i) svg += polyline(chart.lines[i], axis, i);
  return svg + "</svg>\n";
}

}  // namespace pulsewright
