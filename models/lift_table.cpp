#include "models/lift_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/valve_lift.hpp"
#include "shared/error.hpp"
#include "shared/plain_rows.hpp"

namespace pulsewright {
namespace {

constexpr std::string_view heading = "crank_deg,lift_mm";
constexpr std::size_t fewest_points = 5, most_points = 5000;
constexpr double highest_lift = 0.05;  // m

const std::string hint =
    "crank angle after the dead centre between exhaust and intake, and lift, from one side of the lift to the other";

[[noreturn]] void refuse(const std::string& what) { throw Error(ErrorKind::case_file, what, {}, hint); }

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
  for (const PlainRow& row : plain_rows(text, name, heading, hint))
    points.push_back({CrankAngle::from_degrees(row.values[0]), 1e-3 * row.values[1]});
  check_lift_table(points);
  return points;
}

}  // namespace pulsewright
