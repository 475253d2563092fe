#pragma once
// What run and compare both take on top of a case: speeds and cell length.

#include <string>

#include "cli/loaded_case.hpp"

namespace CLI {
class App;
}

namespace pulsewright {

inline constexpr double quick_cell = 10e-3;  // of --quick, m

struct RunOptions {
  std::string rpm, cell;  // as typed; empty: the case's
  bool quick = false;

  /// Throws Error (usage).
  CaseOptions on_top() const;
};

/// --rpm, --cell, --quick.
void add_run_options(CLI::App& verb, RunOptions& options);

}  // namespace pulsewright
