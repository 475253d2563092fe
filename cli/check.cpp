// The verb check: reads a case and shows what it draws and what is assumed; runs nothing.

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <numbers>

#include "cli/loaded_case.hpp"
#include "cli/result_json.hpp"
#include "cli/verb.hpp"
#include "models/describe.hpp"

namespace pulsewright {
namespace {

struct CheckOptions {
  std::string file;
  std::vector<std::string> tries;
  bool json = false;
};

Json primary_json(const PrimaryLine& p) {
  Json j{{"cylinder", p.cylinder}, {"name", p.name}, {"ends_at", p.ends_at}};
  put_number(j, "flange_to_end_mm", 1e3 * p.flange_to_end);
  put_number(j, "valve_to_end_mm", 1e3 * p.valve_to_end);
  put_number(j, "volume_cm3", 1e6 * p.volume);
  put_number(j, "first_bore_mm", 1e3 * p.first_bore);
  put_number(j, "last_bore_mm", 1e3 * p.last_bore);
  put_number(j, "bends_deg", p.bends * 180 / std::numbers::pi);
  return j;
}

Json pair_json(const FiringPair& p) {
  Json j{{"blows", p.blows}, {"hears", p.hears}, {"one_scroll", p.one_scroll}};
  put_number(j, "fires_after_deg", p.fires_after * 180 / std::numbers::pi);
  put_number(j, "into_overlap_deg", p.into_overlap * 180 / std::numbers::pi);
  return j;
}

Json check_json(const LoadedCase& loaded) {
  Json j = case_json(loaded, loaded.engine ? loaded.engine->assumed : loaded.rig->assumed);
  j["notes"] = loaded.engine ? loaded.engine->plan.notes : loaded.rig->setup.plan.notes;
  if (!loaded.engine) return j;
  put_number(j, "manifold_volume_cm3", 1e6 * manifold_volume(*loaded.engine));
  j["primaries"] = Json::array();
  for (const PrimaryLine& p : primary_lines(*loaded.engine)) j["primaries"].push_back(primary_json(p));
  j["firing_pairs"] = Json::array();
  for (const FiringPair& p : firing_pairs(*loaded.engine)) j["firing_pairs"].push_back(pair_json(p));
  return j;
}

int check(const CheckOptions& options) {
  CaseOptions on_top;
  on_top.tries = options.tries;
  const LoadedCase loaded = load_case(options.file, on_top);
  if (options.json)
    std::cout << json_text(check_json(loaded));
  else
    std::cout << (loaded.engine ? describe(*loaded.engine) : describe(*loaded.rig));
  return ExitCode::done;
}

}  // namespace

std::function<int()> set_up_check(CLI::App& verb) {
  auto options = std::make_shared<CheckOptions>();
  verb.add_option("case", options->file, "case file (TOML)")->required();
  verb.add_option("--try", options->tries, "with this value changed; may be repeated")->allow_extra_args(false);
  verb.add_flag("--json", options->json, "print JSON");
  return [options] { return check(*options); };
}

}  // namespace pulsewright
