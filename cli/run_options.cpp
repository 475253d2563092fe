#include "cli/run_options.hpp"

#include <CLI/CLI.hpp>

#include "cli/option_value.hpp"

namespace pulsewright {

CaseOptions RunOptions::on_top() const {
  CaseOptions on_top;
  if (!rpm.empty()) on_top.rpm = parse_rpm(rpm);
  if (quick) on_top.cell = quick_cell;
  if (!cell.empty()) on_top.cell = parse_cell(cell);
  return on_top;
}

void add_run_options(CLI::App& verb, RunOptions& options) {
  verb.add_option("--rpm", options.rpm, "other speeds than the case's: 3000,4500");
  verb.add_option("--cell", options.cell, "another cell length than the case's: \"5 mm\"");
  verb.add_flag("--quick", options.quick, "10 mm cells: a first look");
}

}  // namespace pulsewright
