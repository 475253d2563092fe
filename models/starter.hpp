#pragma once
// A first case to edit: what `start` writes from the few things that the fabricator knows.

#include <optional>
#include <string>
#include <vector>

#include "shared/case_table.hpp"

namespace pulsewright {

struct StarterOptions {
  std::string title = "My manifold";
  int cylinders = 4;
  double bore = 0.086, stroke = 0.086;  // m
  double redline = 7000;                // revolutions per minute
  double boost_gauge = 1e5;             // Pa
  std::string manifold = "4-1";
  std::optional<std::string> tube;  // as bought; else the stock pipe next above the port
};

/// The layouts that start knows: what it takes for --manifold.
const std::vector<std::string>& starter_manifolds();

/// A commented case that reads and runs. Throws Error (usage) for values or a layout that cannot be, naming both.
std::string starter_case(const StarterOptions& options);

}  // namespace pulsewright
