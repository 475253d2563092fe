#pragma once
// The networks that start draws: which cylinder's primary goes where, and what lies between there and the turbine.

#include <vector>

#include "models/arrangement.hpp"
#include "models/case_block.hpp"

namespace pulsewright {

/// What the layouts are drawn from.
struct LayoutOrder {
  std::string manifold;
  const Arrangement* arrangement;
  double bore;           // of the cylinders, m: a log's ports stand 1.1 of it apart
  std::string tube;      // of the primaries, as bought
  std::string tube_why;  // comment behind it
  std::string length;    // of the primaries, empty: assumed
};

bool is_divided(std::string_view manifold);

/// [each_primary], [[primary]], [[joint]], [[duct]] and [[wastegate]] of the layout.
std::vector<CaseBlock> layout_blocks(const LayoutOrder& order);

}  // namespace pulsewright
