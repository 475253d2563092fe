#include "cli/page.hpp"

#include <fmt/format.h>

#include "cli/layout_text.hpp"
#include "cli/svg_chart.hpp"
#include "models/valve_lift.hpp"
#include "shared/files.hpp"
#include "shared/version.hpp"

namespace pulsewright {
namespace {

constexpr double bar = 1e5;

constexpr const char* style = R"(
:root{--ink:#1a1a1a;--paper:#fdfcf9;--soft:#6b675f;--rule:#d9d4c8;--band:#ece4d0;--a:#14375e;--b:#a8430b;--c:#2f6b3a;--d:#6a3d7d}
@media(prefers-color-scheme:dark){:root{--ink:#eceae4;--paper:#1b1b1d;--soft:#a29e95;--rule:#3d3b38;--band:#35301f;--a:#9cc3ee;--b:#f0a066;--c:#93cf9c;--d:#cfa6de}}
body{margin:0 auto;max-width:70rem;padding:1rem;background:var(--paper);color:var(--ink);font:16px/1.45 Georgia,"DejaVu Serif",serif}
h1{font-size:1.5rem;margin:.3em 0}h2{font-size:1.15rem;margin:1.6em 0 .4em}
.scroll{overflow-x:auto}table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:.92rem}
td,th{padding:.25em .7em;border-bottom:1px solid var(--rule);text-align:right;white-space:nowrap}
td:first-child,th:first-child{text-align:left;white-space:normal;min-width:9rem}
.warn{border-left:4px solid var(--b);padding:.3em .8em;margin:.6em 0}.soft{color:var(--soft)}
.charts{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,30rem),1fr));gap:.6rem}
svg{width:100%;height:auto;font:12px Georgia,"DejaVu Serif",serif;fill:var(--ink)}svg .title{font-size:13px;font-weight:bold}
.grid{stroke:var(--rule);stroke-width:.7;fill:none}.band{fill:var(--band)}
.line{fill:none;stroke-width:1.5}.ink0{stroke:var(--a)}.ink1{stroke:var(--b)}.ink2{stroke:var(--c)}.ink3{stroke:var(--d)}
details{border-top:1px solid var(--rule);padding:.4em 0}summary{cursor:pointer;font-weight:bold}
@media print{details>*{display:block}body{font-size:11px}}
)";

std::string paragraph_list(const std::vector<std::string>& lines) {
  std::string html = "<ul>";
  for (const std::string& line : lines) html += "<li>" + escaped(line) + "</li>";
  return html + "</ul>\n";
}

std::string row(const std::vector<std::string>& cells, const char* tag) {
  std::string html = "<tr>";
  for (const std::string& cell : cells) html += fmt::format("<{0}>{1}</{0}>", tag, escaped(cell));
  return html + "</tr>";
}

/// A figure in every layout and, for two, the difference.
std::vector<std::string> figure_cells(const std::vector<Layout>& layouts, std::size_t speed, const FigureRow& figure) {
  std::vector<std::string> cells{figure.label};
  std::vector<double> values;
  for (const Layout& l : layouts) {
    const auto value = speed < l.result.speeds.size() ? figure.value(l.result.speeds[speed], l.result.ambient_pressure) : std::nullopt;
    cells.push_back(value ? fmt::format("{:.{}f}", *value, figure.decimals) : "-");
    if (value) values.push_back(*value);
  }
  if (layouts.size() == 2) cells.push_back(values.size() == 2 ? fmt::format("{:+.{}f}", values[1] - values[0], figure.decimals) : "-");
  return cells;
}

std::vector<std::string> letters(const std::vector<Layout>& layouts, const std::string& first) {
  std::vector<std::string> cells{first};
  for (const Layout& l : layouts) cells.push_back(l.letter);
  if (layouts.size() == 2) cells.push_back("B - A");
  return cells;
}

std::string figure_table(const std::vector<Layout>& layouts, std::size_t speed) {
  std::string html = "<div class=\"scroll\"><table>" + row(letters(layouts, "figure"), "th");
  for (const FigureRow& figure : figure_rows()) html += row(figure_cells(layouts, speed, figure), "td");
  return html + "</table></div>\n";
}

/// The first screen's table: the figures that decide, over the speeds.
std::string overview(const std::vector<Layout>& layouts) {
  std::string html = "<div class=\"scroll\"><table>";
  std::vector<std::string> head{"figure"};
  for (const SpeedResult& s : layouts.front().result.speeds) head.push_back(fmt::format("{:.0f} rpm", s.rpm));
  html += row(head, "th");
  for (const FigureRow& figure : figure_rows()) {
    std::vector<std::string> cells{figure.label};
    for (std::size_t s = 0; s < layouts.front().result.speeds.size(); ++s) {
      const auto one = figure_cells(layouts, s, figure);
      std::string text;
      for (std::size_t k = 1; k <= layouts.size(); ++k) text += (k > 1 ? " / " : "") + one[k];
      cells.push_back(text);
    }
    html += row(cells, "td");
  }
  return html + "</table></div>\n";
}

Series in_bar(Series p) {
  for (double& value : p) value /= bar;
  return p;
}

Chart place_chart(const std::vector<Layout>& layouts, std::size_t speed, const std::string& place, const std::string& title) {
  Chart chart{title, "bar absolute", {}, {}};
  for (std::size_t k = 0; k < layouts.size(); ++k) {
    const SpeedResult& s = layouts[k].result.speeds[speed];
    for (const PlaceRecord& p : s.record.places)
      if (p.name == place) chart.lines.push_back({layouts[k].letter, static_cast<int>(k), in_bar(p.p)});
  }
  return chart;
}

/// The time both valves of the cylinder are open, of the first layout.
ChartBand overlap_band(const EngineCase& engine, std::size_t cylinder) {
  const Overlap both = overlap(LiftCurve(engine.engine.exhaust.card), LiftCurve(engine.engine.intake.card));
  const double firing = engine.engine.firing_at[cylinder].degrees();
  return {firing + both.from.degrees(), firing + both.from.degrees() + both.duration() * 180 / 3.14159265358979324, "both valves open"};
}

std::string charts(const std::vector<Layout>& layouts, std::size_t speed) {
  std::string html = "<div class=\"charts\">\n";
  std::vector<std::string> entries;
  for (const Layout& l : layouts)
    for (const EntryFigures& e : l.result.speeds[speed].turbine)
      if (std::ranges::find(entries, e.name) == entries.end()) entries.push_back(e.name);
  for (const std::string& entry : entries) html += svg_chart(place_chart(layouts, speed, entry, "Pressure at the " + entry));
  for (std::size_t c = 0; c < layouts.front().result.speeds[speed].cylinders.size(); ++c) {
    const std::string number = std::to_string(c + 1);
    Chart chart = place_chart(layouts, speed, "port " + number, "Pressure at port " + number + " (shaded: both valves open)");
    chart.bands.push_back(overlap_band(layouts.front().engine(), c));
    html += svg_chart(chart);
  }
  return html + "</div>\n";
}

std::string arrivals_table(const std::vector<Layout>& layouts, std::size_t speed) {
  std::string html = "<div class=\"scroll\"><table>" + row({"blowdown", "layout", "path", "first rise, deg after opening", "steepest", "share of the rise, bar (estimate)"}, "th");
  for (const Layout& l : layouts)
    for (const Arrival& a : l.result.speeds[speed].arrivals)
      html += row({fmt::format("cylinder {} at {}", a.from, a.at), l.letter, a.path, fmt::format("{:.1f}", a.deg_after_opening),
                   fmt::format("{:.1f}", a.steepest_deg_after_opening), fmt::format("{:.2f}", a.rise / bar)}, "td");
  return html + "</table></div>\n";
}

std::string assumed_table(const Layout& layout) {
  std::string html = "<div class=\"scroll\"><table>" + row({"assumed", "value", "range", "why"}, "th");
  for (const AssumedEntry& a : layout.result.assumed) html += row({a.key, a.value, a.range, a.why}, "td");
  return html + "</table></div>\n";
}

std::string speed_section(const std::vector<Layout>& layouts, std::size_t speed, bool open) {
  std::string html = fmt::format("<details{}><summary>{:.0f} rpm</summary>\n", open ? " open" : "", layouts.front().result.speeds[speed].rpm);
  html += charts(layouts, speed) + figure_table(layouts, speed);
  return html + "<h2>When each blowdown arrives</h2>\n" + arrivals_table(layouts, speed) + "</details>\n";
}

std::string provenance(const std::vector<Layout>& layouts) {
  std::string html = "<p class=\"soft\">";
  for (const Layout& l : layouts)
    html += escaped(fmt::format("{}: {} (case {}), cell {:.1f} mm. ", l.letter, l.loaded.file, l.loaded.hash, 1e3 * l.result.cell));
  double mass = 0, energy = 0;
  for (const Layout& l : layouts)
    for (const SpeedResult& s : l.result.speeds) mass = std::max(mass, s.mass_error), energy = std::max(energy, s.energy_error);
  return html + escaped(fmt::format("Mass kept to {:.0e}, energy to {:.0e} of a cycle's flow. pulsewright {}, {}.", mass, energy, program_version(), compiler_text())) + "</p>\n";
}

}  // namespace

std::string page_html(const std::vector<Layout>& layouts) {
  std::string title;
  for (const Layout& l : layouts) title += (title.empty() ? "" : " against ") + l.loaded.label;
  std::string html = "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
                     "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\">"
                     "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><title>" + escaped(title) + "</title><style>" + style + "</style></head><body>\n";
  html += layouts.size() > 1 ? "<h1>Which layout?</h1>\n" : "<h1>" + escaped(title) + "</h1>\n";
  for (const Layout& l : layouts) html += "<p><strong>" + l.letter + "</strong> " + escaped(l.loaded.label) + "</p>\n";
  for (const std::string& line : unsettled_text(layouts)) html += "<p class=\"warn\">" + escaped(line) + "</p>\n";
  html += "<p class=\"warn\">" + escaped(boost_given_sentence) + "</p>\n";
  const auto largest = in_short(layouts);
  html += "<h2>The figures, " + std::string(layouts.size() > 1 ? "A / B" : "speed by speed") + "</h2>\n" + overview(layouts);
  if (!largest.empty()) html += "<h2>Where they differ most</h2>\n<p class=\"soft\">No bands yet: a difference of less than a per cent or two may be none.</p>" + paragraph_list(largest);
  html += "<h2>Held equal</h2>\n" + paragraph_list(held_equal(layouts));
  const auto different = differences(layouts);
  if (!different.empty()) html += "<h2>Different from A</h2>\n" + paragraph_list(different);
  html += "<h2>Pressure against crank angle</h2>\n";
  for (std::size_t s = 0; s < layouts.front().result.speeds.size(); ++s) html += speed_section(layouts, s, s == layouts.front().result.speeds.size() / 2);
  html += "<h2>Assumed in A, because the case does not say</h2>\n" + assumed_table(layouts.front());
  html += "<h2>Cautions</h2>\n" + paragraph_list(cautions) + provenance(layouts);
  return html + "</body></html>\n";
}

void write_page(const std::filesystem::path& path, const std::vector<Layout>& layouts, bool force) { write_text(path, page_html(layouts), force); }

}  // namespace pulsewright
