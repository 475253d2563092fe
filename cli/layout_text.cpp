#include "cli/layout_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "shared/text_table.hpp"

namespace pulsewright {
namespace {

constexpr std::size_t speeds_across = 5;  // more go into a second table below
constexpr double bar = 1e5;

using Cell = std::function<std::string(const Layout&, const SpeedResult&)>;

/// "1.51 / 1.54": the layouts' values at one speed.
std::string side_by_side(const std::vector<Layout>& layouts, std::size_t speed, const Cell& cell) {
  std::string text;
  for (const Layout& layout : layouts)
    text += (text.empty() ? "" : " / ") + (speed < layout.result.speeds.size() ? cell(layout, layout.result.speeds[speed]) : "-");
  return text;
}

struct Line {
  std::string label;
  Cell cell;
};

/// A table of lines over speeds, five across.
std::string speed_table(const std::string& title, const std::vector<Layout>& layouts, const std::vector<Line>& lines) {
  std::string text;
  const std::size_t count = layouts.front().result.speeds.size();
  for (std::size_t first = 0; first < count; first += speeds_across) {
    const std::size_t last = std::min(count, first + speeds_across);
    std::vector<TextTable::Column> columns{{title, TextTable::Align::left}};
    for (std::size_t s = first; s < last; ++s) columns.push_back({fmt::format("{:.0f} rpm", layouts.front().result.speeds[s].rpm), TextTable::Align::right});
    TextTable table(columns);
    for (const Line& line : lines) {
      std::vector<std::string> row{line.label};
      for (std::size_t s = first; s < last; ++s) row.push_back(side_by_side(layouts, s, line.cell));
      table.add_row(row);
    }
    text += table.text() + "\n";
  }
  return text;
}

std::vector<Line> figure_lines() {
  std::vector<Line> lines;
  for (const FigureRow& row : figure_rows())
    lines.push_back({row.label, [&row](const Layout& l, const SpeedResult& s) {
                       const auto value = row.value(s, l.result.ambient_pressure);
                       return value ? fmt::format("{:.{}f}", *value, row.decimals) : std::string("-");
                     }});
  return lines;
}

std::vector<Line> cylinder_lines(const std::vector<Layout>& layouts, const std::function<std::string(const CylinderFigures&)>& figure) {
  std::vector<Line> lines;
  for (std::size_t c = 0; c < layouts.front().result.speeds.front().cylinders.size(); ++c)
    lines.push_back({fmt::format("cylinder {}", c + 1), [c, figure](const Layout&, const SpeedResult& s) {
                       return c < s.cylinders.size() ? figure(s.cylinders[c]) : std::string("-");
                     }});
  return lines;
}

std::string first_arrival(const SpeedResult& s, int cylinder) {
  for (const Arrival& a : s.arrivals)
    if (a.from == cylinder && a.at.starts_with("turbine")) return fmt::format("{:.0f}", a.deg_after_opening);
  return "-";
}

std::vector<Line> arrival_lines(const std::vector<Layout>& layouts) {
  std::vector<Line> lines;
  for (const CylinderFigures& c : layouts.front().result.speeds.front().cylinders)
    lines.push_back({fmt::format("from cylinder {}", c.cylinder), [number = c.cylinder](const Layout&, const SpeedResult& s) { return first_arrival(s, number); }});
  return lines;
}

std::string head(const std::vector<Layout>& layouts) {
  std::string text;
  for (const Layout& l : layouts) text += fmt::format("{}  {}  ({})\n", l.letter, l.loaded.label, l.loaded.file);
  if (layouts.size() > 1) text += "\nHeld equal:\n";
  else text += "\n";
  for (const std::string& line : held_equal(layouts)) text += "  " + line + "\n";
  const auto different = differences(layouts);
  if (!different.empty()) text += "Different from A:\n";
  for (const std::string& line : different) text += "  " + line + "\n";
  return text + "\n" + boost_given_sentence + "\n\n";
}

std::string assumed_text(const Layout& layout) {
  TextTable table({{"assumed (you did not say)"}, {"value"}, {"range"}});
  for (const AssumedEntry& a : layout.result.assumed) table.add_row({a.key, a.value, a.range});
  return table.text();
}

}  // namespace

std::vector<std::string> unsettled_text(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts)
    for (const SpeedResult& s : l.result.speeds)
      if (!s.settled)
        lines.push_back(fmt::format("NOT SETTLED: {} at {:.0f} rpm after {} cycles: {}; mass left over {:.2g} of what went in. Do not trust this speed.",
                                    l.letter, s.rpm, s.cycles, s.unsettled_figure, s.unsettled_mass));
  return lines;
}

std::string layouts_text(const std::vector<Layout>& layouts) {
  std::string text = head(layouts);
  text += speed_table(layouts.size() > 1 ? "A / B ..." : "figure", layouts, figure_lines());
  text += speed_table("blowdown reaches the turbine, deg after its valve opens", layouts, arrival_lines(layouts));
  text += speed_table("filling, % of the cylinder at intake density", layouts,
                      cylinder_lines(layouts, [](const CylinderFigures& c) { return fmt::format("{:.1f}", 100 * c.volumetric_efficiency); }));
  text += speed_table("port minus intake over the overlap, bar", layouts, cylinder_lines(layouts, [](const CylinderFigures& c) {
                        return c.overlap_port_minus_intake ? fmt::format("{:+.3f}", *c.overlap_port_minus_intake / bar) : std::string("-");
                      }));
  const auto largest = in_short(layouts);
  if (!largest.empty()) text += "Where they differ most (no bands yet: a difference of less than a per cent or two may be none):\n";
  for (const std::string& line : largest) text += "  " + line + "\n";
  if (layouts.size() == 1) text += assumed_text(layouts.front());
  else text += "\nWhat was assumed: pulsewright check CASE lists it.\n";
  text += "\n";
  for (const std::string& caution : cautions) text += "! " + caution + "\n";
  for (const std::string& line : unsettled_text(layouts)) text += line + "\n";
  return text;
}

}  // namespace pulsewright
