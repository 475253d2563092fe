#include "cli/layout_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "cli/boost_text.hpp"
#include "cli/colour.hpp"
#include "cli/energy_rows.hpp"
#include "cli/metal_text.hpp"
#include "cli/turbo_text.hpp"
#include "shared/text_table.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr std::size_t screen_width = 110, label_width = 36,
                      value_width = 5;  // letters; a table of two layouts has five speeds across
constexpr double bar = 1e5;

struct Line {
  std::string label;
  std::function<std::string(const Layout&, const SpeedResult&)> cell;
};

/// Broken at blanks so that no line is wider than the screen; later lines stand two further in.
std::string broken(const std::string& text, const std::string& indent) {
  std::string out, line = indent;
  std::size_t at = 0;
  const std::string safe = printable(text);
  while (at < safe.size()) {
    const std::size_t end = std::min(safe.find(' ', at), safe.size());
    if (line.size() > indent.size() + 2 && line.size() + 1 + end - at > screen_width) {
      out += std::string(line.begin(),
                         std::find_if_not(line.rbegin(), line.rend(), [](char c) { return c == ' '; }).base()) +
             "\n";
      line = indent + "  ";
    }
    line += (line.find_first_not_of(' ') == std::string::npos ? "" : " ") + safe.substr(at, end - at);
    at = end + 1;
  }
  return out + line + "\n";
}

std::string all_broken(const std::vector<std::string>& lines, const std::string& indent) {
  std::string text;
  for (const std::string& line : lines) text += broken(line, indent);
  return text;
}

/// "1.51 / 1.54": the layouts' values at one speed.
std::string side_by_side(const std::vector<Layout>& layouts, double rpm, const Line& line) {
  std::string text;
  for (const Layout& layout : layouts) {
    const SpeedResult* speed = layout.at_rpm(rpm);
    text += (text.empty() ? "" : " / ") + (speed ? line.cell(layout, *speed) : "-");
  }
  return text;
}

std::size_t speeds_across(std::size_t layouts) {
  const std::size_t column = std::max<std::size_t>(layouts * (value_width + 3) - 3, std::size_t{8}) + 2;
  return std::max<std::size_t>(1, (screen_width - label_width + 1) / column);
}

/// A table of lines over speeds; speeds that do not fit go into a second table below.
std::string speed_table(const std::string& title, const std::vector<Layout>& layouts, const std::vector<Line>& lines) {
  std::string text;
  const std::vector<double> speeds = speeds_of(layouts);
  const std::size_t across = speeds_across(layouts.size());
  for (std::size_t first = 0; first < speeds.size(); first += across) {
    const std::size_t last = std::min(speeds.size(), first + across);
    std::vector<TextTable::Column> columns{
        {title + std::string(label_width - std::min(label_width, title.size()), ' '), TextTable::Align::left}};
    for (std::size_t s = first; s < last; ++s)
      columns.push_back({fmt::format("{:.0f} rpm", speeds[s]), TextTable::Align::right});
    TextTable table(columns);
    for (const Line& line : lines) {
      std::vector<std::string> row{line.label};
      for (std::size_t s = first; s < last; ++s) row.push_back(side_by_side(layouts, speeds[s], line));
      table.add_row(row);
    }
    text += table.text() + "\n";
  }
  return text;
}

std::vector<Line> figure_lines(const std::vector<FigureRow>& rows) {
  std::vector<Line> lines;
  for (const FigureRow& row : rows)
    lines.push_back({row.label, [&row](const Layout& l, const SpeedResult& s) {
                       return figure_text(row, row.value(s, l.result.ambient_pressure));
                     }});
  return lines;
}

/// A line for each cylinder of the layout that has most.
std::vector<Line> cylinder_lines(const std::vector<Layout>& layouts,
                                 const std::function<std::string(const SpeedResult&, std::size_t)>& figure) {
  std::size_t count = 0;
  for (const Layout& l : layouts) count = std::max(count, l.result.speeds.front().cylinders.size());
  std::vector<Line> lines;
  for (std::size_t c = 0; c < count; ++c)
    lines.push_back({fmt::format("cylinder {}", c + 1), [c, figure](const Layout&, const SpeedResult& s) {
                       return c < s.cylinders.size() ? figure(s, c) : std::string("-");
                     }});
  return lines;
}

std::string first_arrival(const SpeedResult& s, std::size_t cylinder) {
  for (const Arrival& a : s.arrivals)
    if (a.from == s.cylinders[cylinder].cylinder && std::ranges::count(s.turbine, a.at, &EntryFigures::name) > 0)
      return number_text(a.deg_after_opening, 0);
  return "-";
}

std::string overlap_text(const SpeedResult& s, std::size_t cylinder) {
  const auto p = s.cylinders[cylinder].overlap_port_minus_intake;
  return p ? number_text(*p / bar, 2, true) : "-";
}

std::string head(const std::vector<Layout>& layouts) {
  std::string text;
  const bool several = layouts.size() > 1;
  for (const Layout& l : layouts)
    text += broken((several ? l.letter + "  " : "") + l.loaded.label + "  (" + l.loaded.file + ")", "");
  text += several ? "\nHeld equal:\n" : "\nRun with:\n";
  text += all_broken(held_equal(layouts), "  ");
  for (const std::string& line : not_equal(layouts)) text += broken("! " + line, "");
  const auto different = differences(layouts);
  if (!different.empty()) text += "Different from A:\n" + all_broken(different, "  ");
  text += "\n" + broken(boost_sentence(layouts), "");
  return text + all_broken(boost_warnings(layouts), "") + all_broken(boost_lines(layouts), "  ") + "\n";
}

std::string tables(const std::vector<Layout>& layouts) {
  std::string title;
  for (const Layout& l : layouts) title += (title.empty() ? "" : " / ") + l.letter;
  std::string text = speed_table(layouts.size() > 1 ? title : "figure", layouts, figure_lines(figure_rows()));
  text.pop_back();  // what a gap means stands right below
  text += all_broken(missing_reasons(layouts), "") + all_broken(how_to_read, "") + "\n";
  text += speed_table("pulse at turbine, deg after opening", layouts, cylinder_lines(layouts, first_arrival));
  text += speed_table("filling at intake density, %", layouts,
                      cylinder_lines(layouts, [](const SpeedResult& s, std::size_t c) {
                        return number_text(100 * s.cylinders[c].volumetric_efficiency, 1);
                      }));
  text += speed_table("overlap: port less intake, bar", layouts, cylinder_lines(layouts, overlap_text));
  return text + speed_table("of the fuel's heat", layouts, figure_lines(energy_rows()));
}

std::string assumed_text(const Layout& layout) {
  std::string text = "Assumed, because the case does not say (value, range, why):\n";
  for (const AssumedEntry& a : layout.result.assumed)
    text += broken(
        a.key + ": " + a.value + (a.range.empty() ? "" : ", " + a.range) + (a.why.empty() ? "" : "; " + a.why), "  ");
  return text;
}

}  // namespace

std::vector<std::string> unsettled_text(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts)
    for (const SpeedResult& s : l.result.speeds)
      if (!s.settled)
        lines.push_back(
            fmt::format("NOT SETTLED: {} at {:.0f} rpm after {} cycles: {}; mass left over {:.2g} of what went in. Do "
                        "not trust this speed.",
                        l.letter, s.rpm, s.cycles, s.unsettled_figure, s.unsettled_mass));
  return lines;
}

std::string layouts_text(const std::vector<Layout>& layouts) {
  std::string text = head(layouts) + tables(layouts);
  text += "Hottest metal of each runner over these speeds\n" + all_broken(metal_lines(layouts), "  ") + "\n";
  const auto largest = in_short(layouts);
  if (!largest.empty())
    text +=
        "Where they differ, what matters most first\n" + all_broken(largest, "  ") + broken(no_bands_sentence, "  ");
  const auto crossed = crossing_sentences(layouts);
  if (!crossed.empty())
    text += "Where they change places, from straight lines between the speeds\n" + all_broken(crossed, "  ");
  const auto why = why_sentences(layouts);
  if (!why.empty()) text += "Why the torque differs\n" + all_broken(why, "  ");
  text +=
      layouts.size() == 1 ? assumed_text(layouts.front()) : "\nWhat was assumed: pulsewright check CASE lists it.\n";
  text += "\n";
  for (const std::string& caution : cautions) text += broken("! " + caution, "");
  for (const std::string& hot : metal_cautions(layouts)) text += broken("! " + hot, "");
  text += in_red(all_broken(turbo_warnings(layouts), "")) + all_broken(turbo_unknowns(layouts), "");
  return text + all_broken(valve_float(layouts), "") + all_broken(turbine_sentences(layouts), "") +
         all_broken(not_held(layouts), "") + all_broken(unsettled_text(layouts), "");
}

}  // namespace pulsewright
