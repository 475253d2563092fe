#include "cli/page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cli/boost_text.hpp"
#include "cli/energy_rows.hpp"
#include "cli/layout_text.hpp"
#include "cli/metal_text.hpp"
#include "cli/page_charts.hpp"
#include "cli/page_style.hpp"
#include "cli/page_tables.hpp"
#include "cli/svg_chart.hpp"
#include "cli/turbo_text.hpp"
#include "shared/files.hpp"
#include "shared/version.hpp"

namespace pulsewright {
namespace {

std::string bullets(const std::vector<std::string>& lines, const char* css_class = "plain") {
  std::string html = fmt::format("<ul class=\"{}\">", css_class);
  for (const std::string& line : lines) html += "<li>" + escaped(line) + "</li>";
  return html + "</ul>\n";
}

std::string paragraph(const char* css_class, const std::string& text) {
  return fmt::format("<p class=\"{}\">{}</p>\n", css_class, escaped(text));
}

std::string head(const std::string& title) {
  return "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
         "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
         "img-src data:\">"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><title>" +
         escaped(title) + "</title><style>" + page_style + "</style></head><body>\n";
}

std::string page_title(const std::vector<Layout>& layouts) {
  std::string title;
  for (const Layout& l : layouts) title += (title.empty() ? "" : " against ") + l.loaded.label;
  return title;
}

std::string heading(const std::vector<Layout>& layouts) {
  if (layouts.size() == 1) return "<h1>" + escaped(layouts.front().loaded.label) + "</h1>\n";
  std::string html = "<h1>Which layout?</h1>\n";
  for (const Layout& l : layouts) html += "<p><strong>" + l.letter + "</strong> " + escaped(l.loaded.label) + "</p>\n";
  return html;
}

std::string folded(const std::string& title, const std::string& html, bool open = false) {
  return fmt::format("<details{}><summary>{}</summary>\n", open ? " open" : "", escaped(title)) + html + "</details>\n";
}

constexpr std::size_t most_lines_open = 8;

/// A long list ends in a fold.
std::string shortened(const std::vector<std::string>& lines) {
  if (lines.size() <= most_lines_open) return bullets(lines);
  const auto cut = lines.begin() + most_lines_open - 2;
  return bullets({lines.begin(), cut}) + folded(fmt::format("{} more", lines.end() - cut), bullets({cut, lines.end()}));
}

/// Where they differ, and what they have in common; for one layout only what it was run with.
std::string first_words(const std::vector<Layout>& layouts) {
  std::string html, not_held_equal;
  const auto largest = in_short(layouts), different = differences(layouts);
  if (!largest.empty())
    html += "<h2>Where they differ, what matters most first</h2>\n" + bullets(largest, "lead") +
            paragraph("soft", no_bands_sentence);
  if (const auto crossed = crossing_sentences(layouts); !crossed.empty())
    html += "<h2>Where they change places</h2>\n" + bullets(crossed) +
            paragraph("soft", "From straight lines between the speeds that were run.");
  if (const auto why = why_sentences(layouts); !why.empty()) html += "<h2>Why the torque differs</h2>\n" + bullets(why);
  html += "<div class=\"pair\"><div><h2>" + std::string(layouts.size() > 1 ? "Held equal" : "Run with") + "</h2>\n" +
          bullets(held_equal(layouts)) + "</div>\n";
  for (const std::string& line : not_equal(layouts)) not_held_equal += paragraph("warn", line);
  if (!different.empty()) html += "<div><h2>Different from A</h2>\n" + shortened(different) + "</div>";
  html += "</div>\n" + not_held_equal + paragraph("warn", boost_sentence(layouts));
  const auto lines = boost_lines(layouts);
  return lines.empty() ? html : html + bullets(lines, "lead");
}

std::string figures(const std::vector<Layout>& layouts) {
  std::string html = "<h2>The figures, " +
                     (layouts.size() > 1 ? letters_text(layouts) : std::string("speed by speed")) + "</h2>\n" +
                     overview_table(layouts, figure_rows());
  for (const std::string& line : missing_reasons(layouts)) html += paragraph("soft", line);
  html += bullets(how_to_read, "soft");
  return html + folded("Where the fuel's heat goes", overview_table(layouts, energy_rows()));
}

std::string speed_section(const std::vector<Layout>& layouts, double rpm, bool open) {
  std::string html = speed_charts(layouts, rpm) + "<h3>Every cylinder</h3>\n" + cylinders_table(layouts, rpm);
  if (layouts.size() > 1) html += folded("All figures and what lies between", figures_table(layouts, rpm));
  return folded(fmt::format("{:.0f} rpm", rpm),
                html + folded("When each blowdown arrives", arrivals_table(layouts, rpm)), open);
}

std::string speed_sections(const std::vector<Layout>& layouts) {
  std::string html = "<h2>Pressure against crank angle</h2>\n" + chart_legend(layouts);
  const std::vector<double> speeds = speeds_of(layouts);
  for (std::size_t s = 0; s < speeds.size(); ++s) html += speed_section(layouts, speeds[s], s == speeds.size() / 2);
  return html;
}

std::string assumptions(const std::vector<Layout>& layouts) {
  std::string html;
  for (const Layout& l : layouts) {
    const bool as_in_a = &l != &layouts.front() && std::ranges::equal(l.result.assumed, layouts.front().result.assumed,
                                                                      [](const AssumedEntry& a, const AssumedEntry& b) {
                                                                        return a.key == b.key && a.value == b.value &&
                                                                               a.range == b.range;
                                                                      });
    const std::string where = layouts.size() > 1 ? " in " + l.letter : "";
    if (as_in_a)
      html += paragraph("soft", l.letter + " assumes the same as A.");
    else
      html += folded("Assumed" + where + ", because the case does not say", assumed_table(l), layouts.size() == 1);
  }
  return "<h2>What was assumed</h2>\n" + html;
}

std::string provenance(const std::vector<Layout>& layouts) {
  std::string text;
  double mass = 0, energy = 0;
  for (const Layout& l : layouts) {
    text +=
        fmt::format("{}: {} (case {}), cell {:.1f} mm. ", l.letter, l.loaded.file, l.loaded.hash, 1e3 * l.result.cell);
    for (const SpeedResult& s : l.result.speeds)
      mass = std::max(mass, s.mass_error), energy = std::max(energy, s.energy_error);
  }
  return paragraph(
      "soft", text + fmt::format("Mass kept to {:.0e}, energy to {:.0e} of a cycle's flow. pulsewright {}, {}.", mass,
                                 energy, program_version(), compiler_text()));
}

}  // namespace

std::string page_html(const std::vector<Layout>& layouts) {
  std::string html = head(page_title(layouts)) + heading(layouts);
  for (const std::string& line : unsettled_text(layouts)) html += paragraph("warn", line);
  for (const std::string& line : turbine_sentences(layouts)) html += paragraph("warn", line);
  std::vector<std::string> unknowns = turbo_unknowns(layouts);
  for (const std::string& line : valve_float(layouts))
    if (line.starts_with("VALVE FLOAT"))
      html += paragraph("warn", line);
    else
      unknowns.push_back(line);
  for (const std::string& line : boost_warnings(layouts)) html += paragraph("warn", line);
  for (const std::string& line : turbo_warnings(layouts)) html += paragraph("warn red", line);
  for (const std::string& line : not_held(layouts)) html += paragraph("warn", line);
  html += first_words(layouts) + figures(layouts) + speed_sections(layouts) + assumptions(layouts);
  html += "<h2>Hottest metal of each runner</h2>\n" + bullets(metal_lines(layouts));
  if (!unknowns.empty()) html += "<h2>What the cases do not say</h2>\n" + bullets(unknowns);
  return html + "<h2>Cautions</h2>\n" + bullets(cautions) + bullets(metal_cautions(layouts)) + provenance(layouts) +
         "</body></html>\n";
}

void write_page(const std::filesystem::path& path, const std::vector<Layout>& layouts, bool force) {
  write_text(path, page_html(layouts), force);
}

}  // namespace pulsewright
