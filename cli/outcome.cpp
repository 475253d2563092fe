#include "cli/outcome.hpp"

#include "cli/progress.hpp"
#include "models/side_by_side.hpp"
#include "shared/files.hpp"

namespace pulsewright {

void OutputOptions::check() const {
  if (!out.empty()) check_writable(out, force);
  if (!report.empty()) check_writable(report, force);
}

std::vector<Layout> run_layouts(std::vector<LoadedCase> cases, bool measure_time) {
  std::vector<const EngineCase*> engines;
  for (const LoadedCase& loaded : cases) engines.push_back(&*loaded.engine);
  ProgressLine progress("running");
  auto results = run_engines(engines, {.threads = measure_time ? 1 : 0, .measure_time = measure_time}, [&](double share) { return progress(share); });
  std::vector<Layout> layouts;
  for (std::size_t i = 0; i < cases.size(); ++i)
    layouts.push_back({std::string(1, static_cast<char>('A' + i)), std::move(cases[i]), std::move(results[i])});
  return layouts;
}

}  // namespace pulsewright
