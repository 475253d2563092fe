#include "models/arrangement.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "shared/error.hpp"

namespace pulsewright {

std::span<const Arrangement> arrangements() {
  static const std::vector<Arrangement> table{
      {"single", {1}, {0}},
      {"inline 2", {1, 2}, {0, 0}},
      {"inline 2, 270 deg crank", {1, 2}, {0, 0}, {0, 270}},
      {"inline 3", {1, 2, 3}, {0, 0, 0}},
      {"inline 4", {1, 3, 4, 2}, {0, 0, 0, 0}},
      {"inline 4, cross-plane", {1, 3, 2, 4}, {0, 0, 0, 0}, {0, 270, 450, 540}},
      {"inline 5", {1, 2, 4, 5, 3}, {0, 0, 0, 0, 0}},
      {"inline 6", {1, 5, 3, 6, 2, 4}, {0, 0, 0, 0, 0, 0}},
      {"inline 8", {1, 6, 2, 5, 8, 3, 7, 4}, {0, 0, 0, 0, 0, 0, 0, 0}},
      {"boxer 2", {1, 2}, {0, 1}},
      {"boxer 4", {1, 3, 2, 4}, {0, 1, 0, 1}},  // 1 and 3 on one side
      {"boxer 6", {1, 6, 2, 4, 3, 5}, {0, 0, 0, 1, 1, 1}},
      {"vee 2", {1, 2}, {0, 1}, {0, 270}},                // 90 degrees, one crank pin
      {"vee 6", {1, 2, 3, 4, 5, 6}, {0, 1, 0, 1, 0, 1}},  // odd numbers on one bank
      {"vee 6, uneven",
       {1, 6, 5, 4, 3, 2},
       {0, 1, 0, 1, 0, 1},
       {0, 90, 240, 330, 480, 570}},                                             // 90 degrees, shared pins
      {"vee 8", {1, 8, 4, 3, 6, 5, 7, 2}, {0, 1, 0, 1, 0, 1, 0, 1}},             // cross-plane: uneven on each bank
      {"vee 8 by bank", {1, 5, 4, 2, 6, 3, 7, 8}, {0, 0, 0, 0, 1, 1, 1, 1}},     // cross-plane, 1 to 4 on one bank
      {"vee 8 flat crank", {1, 2, 5, 6, 7, 8, 3, 4}, {0, 1, 0, 1, 0, 1, 0, 1}},  // even on each bank
      {"vee 10", {1, 6, 5, 10, 2, 7, 3, 8, 4, 9}, {0, 0, 0, 0, 0, 1, 1, 1, 1, 1}},
      {"vee 12", {1, 7, 5, 11, 3, 9, 6, 12, 2, 8, 4, 10}, {0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1}},
  };
  return table;
}

const Arrangement* find_arrangement(std::string_view name) {
  const auto table = arrangements();
  const auto row = std::find_if(table.begin(), table.end(), [&](const Arrangement& a) { return a.name == name; });
  return row == table.end() ? nullptr : &*row;
}

std::vector<double> firing_degrees(std::span<const int> order, std::span<const double> at_turn) {
  const auto count = order.size();
  std::vector<double> at(count, -1);
  for (std::size_t turn = 0; turn < count; ++turn) {
    const int number = order[turn];
    if (number < 1 || static_cast<std::size_t>(number) > count || at[static_cast<std::size_t>(number) - 1] >= 0)
      throw Error(ErrorKind::case_file,
                  fmt::format("firing_order of {} cylinders must name each of 1 to {} once", count, count));
    const double even = 720.0 * static_cast<double>(turn) / static_cast<double>(count);
    at[static_cast<std::size_t>(number) - 1] = at_turn.empty() ? even : at_turn[turn];
  }
  const double first = at.empty() ? 0 : at[0];
  for (double& angle : at) angle = angle < first ? angle - first + 720 : angle - first;
  return at;
}

std::vector<double> even_firing_degrees(std::span<const int> order) { return firing_degrees(order, {}); }

std::vector<double> firing_gaps(std::vector<double> at) {
  std::ranges::sort(at);
  std::vector<double> gaps;
  for (std::size_t i = 0; i < at.size(); ++i)
    gaps.push_back(i + 1 < at.size() ? at[i + 1] - at[i] : at[0] + 720 - at[i]);
  return gaps;
}

}  // namespace pulsewright
