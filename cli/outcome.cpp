#include "cli/outcome.hpp"

#include <CLI/CLI.hpp>

#include "cli/progress.hpp"
#include "models/side_by_side.hpp"
#include "shared/error.hpp"
#include "shared/files.hpp"
#include "shared/words.hpp"

namespace pulsewright {

namespace {

namespace fs = std::filesystem;

/// A result never takes the place of a case, not even with --force.
void refuse_case_name(const std::string& path, const char* option) {
  if (fs::path(path).extension() == ".toml")
    throw Error(ErrorKind::usage, in_quotes(path) + " is the name of a case; a result would take its place", option,
                "give another name");
}

fs::path whole(const std::string& path) { return fs::weakly_canonical(fs::absolute(path)); }

}  // namespace

void OutputOptions::check() const {
  refuse_case_name(out, "--out");
  refuse_case_name(report, "--report");
  if (!out.empty() && !report.empty() && whole(out) == whole(report))
    throw Error(ErrorKind::usage, "--out and --report name one file: " + in_quotes(out));
  if (!out.empty()) check_writable(out, force);
  if (!report.empty()) check_writable(report, force);
}

void add_output_options(CLI::App& verb, OutputOptions& output) {
  verb.add_option("--out", output.out, "write everything to this HDF5 file");
  verb.add_option("--report", output.report, "write a page to this HTML file");
  verb.add_flag("--json", output.json, "print JSON instead of tables");
  verb.add_flag("--timing", output.timing, "say where the time goes (one core)");
  verb.add_flag("--force", output.force, "overwrite files that exist");
}

std::vector<Layout> run_layouts(std::vector<LoadedCase> cases, bool measure_time) {
  std::vector<const EngineCase*> engines;
  for (const LoadedCase& loaded : cases) engines.push_back(&*loaded.engine);
  ProgressLine progress("running");
  auto results = run_engines(engines, {.threads = measure_time ? 1 : 0, .measure_time = measure_time},
                             [&](double share) { return progress(share); });
  std::vector<Layout> layouts;
  for (std::size_t i = 0; i < cases.size(); ++i)
    layouts.push_back({std::string(1, static_cast<char>('A' + i)), std::move(cases[i]), std::move(results[i])});
  return layouts;
}

}  // namespace pulsewright
