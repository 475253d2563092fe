#include "cli/metal_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <nlohmann/json.hpp>

namespace pulsewright {
namespace {

constexpr double zero_celsius = 273.15, lines_and_paint = 700 + zero_celsius;  // K: common practice, no source

constexpr std::size_t most_in_full = 2;  // layouts

/// One runner of one layout at the speed where it is hottest.
struct Hottest {
  RunnerFigures runner;
  double rpm;
};

std::vector<Hottest> hottest_runners(const Layout& layout) {
  std::vector<Hottest> all;
  for (const SpeedResult& speed : layout.result.speeds)
    for (const RunnerFigures& runner : speed.metal.runners) {
      auto known = std::ranges::find_if(all, [&](const Hottest& h) { return h.runner.name == runner.name; });
      if (known == all.end())
        all.push_back({runner, speed.rpm});
      else if (runner.hottest > known->runner.hottest)
        *known = {runner, speed.rpm};
    }
  return all;
}

/// All, or the hottest tube alone where many layouts are shown.
std::vector<Hottest> shown_runners(const Layout& layout, bool briefly) {
  std::vector<Hottest> all = hottest_runners(layout);
  if (!briefly) return all;
  std::erase_if(all, [](const Hottest& h) { return h.runner.housing; });
  const auto hottest = std::ranges::max_element(all, {}, [](const Hottest& h) { return h.runner.hottest; });
  return hottest == all.end() ? all : std::vector<Hottest>{*hottest};
}

std::string letter(const std::vector<Layout>& layouts, const Layout& layout) {
  return layouts.size() > 1 ? layout.letter + ": " : "";
}

std::string growth_words(const RunnerFigures& r) {
  return r.growth ? fmt::format("; grows {:.1f} mm ({})", 1e3 * *r.growth, r.alloy) : std::string(" (given)");
}

/// "; 90 % of it after 34 s" for the piece that takes longest.
std::string warm_up_words(const Layout& layout, const Hottest& h) {
  const SpeedResult* speed = layout.at_rpm(h.rpm);
  if (!speed || !speed->warm_up) return {};
  double longest = 0;
  for (const WarmUpPiece& p : speed->warm_up->pieces) {
    if (p.name != h.runner.name) continue;
    if (!p.time_to_90_per_cent) return fmt::format("; not 90 % warm after {:.0f} s", speed->warm_up->time.back());
    longest = std::max(longest, *p.time_to_90_per_cent);
  }
  return longest > 0 ? fmt::format("; 90 % warm after {:.0f} s", longest) : std::string{};
}

Json piece_json(const PieceFigures& p) {
  constexpr std::string_view given = "the temperature of this wall is given: its outside is not computed";
  Json j{{"name", p.name}};
  put_number(j, "from_mm", 1e3 * p.from);
  put_number(j, "to_mm", 1e3 * p.to);
  j["computed"] = p.computed;
  put_number(j, "wall_temperature_K", p.wall_temperature);
  put_number(j, "skin_temperature_K", p.skin_temperature, given);
  put_number(j, "gas_temperature_flow_mean_K", p.gas_temperature);
  put_number(j, "heat_in_W", p.heat_in);
  put_number(j, "heat_out_W", p.heat_out, given);
  return j;
}

Json runner_json(const RunnerFigures& r) {
  Json j{{"name", r.name}};
  put_number(j, "hottest_K", r.hottest);
  put_number(j, "hottest_at_mm", 1e3 * r.hottest_at);
  put_number(j, "growth_mm", r.growth ? std::optional(1e3 * *r.growth) : std::nullopt,
             "a temperature of its wall is given, not its alloy");
  j["alloy"] = r.alloy;
  j["above_hot_limit"] = r.too_hot;
  return j;
}

Json warm_up_json(const WarmUp& w) {
  Json j{{"time_s", w.time}};
  j["pieces"] = Json::array();
  for (const WarmUpPiece& p : w.pieces) {
    Json piece{{"name", p.name}};
    put_number(piece, "from_mm", 1e3 * p.from);
    put_number(piece, "to_mm", 1e3 * p.to);
    put_number(piece, "settled_K", p.settled);
    put_number(piece, "time_to_90_percent_s", p.time_to_90_per_cent, "it takes longer than the warm-up that was run");
    piece["wall_temperature_K"] = p.temperature;
    j["pieces"].push_back(piece);
  }
  return j;
}

}  // namespace

std::vector<std::string> metal_lines(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& layout : layouts)
    for (const Hottest& h : shown_runners(layout, layouts.size() > most_in_full))
      lines.push_back(letter(layouts, layout) +
                      fmt::format("{}: {:.0f} degC, {:.0f} mm from its start, at {:.0f} rpm{}{}", h.runner.name,
                                  h.runner.hottest - zero_celsius, 1e3 * h.runner.hottest_at, h.rpm,
                                  growth_words(h.runner), warm_up_words(layout, h)));
  return lines;
}

std::vector<std::string> metal_cautions(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& layout : layouts) {
    std::vector<std::string> hot;
    for (const Hottest& h : hottest_runners(layout)) {
      if (h.runner.hottest > lines_and_paint) hot.push_back(h.runner.name);
      if (h.runner.too_hot)
        lines.push_back(
            letter(layouts, layout) +
            fmt::format("{} comes to {:.0f} degC, hotter than {} stands for long (a guide, from memory; ask "
                        "who sells the tube).",
                        h.runner.name, h.runner.hottest - zero_celsius, h.runner.alloy));
    }
    if (!hot.empty())
      lines.push_back(letter(layouts, layout) +
                      fmt::format("Metal above 700 degC ({}): shield lines, wiring and paint, keep oil feed and drain "
                                  "away, have an extinguisher at the first start.",
                                  fmt::join(hot, ", ")));
  }
  return lines;
}

void put_metal(Json& speed, const SpeedResult& result) {
  Json& j = speed["metal"];
  put_number(j, "heat_in_W", result.metal.heat_in);
  put_number(j, "heat_out_W", result.metal.heat_out);
  j["pieces"] = Json::array();
  for (const PieceFigures& p : result.metal.pieces) j["pieces"].push_back(piece_json(p));
  j["runners"] = Json::array();
  for (const RunnerFigures& r : result.metal.runners) j["runners"].push_back(runner_json(r));
  if (result.warm_up) speed["warm_up"] = warm_up_json(*result.warm_up);
}

}  // namespace pulsewright
