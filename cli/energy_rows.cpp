#include "cli/energy_rows.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

using Value = std::optional<double>;

/// Per cent of the fuel's heat; none without fuel.
Value share(const SpeedResult& s, double joules) {
  return s.energy.fuel > 0 ? Value(100 * joules / s.energy.fuel) : Value{};
}

Value crank(const SpeedResult& s, double) { return share(s, s.energy.brake_work()); }
Value friction(const SpeedResult& s, double) { return share(s, s.energy.friction_work); }
Value cylinder_walls(const SpeedResult& s, double) { return share(s, s.energy.cylinder_wall_heat); }
Value pipe_walls(const SpeedResult& s, double) { return share(s, s.energy.duct_wall_heat); }
Value turbine(const SpeedResult& s, double) { return share(s, s.energy.turbine_work); }
Value exhaust(const SpeedResult& s, double) { return share(s, s.energy.exhaust_heat); }
Value unburned(const SpeedResult& s, double) { return share(s, s.energy.unburned); }
Value pumping(const SpeedResult& s, double) { return share(s, s.energy.pumping_work); }
Value gross(const SpeedResult& s, double) { return share(s, s.energy.gross_work); }

struct Part {
  const char* name;
  Value (*value)(const SpeedResult&, double);
  double sign = 1;  // of its share in the work at the crank
};
const std::vector<Part> of_the_work = {
    {"changing the gas", pumping}, {"compression and expansion", gross}, {"friction", friction, -1}};
const std::vector<Part> elsewhere = {{"exhaust gas", exhaust},
                                     {"turbine", turbine},
                                     {"cylinder walls", cylinder_walls},
                                     {"ports and pipes", pipe_walls},
                                     {"unburned", unburned}};

/// "changing the gas -1.8, friction -0.1": second less first, in points, the largest first; what rounds to nothing is left out.
std::string points(const std::vector<Part>& parts, const SpeedResult& first, const SpeedResult& second) {
  constexpr double shown = 0.05;
  std::vector<std::pair<double, std::string>> list;
  for (const Part& part : parts) {
    const double by = part.sign * (part.value(second, 0).value_or(0) - part.value(first, 0).value_or(0));
    if (std::abs(by) >= shown) list.emplace_back(by, fmt::format("{} {:+.1f}", part.name, by));
  }
  std::ranges::stable_sort(list, {}, [](const auto& item) { return -std::abs(item.first); });
  std::vector<std::string> texts;
  for (const auto& item : list) texts.push_back(item.second);
  return fmt::format("{}", fmt::join(texts, ", "));
}

double per_cent(double first, double second) { return 100 * (second - first) / first; }

std::string more_or_less(double by) { return fmt::format("{:.1f} % {}", std::abs(by), by > 0 ? "more" : "less"); }

std::string fuel_text(double by) {
  constexpr double shown = 0.05;
  return std::abs(by) < shown ? "as much fuel" : more_or_less(by) + " fuel";
}

std::string why_sentence(const std::string& letter, const SpeedResult& first, const SpeedResult& second) {
  std::string text = fmt::format(
      "{} makes {} torque at {:.0f} rpm: it burns {} and turns {:.1f} instead of {:.1f} % of its heat into work",
      letter, more_or_less(per_cent(first.torque, second.torque)), first.rpm,
      fuel_text(per_cent(first.energy.fuel, second.energy.fuel)), crank(second, 0).value_or(0),
      crank(first, 0).value_or(0));
  const std::string work = points(of_the_work, first, second), rest = points(elsewhere, first, second);
  if (!work.empty()) text += " (points: " + work + ")";
  if (!rest.empty()) text += "; of the rest: " + rest;
  return text;
}

constexpr double alike = 1;  // per cent of torque, as in figure_rows()

}  // namespace

const std::vector<FigureRow>& energy_rows() {
  static const std::vector<FigureRow> rows = {
      {"work at the crank, %", 1, crank},       {"friction of the engine, %", 1, friction},
      {"cylinder walls, %", 1, cylinder_walls}, {"walls of ports and pipes, %", 1, pipe_walls},
      {"taken by the turbine, %", 1, turbine},  {"in the exhaust gas, %", 1, exhaust},
      {"not burned, %", 1, unburned},           {"of the work: changing the gas, %", 1, pumping, true}};
  return rows;
}

std::vector<std::string> why_sentences(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (std::size_t k = 1; k < layouts.size(); ++k) {
    const SpeedResult *first = nullptr, *second = nullptr;
    double most = alike;
    for (const SpeedResult& a : layouts.front().result.speeds) {
      const SpeedResult* b = layouts[k].at_rpm(a.rpm);
      if (!b || !(a.torque > 0) || !(a.energy.fuel > 0) || std::abs(per_cent(a.torque, b->torque)) <= most) continue;
      most = std::abs(per_cent(a.torque, b->torque));
      first = &a, second = b;
    }
    if (first) lines.push_back(why_sentence(layouts[k].letter, *first, *second));
  }
  return lines;
}

}  // namespace pulsewright
