#include "models/arrangement.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "shared/error.hpp"

namespace pulsewright {

std::span<const Arrangement> arrangements() {
  static const std::array<Arrangement, 12> table{{
      {"single", {1}, {0}},
      {"inline 2", {1, 2}, {0, 0}},
      {"inline 3", {1, 2, 3}, {0, 0, 0}},
      {"inline 4", {1, 3, 4, 2}, {0, 0, 0, 0}},
      {"inline 5", {1, 2, 4, 5, 3}, {0, 0, 0, 0, 0}},
      {"inline 6", {1, 5, 3, 6, 2, 4}, {0, 0, 0, 0, 0, 0}},
      {"inline 8", {1, 6, 2, 5, 8, 3, 7, 4}, {0, 0, 0, 0, 0, 0, 0, 0}},
      {"boxer 4", {1, 3, 2, 4}, {0, 1, 0, 1}},  // 1 and 3 on one side
      {"boxer 6", {1, 6, 2, 4, 3, 5}, {0, 0, 0, 1, 1, 1}},
      {"vee 6", {1, 2, 3, 4, 5, 6}, {0, 1, 0, 1, 0, 1}},  // odd numbers on one bank
      {"vee 8", {1, 8, 4, 3, 6, 5, 7, 2}, {0, 1, 0, 1, 0, 1, 0, 1}},
      {"vee 8 flat crank", {1, 2, 5, 6, 7, 8, 3, 4}, {0, 1, 0, 1, 0, 1, 0, 1}},
  }};
  return table;
}

const Arrangement* find_arrangement(std::string_view name) {
  const auto table = arrangements();
  const auto row = std::find_if(table.begin(), table.end(), [&](const Arrangement& a) { return a.name == name; });
  return row == table.end() ? nullptr : &*row;
}

std::vector<double> even_firing_degrees(std::span<const int> order) {
  const auto count = order.size();
  std::vector<double> at(count, -1);
  for (std::size_t turn = 0; turn < count; ++turn) {
    const int number = order[turn];
    if (number < 1 || static_cast<std::size_t>(number) > count || at[static_cast<std::size_t>(number) - 1] >= 0)
      throw Error(ErrorKind::case_file,
                  fmt::format("firing_order of {} cylinders must name each of 1 to {} once", count, count));
    at[static_cast<std::size_t>(number) - 1] = 720.0 * static_cast<double>(turn) / static_cast<double>(count);
  }
  const double first = at.empty() ? 0 : at[0];
  for (double& angle : at) angle = angle < first ? angle - first + 720 : angle - first;
  return at;
}

}  // namespace pulsewright
