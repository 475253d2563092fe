#include "models/lift_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

#include "models/valve_lift.hpp"
#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr std::string_view heading = "crank_deg,lift_mm";
constexpr std::size_t fewest_points = 5, most_points = 5000;
constexpr double highest_lift = 0.05;  // m

[[noreturn]] void refuse(const std::string& what) {
  throw Error(
      ErrorKind::case_file, what, {},
      "crank angle after the dead centre between exhaust and intake, and lift, from one side of the lift to the "
      "other");
}

double number(std::string_view field, const std::string& place) {
  field = trimmed(field);
  double value = 0;
  const auto [end, fault] = std::from_chars(field.data(), field.data() + field.size(), value);
  if (fault != std::errc() || end != field.data() + field.size() || !std::isfinite(value))
    refuse(place + ": " + in_quotes(field) + " is not a number");
  return value;
}

LiftPoint row(std::string_view line, const std::string& place) {
  const auto comma = line.find(',');
  if (comma == std::string_view::npos) refuse(place + ": " + in_quotes(line) + " is not two values");
  return {CrankAngle::from_degrees(number(line.substr(0, comma), place)), 1e-3 * number(line.substr(comma + 1), place)};
}

}  // namespace

void check_lift_table(const std::vector<LiftPoint>& table) {
  const auto mm = [](double lift) { return fmt::format("{:.4g} mm", lift * 1e3); };
  if (table.size() < fewest_points || table.size() > most_points)
    refuse(fmt::format("a lift table has {} to {} points, not {}", fewest_points, most_points, table.size()));
  double highest = 0;
  for (std::size_t i = 0; i < table.size(); ++i) {
    const auto& [angle, lift] = table[i];
    if (!(lift >= 0 && lift <= highest_lift)) refuse("a lift of " + mm(lift) + " is not between 0 and 50 mm");
    if (i > 0 && !(angle > table[i - 1].angle))
      refuse(fmt::format("angles of a lift table rise, but {:.4g} deg follows {:.4g} deg", angle.degrees(),
                         table[i - 1].angle.degrees()));
    highest = std::max(highest, lift);
  }
  if (!(table.back().angle.radians - table.front().angle.radians < cycle_angle))
    refuse("a lift table covers less than 720 degrees");
  for (const LiftPoint& end : {table.front(), table.back()})
    if (end.lift > open_lift) refuse("a lift table begins and ends at 0.1 mm or less, not at " + mm(end.lift));
  if (!(highest > open_lift)) refuse("the valve's lift must be above 0.1 mm");
}

std::vector<LiftPoint> parse_lift_table(const std::string& text, const std::string& name) {
  std::vector<LiftPoint> points;
  std::istringstream lines(text);
  bool headed = false;
  int count = 0;
  for (std::string line; std::getline(lines, line);) {
    const std::string place = name + ":" + std::to_string(++count);
    const std::string_view words = trimmed(line);
    if (words.empty() || words.front() == '#') continue;
    if (!headed && words != heading)
      refuse(place + ": the heading is " + in_quotes(words) + ", not " + in_quotes(heading));
    if (headed) points.push_back(row(words, place));
    headed = true;
  }
  check_lift_table(points);
  return points;
}

}  // namespace pulsewright
