// The verb compare: several layouts of an engine side by side.

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>

#include "cli/boost_text.hpp"
#include "cli/energy_rows.hpp"
#include "cli/layout_text.hpp"
#include "cli/outcome.hpp"
#include "cli/page.hpp"
#include "cli/result_file.hpp"
#include "cli/result_json.hpp"
#include "cli/rig_text.hpp"
#include "cli/run_options.hpp"
#include "cli/verb.hpp"
#include "models/side_by_side.hpp"
#include "shared/error.hpp"
#include "solver/fma_peak.hpp"

namespace pulsewright {
namespace {

constexpr std::size_t most_layouts = 8;

struct CompareOptions {
  std::vector<std::string> files, tries;
  RunOptions run;
  OutputOptions output;
};

std::string speeds_of(const LoadedCase& loaded) { return fmt::format("{}", fmt::join(loaded.engine->run.rpm, ", ")); }

/// Figures stand side by side speed by speed: every case must run the same ones.
void check_speeds(const std::vector<LoadedCase>& cases) {
  for (const LoadedCase& loaded : cases)
    if (loaded.engine->run.rpm != cases.front().engine->run.rpm)
      throw Error(ErrorKind::case_file,
                  fmt::format("the cases run different speeds: {} here, {} in {}", speeds_of(loaded),
                              speeds_of(cases.front()), cases.front().file),
                  loaded.file, "give the speeds to compare at: --rpm 3000,4500");
}

/// Every case as it stands; and one case once more for each --try.
std::vector<LoadedCase> load_layouts(const CompareOptions& options, const CaseOptions& on_top) {
  std::vector<LoadedCase> cases;
  for (const std::string& file : options.files) cases.push_back(load_case(file, on_top));
  for (const std::string& change : options.tries) {
    CaseOptions tried = on_top;
    tried.tries = {change};
    cases.push_back(load_case(options.files.front(), tried));
    std::cerr << idle_tries_text(cases.back());
  }
  for (const LoadedCase& loaded : cases)
    if (loaded.rig)
      throw Error(ErrorKind::usage, "compare takes engine cases, and this is a rig", loaded.file,
                  "run it: pulsewright run " + loaded.file);
  check_speeds(cases);
  for (LoadedCase& loaded : cases) share_silencer(*cases.front().engine, *loaded.engine);
  return cases;
}

void check_count(const CompareOptions& options) {
  const std::size_t count = options.files.size() + options.tries.size();
  if (!options.tries.empty() && options.files.size() != 1)
    throw Error(ErrorKind::usage, "--try changes one case, and " + std::to_string(options.files.size()) + " are named");
  if (count < 2)
    throw Error(ErrorKind::usage, "one layout alone compares with nothing", {},
                "name a second case, or change this one: --try 'each_primary.tube=\"NPS 1-1/2 sch 10S\"'");
  if (count > most_layouts)
    throw Error(ErrorKind::usage, std::to_string(count) + " layouts are too many for one page: at most 8");
}

Json crossings_json(const std::vector<Layout>& layouts) {
  Json list = Json::array();
  for (const Crossing& c : crossings(layouts)) {
    Json j{{"figure", c.row->words->name}, {"first", c.first}, {"second", c.second}};
    put_number(j, "rpm", c.rpm);
    j["less_below"] = c.second_less_below ? c.second : c.first;
    j["less_above"] = c.second_less_below ? c.first : c.second;
    list.push_back(std::move(j));
  }
  return list;
}

Json compare_json(const std::vector<Layout>& layouts, std::optional<double> peak) {
  Json j;
  j["held_equal"] = held_equal(layouts);
  j["not_held_equal"] = not_equal(layouts);
  j["crossings"] = crossings_json(layouts);
  j["why"] = why_sentences(layouts);
  j["different"] = differences(layouts);
  j["boost"] = boost_sentence(layouts);
  j["boost_lines"] = boost_lines(layouts);
  j["layouts"] = Json::array();
  for (const Layout& l : layouts) {
    Json layout = engine_json(l.loaded, l.result, peak);
    layout["letter"] = l.letter;
    layout["label"] = l.loaded.label;
    j["layouts"].push_back(std::move(layout));
  }
  return j;
}

int compare(const CompareOptions& options) {
  check_count(options);
  const CaseOptions on_top = options.run.on_top();
  options.output.check();
  const std::vector<Layout> layouts = run_layouts(load_layouts(options, on_top), options.output.timing);
  if (!options.output.out.empty()) write_comparison_file(options.output.out, layouts, options.output.force);
  if (!options.output.report.empty()) write_page(options.output.report, layouts, options.output.force);
  const std::optional<double> peak = options.output.timing ? std::optional(measure_fma_peak()) : std::nullopt;
  if (options.output.json)
    std::cout << json_text(compare_json(layouts, peak));
  else
    std::cout << layouts_text(layouts);
  if (peak && !options.output.json)
    for (const Layout& l : layouts) std::cout << timing_text(l.result, *peak);
  const auto unsettled = unsettled_text(layouts);
  for (const std::string& line : unsettled) std::cerr << line << '\n';
  return unsettled.empty() ? ExitCode::done : ExitCode::not_physical;
}

}  // namespace

std::function<int()> set_up_compare(CLI::App& verb) {
  auto options = std::make_shared<CompareOptions>();
  verb.add_option("cases", options->files, "case files (TOML)")->required();
  verb.add_option("--try", options->tries, "one case once more with this value changed; may be repeated")
      ->allow_extra_args(false);
  add_run_options(verb, options->run);
  add_output_options(verb, options->output);
  return [options] { return compare(*options); };
}

}  // namespace pulsewright
