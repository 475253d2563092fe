#include "cli/turbo_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "models/compressor.hpp"

namespace pulsewright {
namespace {

constexpr double bar = 1e5;
constexpr double worth_saying = 0.01;  // of the full lift

void add_once(std::vector<std::string>& lines, std::string line) {
  if (!line.empty() && std::ranges::find(lines, line) == lines.end()) lines.push_back(std::move(line));
}

/// "3500, 4500 and 5500"
std::string listed_speeds(const std::vector<double>& speeds) {
  std::string text;
  for (std::size_t i = 0; i < speeds.size(); ++i)
    text += fmt::format("{}{:.0f}", i == 0 ? "" : i + 1 == speeds.size() ? " and " : ", ", speeds[i]);
  return text;
}

/// One sentence for a gate of a layout, with its worst speed in figures.
std::string pushed_open_line(const Layout& layout, std::size_t gate) {
  std::vector<double> speeds;
  const SpeedResult* worst = nullptr;
  for (const SpeedResult& s : layout.result.speeds) {
    if (s.gates[gate].pushed_open.value_or(0) < worth_saying) continue;
    speeds.push_back(s.rpm);
    if (!worst || *s.gates[gate].pushed_open > *worst->gates[gate].pushed_open) worst = &s;
  }
  if (!worst) return {};
  const GateFigures& g = worst->gates[gate];
  return fmt::format(
      "GATE PUSHED OPEN: {}'s {} at {} rpm: drive pressure lifts it before the boost would. Worst at {:.0f} rpm: "
      "{:.0f} % "
      "of its lift, {:.2f} bar on the valve over what is behind; it cracks at {:.2f} bar of boost, its spring says "
      "{:.2f}.",
      layout.letter, g.name, listed_speeds(speeds), worst->rpm, 100 * *g.pushed_open, (g.before - g.behind) / bar,
      *g.cracks_at / bar, *g.spring / bar);
}

struct Side {
  bool CompressorFigures::*flag;
  const char *title, *what;
};
constexpr Side sides[] = {
    {&CompressorFigures::surge, "COMPRESSOR SURGE", "left of the first point of its speed"},
    {&CompressorFigures::choke, "COMPRESSOR CHOKE", "right of the last point of its speed"},
    {&CompressorFigures::overspeed, "COMPRESSOR OVERSPEED", "above the fastest line"},
    {&CompressorFigures::too_slow, "OFF THE COMPRESSOR MAP", "below the slowest line"},
};

/// One sentence for a compressor of a layout and a side of its map.
std::string off_map_line(const Layout& layout, std::size_t compressor, const Side& side) {
  std::vector<double> speeds;
  const CompressorFigures* last = nullptr;
  for (const SpeedResult& s : layout.result.speeds)
    if (compressor < s.compressors.size() && s.compressors[compressor].*side.flag)
      speeds.push_back(s.rpm), last = &s.compressors[compressor];
  if (!last) return {};
  return fmt::format(
      "{}: {}, compressor of {}, at {} rpm: {} on its map (there {:.3f} kg/s corrected at ratio {:.2f}); the map's "
      "edge "
      "stands in for what it does not say.",
      side.title, layout.letter, last->name, listed_speeds(speeds), side.what, last->flow, last->pressure_ratio);
}

void add_compressors(std::vector<std::string>& lines, const Layout& layout) {
  if (!layout.engine().charge.map) return add_once(lines, no_map_sentence);
  for (std::size_t i = 0; i < layout.engine().turbines.size(); ++i)
    for (const Side& side : sides) add_once(lines, off_map_line(layout, i, side));
}

}  // namespace

std::vector<std::string> turbo_warnings(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts) add_compressors(lines, l);
  for (const Layout& l : layouts)
    for (std::size_t i = 0; i < l.engine().plan.gates.size(); ++i) add_once(lines, pushed_open_line(l, i));
  return lines;
}

std::vector<std::string> turbo_unknowns(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts)
    for (const GatePlan& gate : l.engine().plan.gates) add_once(lines, no_spring_sentence(gate));
  return lines;
}

}  // namespace pulsewright
