#pragma once
// How run and compare end: what they print, write and return.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "cli/layout.hpp"

namespace CLI {
class App;
}

namespace pulsewright {

struct OutputOptions {
  bool json = false, timing = false, force = false;
  std::string out, report;  // files; empty: none

  /// Throws Error before anything is computed: file if one could not be written, usage if both are one or one is a case.
  void check() const;
};

/// --out, --report, --json, --timing, --force.
void add_output_options(CLI::App& verb, OutputOptions& output);

/// Runs every speed of every layout, with progress. Letters are given here.
std::vector<Layout> run_layouts(std::vector<LoadedCase> cases, bool measure_time);

}  // namespace pulsewright
