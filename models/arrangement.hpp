#pragma once
// Arrangements of cylinders and their common firing orders. A case may overrule either.

#include <span>
#include <string_view>
#include <vector>

namespace pulsewright {

struct Arrangement {
  std::string_view name;          // as a case says it: "inline 4"
  std::vector<int> firing_order;  // cylinder numbers, from 1
  std::vector<int> bank;          // of cylinder 1, 2, ...: 0 or 1
};

/// The visible table. Common practice, no source.
std::span<const Arrangement> arrangements();

/// The row of that name; nullptr where there is none.
const Arrangement* find_arrangement(std::string_view name);

/// Crank angle, in degrees after cylinder 1 of the order, at which each cylinder fires: entry 0 is cylinder 1. Even
/// intervals. Throws Error (case file) when the order does not name every cylinder once.
std::vector<double> even_firing_degrees(std::span<const int> firing_order);

}  // namespace pulsewright
