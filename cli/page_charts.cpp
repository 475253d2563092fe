#include "cli/page_charts.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/svg_chart.hpp"
#include "cli/valve_bars.hpp"

namespace pulsewright {
namespace {

constexpr double bar = 1e5;

Series in_bar(Series p) {
  for (double& value : p) value /= bar;
  return p;
}

/// The line of each layout that has a record of this name in the list.
template <class Records>
Chart chart_of(const std::vector<Layout>& layouts, double rpm, const std::string& name, const Records& records) {
  Chart chart{name, "bar absolute", {}, {}};
  for (std::size_t k = 0; k < layouts.size(); ++k)
    if (const SpeedResult* speed = layouts[k].at_rpm(rpm))
      for (const auto& record : records(speed->record))
        if (record.name == name)
          chart.lines.push_back({layouts.size() > 1 ? layouts[k].letter : "", static_cast<int>(k), in_bar(record.p)});
  return chart;
}

Chart place_chart(const std::vector<Layout>& layouts, double rpm, const std::string& place) {
  return chart_of(
      layouts, rpm, place, [](const CycleRecord& r) -> const auto& { return r.places; });
}

Chart joint_chart(const std::vector<Layout>& layouts, double rpm, const std::string& joint) {
  return chart_of(
      layouts, rpm, joint, [](const CycleRecord& r) -> const auto& { return r.joints; });
}

void add_once(std::vector<std::string>& names, const std::string& name) {
  if (std::ranges::find(names, name) == names.end()) names.push_back(name);
}

std::vector<std::string> entry_names(const std::vector<Layout>& layouts, double rpm) {
  std::vector<std::string> names;
  for (const Layout& l : layouts)
    if (const SpeedResult* speed = l.at_rpm(rpm))
      for (const EntryFigures& e : speed->turbine) add_once(names, e.name);
  return names;
}

/// Joints where at least three ducts meet: the others are steps and bends in one pipe.
std::vector<std::string> joint_names(const std::vector<Layout>& layouts) {
  std::vector<std::string> names;
  for (const Layout& l : layouts)
    for (const NodePlan& node : l.engine().plan.nodes)
      if (std::holds_alternative<JointNode>(node.kind) && node.ports.size() >= 3) add_once(names, node.name);
  return names;
}

std::size_t most_cylinders(const std::vector<Layout>& layouts) {
  std::size_t most = 0;
  for (const Layout& l : layouts) most = std::max(most, l.engine().engine.firing_at.size());
  return most;
}

/// The intake pressure of each layout at that speed; equal ones fall onto each other.
void add_intake_levels(Chart& chart, const std::vector<Layout>& layouts, double rpm) {
  for (const Layout& l : layouts) {
    const SpeedResult* speed = l.at_rpm(rpm);
    if (!speed) continue;
    const double level = speed->intake_pressure / bar;
    if (std::ranges::none_of(chart.levels, [&](const ChartLevel& other) { return other.value == level; }))
      chart.levels.push_back({level, layouts.size() > 1 ? "intake " + l.letter : "intake"});
  }
}

std::vector<Chart> port_charts(const std::vector<Layout>& layouts, double rpm) {
  std::vector<Chart> charts;
  for (std::size_t c = 0; c < most_cylinders(layouts); ++c) {
    Chart chart = place_chart(layouts, rpm, fmt::format("port {}", c + 1));
    chart.title = fmt::format("Port {}", c + 1);
    add_valve_bars(chart, layouts, c);
    add_intake_levels(chart, layouts, rpm);
    charts.push_back(std::move(chart));
  }
  return charts;
}

std::vector<Chart> collector_charts(const std::vector<Layout>& layouts, double rpm) {
  std::vector<Chart> charts;
  for (const std::string& entry : entry_names(layouts, rpm)) {
    charts.push_back(place_chart(layouts, rpm, entry));
    charts.back().title = "At the " + entry;
  }
  for (const std::string& joint : joint_names(layouts)) {
    charts.push_back(joint_chart(layouts, rpm, joint));
    charts.back().title = "In joint " + joint;
  }
  return charts;
}

/// Draws them with one pressure axis for all.
std::string on_one_axis(std::vector<Chart> charts) {
  std::erase_if(charts, [](const Chart& c) { return c.lines.empty(); });
  std::optional<ChartRange> all;
  for (const Chart& chart : charts)
    if (const auto range = value_range(chart))
      all = all ? ChartRange{std::min(all->low, range->low), std::max(all->high, range->high)} : *range;
  std::string html;
  for (Chart& chart : charts) {
    chart.range = all;
    html += svg_chart(chart);
  }
  return html;
}

std::string key(const std::string& drawing, const std::string& text) {
  return "<li>" + drawing + escaped(text) + "</li>";
}

std::string little(const char* inside) {
  return fmt::format("<svg class=\"sample\" viewBox=\"0 0 40 10\" aria-hidden=\"true\">{}</svg>", inside);
}

}  // namespace

std::string chart_legend(const std::vector<Layout>& layouts) {
  std::string html = "<ul class=\"legend\">";
  for (std::size_t k = 0; k < layouts.size(); ++k)
    html += key(svg_sample(static_cast<int>(k)),
                (layouts.size() > 1 ? layouts[k].letter + ": " : "") + layouts[k].loaded.label);
  html += key(little("<rect class=\"band\" width=\"40\" height=\"10\"/>"), "both valves of that cylinder open");
  html += key(little("<rect class=\"bar\" y=\"3\" width=\"40\" height=\"5\"/>"),
              "exhaust or intake valve of that cylinder open (0.1 mm lift and more)");
  return html + key(little("<path class=\"level\" d=\"M0 5H40\"/>"), "intake pressure") + "</ul>\n";
}

std::string speed_charts(const std::vector<Layout>& layouts, double rpm) {
  return "<div class=\"charts\">\n" + on_one_axis(collector_charts(layouts, rpm)) + "</div>\n<div class=\"charts" +
         (most_cylinders(layouts) > 4 ? " many" : "") + "\">\n" + on_one_axis(port_charts(layouts, rpm)) + "</div>\n";
}

}  // namespace pulsewright
