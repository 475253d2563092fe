#pragma once
// Tube that can be bought: stock pipe by nominal size and schedule, or tube by outside diameter and wall.

#include <span>
#include <string>
#include <string_view>

namespace pulsewright {

/// A round tube. bore = outside_diameter - 2 wall.
struct Tube {
  std::string name;         // as bought: "NPS 1-1/4 sch 10S", "42.4 mm OD x 2 mm"
  double outside_diameter;  // m
  double wall;              // m

  double bore() const { return outside_diameter - 2 * wall; }
};

/// One row of the pipe table.
struct StockPipe {
  std::string_view nominal_size;  // "1-1/4": a name, not a measure
  std::string_view schedule;      // "10S"
  double outside_diameter_mm, wall_mm;

  Tube tube() const;
};

/// NPS 1/2 to 4, schedules 5S, 10S, 40S, by size and then by wall.
std::span<const StockPipe> stock_pipes();

/// The stock pipe whose bore is nearest above the given bore (m). Throws Error (case) when none is as large.
const StockPipe& stock_pipe_above(double bore);

/// Reads "NPS 1-1/4 sch 10S", "42.4 mm OD x 2 mm", "1.5 in OD x 0.065 in". A bare size ("1-1/2") is refused, naming
/// both things that it may mean. Throws Error (case): says what was found and what is allowed.
Tube parse_tube(std::string_view text);

}  // namespace pulsewright
