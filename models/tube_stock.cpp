#include "models/tube_stock.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

// Source: ASME B36.19M, stainless steel pipe (5S, 10S, 40S), millimetres as the standard states them; second hand, from
// an open pipe library; the inch sizes known from the trade agree within rounding. Mill tolerance on the wall is -12.5
// %.
constexpr std::array<StockPipe, 30> pipes{{
    {"1/2", "5S", 21.3, 1.65},    {"1/2", "10S", 21.3, 2.11},    {"1/2", "40S", 21.3, 2.77},
    {"3/4", "5S", 26.7, 1.65},    {"3/4", "10S", 26.7, 2.11},    {"3/4", "40S", 26.7, 2.87},
    {"1", "5S", 33.4, 1.65},      {"1", "10S", 33.4, 2.77},      {"1", "40S", 33.4, 3.38},
    {"1-1/4", "5S", 42.2, 1.65},  {"1-1/4", "10S", 42.2, 2.77},  {"1-1/4", "40S", 42.2, 3.56},
    {"1-1/2", "5S", 48.3, 1.65},  {"1-1/2", "10S", 48.3, 2.77},  {"1-1/2", "40S", 48.3, 3.68},
    {"2", "5S", 60.3, 1.65},      {"2", "10S", 60.3, 2.77},      {"2", "40S", 60.3, 3.91},
    {"2-1/2", "5S", 73.0, 2.11},  {"2-1/2", "10S", 73.0, 3.05},  {"2-1/2", "40S", 73.0, 5.16},
    {"3", "5S", 88.9, 2.11},      {"3", "10S", 88.9, 3.05},      {"3", "40S", 88.9, 5.49},
    {"3-1/2", "5S", 101.6, 2.11}, {"3-1/2", "10S", 101.6, 3.05}, {"3-1/2", "40S", 101.6, 5.74},
    {"4", "5S", 114.3, 2.11},     {"4", "10S", 114.3, 3.05},     {"4", "40S", 114.3, 6.02},
}};

constexpr const char* forms = "write \"NPS 1-1/4 sch 10S\", \"42.4 mm OD x 2 mm\" or \"1.5 in OD x 0.065 in\"";

[[noreturn]] void refuse(const std::string& what, const std::string& hint = forms) {
  throw Error(ErrorKind::case_file, what, {}, hint);
}

// "1 1/4" and "1-1/4" are the same name.
std::string size_name(std::string_view text) {
  std::string name(trimmed(text));
  std::replace(name.begin(), name.end(), ' ', '-');
  return name;
}

std::string listed_sizes() {
  std::vector<std::string> sizes;
  for (const StockPipe& pipe : pipes)
    if (sizes.empty() || sizes.back() != pipe.nominal_size) sizes.emplace_back(pipe.nominal_size);
  return listed(sizes);
}

// text: what stands behind "NPS", in lower case.
Tube parse_pipe(std::string_view text, std::string_view all) {
  const std::size_t at = text.find("sch");
  if (at == std::string_view::npos)
    refuse(fmt::format("{} names a pipe without its schedule", in_quotes(all)),
           "add the wall: \"sch 5S\", \"sch 10S\" or \"sch 40S\"");
  std::string_view schedule = text.substr(at + 3);
  if (schedule.starts_with("edule")) schedule.remove_prefix(5);
  if (schedule.starts_with(".")) schedule.remove_prefix(1);
  const std::string size = size_name(text.substr(0, at));
  std::string wall(trimmed(schedule));
  if (wall.ends_with("s")) wall.back() = 'S';
  const auto same_size = [&](const StockPipe& p) { return p.nominal_size == size; };
  const auto pipe =
      std::find_if(pipes.begin(), pipes.end(), [&](const StockPipe& p) { return same_size(p) && p.schedule == wall; });
  if (pipe != pipes.end()) return pipe->tube();
  if (std::none_of(pipes.begin(), pipes.end(), same_size))
    refuse(fmt::format("{} is no nominal pipe size; the table has NPS {}", in_quotes(size), listed_sizes()));
  refuse(fmt::format("{} is no schedule of the table for NPS {}; it has 5S, 10S and 40S", in_quotes(wall), size),
         "another wall: write outside diameter and wall, as \"48.3 mm OD x 3 mm\"");
}

// Both halves of "42.4 mm OD x 2 mm".
Tube parse_od_and_wall(std::string_view od_half, std::string_view wall_half, std::string_view all) {
  const double od = parse_quantity(trimmed(od_half), Dimension::length, "tube");
  const double wall = parse_quantity(trimmed(wall_half), Dimension::length, "tube");
  if (!(od > 0 && wall > 0)) refuse(fmt::format("{} needs an outside diameter and a wall above zero", in_quotes(all)));
  if (!(2 * wall < od))
    refuse(fmt::format("{} leaves no bore: twice the wall is {}, the outside diameter {}", in_quotes(all),
                       in_words(2 * wall, Dimension::length), in_words(od, Dimension::length)));
  return {std::string(all), od, wall};
}

// A number with nothing, or only a length unit, behind it: the trade uses it for two different tubes.
[[noreturn]] void refuse_bare_size(std::string_view all) {
  std::string size;
  try {
    size = size_name(all.substr(0, all.size() - leading_number(all).rest.size()));
  } catch (const Error&) {
    refuse(fmt::format("{} is not a tube", in_quotes(all)));
  }
  const auto pipe =
      std::find_if(pipes.begin(), pipes.end(), [&](const StockPipe& p) { return p.nominal_size == size; });
  if (pipe == pipes.end())
    refuse(fmt::format("{} gives one size of a tube; it takes the outside diameter and the wall", in_quotes(all)));
  refuse(fmt::format("{} may mean two tubes: pipe NPS {} ({} mm outside), or tube of {} in outside diameter",
                     in_quotes(all), size, pipe->outside_diameter_mm, size),
         fmt::format("write \"NPS {} sch 10S\" for pipe, or \"{} in OD x 0.065 in\" for tube", size, size));
}

}  // namespace

Tube StockPipe::tube() const {
  return {fmt::format("NPS {} sch {}", nominal_size, schedule), 1e-3 * outside_diameter_mm, 1e-3 * wall_mm};
}

std::span<const StockPipe> stock_pipes() { return pipes; }

const StockPipe& stock_pipe_above(double bore) {
  const StockPipe* best = nullptr;
  for (const StockPipe& pipe : pipes)
    if (pipe.tube().bore() >= bore && (!best || pipe.tube().bore() < best->tube().bore())) best = &pipe;
  if (!best)
    refuse(fmt::format("no stock pipe has a bore of {} or more; the largest is {}", in_words(bore, Dimension::length),
                       in_words(1e-3 * (114.3 - 2 * 2.11), Dimension::length)));
  return *best;
}

Tube parse_tube(std::string_view text) {
  const std::string_view all = trimmed(text);
  const std::string lower = lower_case(all);
  if (lower.starts_with("nps")) return parse_pipe(std::string_view(lower).substr(3), all);
  const auto [first, second] = split_by_x(all);
  if (second.empty()) refuse_bare_size(all);
  const std::string od_half = lower_case(first);
  const std::size_t od = od_half.find("od");
  if (od == std::string::npos)
    refuse(fmt::format("{} does not say that {} is the outside diameter", in_quotes(all), in_quotes(first)));
  return parse_od_and_wall(first.substr(0, od), second, all);
}

}  // namespace pulsewright
