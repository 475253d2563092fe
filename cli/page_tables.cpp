#include "cli/page_tables.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "cli/svg_chart.hpp"

namespace pulsewright {
namespace {

constexpr double bar = 1e5, zero_celsius = 273.15;
using Row = std::vector<std::string>;

class HtmlTable {
 public:
  explicit HtmlTable(Row head, const char* css_class = "numbers") : head_(std::move(head)) {
    html_ = fmt::format("<table class=\"{}\"><thead><tr>", css_class);
    for (const std::string& cell : head_) html_ += "<th>" + escaped(cell) + "</th>";
    html_ += "</tr></thead><tbody>\n";
  }

  void add(const Row& row) {
    html_ += "<tr>";
    for (std::size_t k = 0; k < row.size(); ++k)
      html_ += fmt::format("<td data-h=\"{}\">{}</td>", escaped(head_[k]), escaped(row[k]));
    html_ += "</tr>\n";
  }

  std::string html() const { return html_ + "</tbody></table>\n"; }

 private:
  Row head_;
  std::string html_;
};

/// On a phone the more layouts share a cell the fewer cells stand side by side.
const char* numbers_class(const std::vector<Layout>& layouts) {
  return layouts.size() > 3 ? "numbers one" : layouts.size() > 2 ? "numbers two" : "numbers";
}

/// "1.51 / 1.54" at one speed; "-" for a layout that gives none.
std::string side_by_side(const std::vector<Layout>& layouts, double rpm,
                         const std::function<std::string(const Layout&, const SpeedResult&)>& cell) {
  std::string text;
  for (const Layout& l : layouts) {
    const SpeedResult* speed = l.at_rpm(rpm);
    text += (text.empty() ? "" : " / ") + (speed ? cell(l, *speed) : "-");
  }
  return text;
}

struct CylinderColumn {
  const char* head;
  std::string (*cell)(const CylinderFigures&);
};

const std::vector<CylinderColumn> cylinder_columns = {
    {"filling, %", [](const CylinderFigures& c) { return number_text(100 * c.volumetric_efficiency, 1); }},
    {"burned gas left in, %", [](const CylinderFigures& c) { return number_text(100 * c.burned_gas_left, 1); }},
    {"overlap: port less intake, bar",
     [](const CylinderFigures& c) {
       return c.overlap_port_minus_intake ? number_text(*c.overlap_port_minus_intake / bar, 2, true) : std::string("-");
     }},
    {"pumping: gained +, lost -, bar", [](const CylinderFigures& c) { return number_text(c.pmep / bar, 2, true); }},
    {"port mean, bar abs", [](const CylinderFigures& c) { return number_text(c.port_pressure_mean / bar, 2); }},
    {"port peak, bar abs", [](const CylinderFigures& c) { return number_text(c.port_pressure_peak / bar, 2); }},
    {"gas at the flange, degC", [](const CylinderFigures& c) { return number_text(c.temperature - zero_celsius, 0); }},
};

const Arrival* find_arrival(const SpeedResult& speed, int from, const std::string& at) {
  for (const Arrival& a : speed.arrivals)
    if (a.from == from && a.at == at) return &a;
  return nullptr;
}

/// From which cylinder to where, over all layouts, each once.
std::vector<std::pair<int, std::string>> ways(const std::vector<Layout>& layouts, double rpm) {
  std::vector<std::pair<int, std::string>> list;
  for (const Layout& l : layouts)
    if (const SpeedResult* speed = l.at_rpm(rpm))
      for (const Arrival& a : speed->arrivals)
        if (std::ranges::find(list, std::pair{a.from, a.at}) == list.end()) list.emplace_back(a.from, a.at);
  return list;
}

}  // namespace

std::string letters_text(const std::vector<Layout>& layouts) {
  std::string text;
  for (const Layout& l : layouts) text += (text.empty() ? "" : " / ") + l.letter;
  return text;
}

std::string overview_table(const std::vector<Layout>& layouts, const std::vector<FigureRow>& rows) {
  Row head{layouts.size() > 1 ? letters_text(layouts) : "figure"};
  for (const double rpm : speeds_of(layouts)) head.push_back(fmt::format("{:.0f} rpm", rpm));
  HtmlTable table(head, numbers_class(layouts));
  for (const FigureRow& figure : rows) {
    Row row{figure.label};
    for (const double rpm : speeds_of(layouts))
      row.push_back(side_by_side(layouts, rpm, [&](const Layout& l, const SpeedResult&) {
        return figure_text(figure, l.figure(figure, rpm));
      }));
    table.add(row);
  }
  return table.html();
}

std::string figures_table(const std::vector<Layout>& layouts, double rpm) {
  Row head{"figure"};
  for (const Layout& l : layouts) head.push_back(layouts.size() > 1 ? l.letter : "value");
  for (std::size_t k = 1; k < layouts.size(); ++k) head.push_back(layouts[k].letter + " less A");
  HtmlTable table(head);
  for (const FigureRow& figure : figure_rows()) {
    Row row{figure.label};
    for (const Layout& l : layouts) row.push_back(figure_text(figure, l.figure(figure, rpm)));
    for (std::size_t k = 1; k < layouts.size(); ++k) {
      const auto a = layouts.front().figure(figure, rpm), b = layouts[k].figure(figure, rpm);
      row.push_back(a && b ? number_text(*b - *a, figure.decimals, true) : "-");
    }
    table.add(row);
  }
  return table.html();
}

std::string cylinders_table(const std::vector<Layout>& layouts, double rpm) {
  Row head{"cylinder"};
  for (const CylinderColumn& column : cylinder_columns) head.emplace_back(column.head);
  HtmlTable table(head, numbers_class(layouts));
  std::size_t count = 0;
  for (const Layout& l : layouts)
    if (const SpeedResult* speed = l.at_rpm(rpm)) count = std::max(count, speed->cylinders.size());
  for (std::size_t c = 0; c < count; ++c) {
    Row row{fmt::format("cylinder {}", c + 1)};
    for (const CylinderColumn& column : cylinder_columns)
      row.push_back(side_by_side(layouts, rpm, [&](const Layout&, const SpeedResult& s) {
        return c < s.cylinders.size() ? column.cell(s.cylinders[c]) : std::string("-");
      }));
    table.add(row);
  }
  return table.html();
}

std::string arrivals_table(const std::vector<Layout>& layouts, double rpm) {
  HtmlTable table({"blowdown", "first rise, deg after opening", "steepest", "rise, bar (estimate)", "way"},
                  "numbers words");
  for (const auto& [from, at] : ways(layouts, rpm)) {
    const auto column = [&, from = from, at = at](const std::function<std::string(const Arrival&)>& cell) {
      return side_by_side(layouts, rpm, [&](const Layout&, const SpeedResult& s) {
        const Arrival* a = find_arrival(s, from, at);
        return a ? cell(*a) : std::string("-");
      });
    };
    std::string path;
    for (const Layout& l : layouts)
      if (const SpeedResult* s = l.at_rpm(rpm))
        if (const Arrival* a = find_arrival(*s, from, at); a && path.find(a->path) == std::string::npos)
          path += (path.empty() ? "" : "; " + l.letter + ": ") + a->path;
    table.add({fmt::format("cylinder {} at {}", from, at),
               column([](const Arrival& a) { return number_text(a.deg_after_opening, 1); }),
               column([](const Arrival& a) { return number_text(a.steepest_deg_after_opening, 1); }),
               column([](const Arrival& a) { return number_text(a.rise / bar, 2); }), path});
  }
  return table.html();
}

std::string assumed_table(const Layout& layout) {
  HtmlTable table({"assumed", "value", "range", "why"}, "words");
  for (const AssumedEntry& a : layout.result.assumed) table.add({a.key, a.value, a.range, a.why});
  return table.html();
}

}  // namespace pulsewright
