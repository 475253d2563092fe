#include "cli/svg_axes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace pulsewright {

using F = ChartFrame;

ValueAxis round_axis(ChartRange range) {
  const double span = std::max(range.high - range.low, 1e-3 * std::max(std::abs(range.high), 1.0));
  const double decade = std::pow(10, std::floor(std::log10(span / 4)));
  const double part = span / 4 / decade, tick = decade * (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10);
  ValueAxis axis{std::floor(range.low / tick) * tick, std::ceil(range.high / tick) * tick, tick};
  if (axis.high <= axis.low) axis.high = axis.low + tick;
  return axis;
}

std::string svg_text(double x, double y, std::string_view anchor, std::string_view text) {
  return fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\">{}</text>", x, y, anchor, escaped(text));
}

std::string svg_grid(const ValueAxis& axis, std::size_t rows) {
  std::string svg;
  const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(axis.tick) - 1e-9)));
  for (double v = axis.low; v <= axis.high + 0.5 * axis.tick; v += axis.tick)
    svg +=
        fmt::format("<path class=\"grid\" d=\"M{:.1f} {:.1f}H{:.1f}\"/>", F::left, axis.y_of(v), F::width - F::right) +
        svg_text(F::left - 5, axis.y_of(v) + 4, "end", fmt::format("{:.{}f}", v, decimals));
  const double numbers = F::bottom + F::bar_row * static_cast<double>(rows);
  for (int deg = 0; deg <= 720; deg += 90) {
    const bool named = deg % 180 == 0;
    svg += fmt::format("<path class=\"{}\" d=\"M{:.1f} {:.1f}V{:.1f}\"/>", named ? "grid" : "grid half", F::x_of(deg),
                       F::top, F::bottom + 4);
    if (named) svg += svg_text(F::x_of(deg), numbers + 18, "middle", std::to_string(deg));
  }
  return svg + svg_text(F::x_of(360), numbers + 34, "middle", "crank degrees after cylinder 1 fires");
}

std::string svg_stretch(const ChartBand& band, const char* css_class, double top, double height) {
  std::string svg;
  const double from = band.from_deg - 720 * std::floor(band.from_deg / 720), to = from + band.to_deg - band.from_deg;
  for (const auto& [a, b] : {std::pair{from, std::min(to, 720.0)}, std::pair{0.0, to - 720}}) {
    if (b <= a) continue;
    svg += fmt::format(
        "<rect class=\"{}\" x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\"><title>{}</title></rect>",
        css_class, F::x_of(a), top, F::x_of(b) - F::x_of(a), height, escaped(band.label));
  }
  return svg;
}

}  // namespace pulsewright
