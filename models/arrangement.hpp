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
  std::vector<double> at{};       // degrees at which the first, second, ... of the order fires; empty: evenly
};

/// The visible table. Common practice, no source.
std::span<const Arrangement> arrangements();

/// The row of that name; nullptr where there is none.
const Arrangement* find_arrangement(std::string_view name);

/// Crank angle, in degrees after cylinder 1, at which each cylinder fires: entry 0 is cylinder 1. `at`: when the first,
/// second, ... of the order fires; empty: at even intervals. Throws Error (case file) when the order does not name every
/// cylinder once.
std::vector<double> firing_degrees(std::span<const int> firing_order, std::span<const double> at);
std::vector<double> even_firing_degrees(std::span<const int> firing_order);

/// Degrees from each firing to the next round the cycle, for cylinders that fire at these angles (those of a bank).
std::vector<double> firing_gaps(std::vector<double> at_degrees);

}  // namespace pulsewright
