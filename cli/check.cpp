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
#include "models/firing_pairs.hpp"
#include "models/tube_advice.hpp"

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
  put_number(j, "opens_before_overlap_ends_deg", p.opens_before_end * 180 / std::numbers::pi);
  put_number(j, "into_overlap_deg", p.into_overlap * 180 / std::numbers::pi);
  if (p.meet_at.empty())
    put_missing(j, "meet_at", "their pipes do not meet before the wheel");
  else
    j["meet_at"] = p.meet_at;
  return j;
}

Json parting_json(const Parting& p) {
  Json j{{"one", p.one}, {"other", p.other}};
  put_number(j, "fire_apart_deg", p.apart * 180 / std::numbers::pi);
  put_number(j, "worst_into_overlap_deg", p.worst * 180 / std::numbers::pi);
  put_number(j, "sum_into_overlap_deg", p.sum * 180 / std::numbers::pi);
  return j;
}

Json tube_json(const TubeChoice& t) {
  Json j{{"tube", t.tube.name}, {"reason", t.reason}};
  put_number(j, "bore_mm", 1e3 * t.tube.bore());
  put_number(j, "wall_mm", 1e3 * t.tube.wall);
  put_number(j, "gas_speed_m_s", t.gas_speed);
  return j;
}

/// Who shares pipe with whom, what that does at the valves, and which stock tubes are worth a try.
void put_advice(Json& j, const EngineCase& engine) {
  for (const char* list : {"pipe_groups", "firing_pairs", "partings", "tubes_to_try"}) j[list] = Json::array();
  for (const PipeGroup& g : pipe_groups(engine))
    j["pipe_groups"].push_back({{"cylinders", g.cylinders}, {"entries", g.entries}});
  for (const FiringPair& p : firing_pairs(engine)) j["firing_pairs"].push_back(pair_json(p));
  for (const Parting& p : partings(engine)) j["partings"].push_back(parting_json(p));
  put_number(j, "port_bore_mm", 1e3 * port_bore(engine.engine));
  for (const TubeChoice& t : tubes_to_try(engine.engine)) j["tubes_to_try"].push_back(tube_json(t));
}

Json check_json(const LoadedCase& loaded) {
  Json j = case_json(loaded, loaded.engine ? loaded.engine->assumed : loaded.rig->assumed);
  j["notes"] = loaded.engine ? loaded.engine->plan.notes : loaded.rig->setup.plan.notes;
  if (!loaded.engine) return j;
  put_number(j, "manifold_volume_cm3", 1e6 * manifold_volume(*loaded.engine));
  j["primaries"] = Json::array();
  for (const PrimaryLine& p : primary_lines(*loaded.engine)) j["primaries"].push_back(primary_json(p));
  put_advice(j, *loaded.engine);
  return j;
}

int check(const CheckOptions& options) {
  CaseOptions on_top;
  on_top.tries = options.tries;
  const LoadedCase loaded = load_case(options.file, on_top);
  std::cerr << idle_tries_text(loaded);
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
