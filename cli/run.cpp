// The verb run: one case, engine or rig.

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>

#include "cli/interrupt.hpp"
#include "cli/layout_text.hpp"
#include "cli/outcome.hpp"
#include "cli/page.hpp"
#include "cli/progress.hpp"
#include "cli/result_file.hpp"
#include "cli/result_json.hpp"
#include "cli/rig_text.hpp"
#include "cli/run_options.hpp"
#include "cli/verb.hpp"
#include "shared/error.hpp"
#include "solver/fma_peak.hpp"

namespace pulsewright {
namespace {

struct RunVerb {
  std::string file;
  RunOptions run;
  OutputOptions output;
};

int finish_engine(const RunVerb& options, LoadedCase loaded) {
  std::vector<LoadedCase> cases;
  cases.push_back(std::move(loaded));
  const std::vector<Layout> layouts = run_layouts(std::move(cases), options.output.timing);
  const Layout& layout = layouts.front();
  if (!options.output.out.empty())
    write_engine_file(options.output.out, layout.loaded, layout.result, options.output.force);
  if (!options.output.report.empty()) write_page(options.output.report, layouts, options.output.force);
  const std::optional<double> peak = options.output.timing ? std::optional(measure_fma_peak()) : std::nullopt;
  if (options.output.json)
    std::cout << json_text(engine_json(layout.loaded, layout.result, peak));
  else
    std::cout << layouts_text(layouts) << (peak ? timing_text(layout.result, *peak) : "");
  const auto unsettled = unsettled_text(layouts);
  for (const std::string& line : unsettled) std::cerr << line << '\n';
  return unsettled.empty() ? ExitCode::done : ExitCode::not_physical;
}

int finish_rig(const RunVerb& options, const LoadedCase& loaded) {
  if (!options.output.report.empty())
    throw Error(ErrorKind::usage, "a rig has no page yet", "--report",
                "write the gas with --out FILE.h5 and read it with trace");
  ProgressLine progress("running");
  const RigResult result = run_rig(loaded.rig->setup, [&](double share) { return progress(share); });
  if (!options.output.out.empty()) write_rig_file(options.output.out, loaded, result, options.output.force);
  const std::optional<double> peak = options.output.timing ? std::optional(measure_fma_peak()) : std::nullopt;
  if (options.output.json)
    std::cout << json_text(rig_json(loaded, result, peak));
  else
    std::cout << rig_text(loaded, result) << (peak ? timing_text(result.timing, *peak) : "");
  return ExitCode::done;
}

int run(const RunVerb& options) {
  const CaseOptions on_top = options.run.on_top();
  options.output.check();
  LoadedCase loaded = load_case(options.file, on_top);
  return loaded.rig ? finish_rig(options, loaded) : finish_engine(options, std::move(loaded));
}

}  // namespace

std::function<int()> set_up_run(CLI::App& verb) {
  auto options = std::make_shared<RunVerb>();
  verb.add_option("case", options->file, "case file (TOML)")->required();
  add_run_options(verb, options->run);
  add_output_options(verb, options->output);
  return [options] { return run(*options); };
}

}  // namespace pulsewright
