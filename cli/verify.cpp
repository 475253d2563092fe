// The verb verify: every check against published figures, as a table.

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <iostream>
#include <limits>
#include <memory>
#include <nlohmann/json.hpp>

#include "cli/interrupt.hpp"
#include "cli/verb.hpp"
#include "shared/json.hpp"
#include "tests/verification/all_checks.hpp"

namespace pulsewright {
namespace {

struct VerifyOptions {
  bool json = false, all = false;
};

std::string got_text(double got) { return fmt::format("{:.6g}", got); }

double distance(const Check& c) {
  if (!holds(c)) return std::numeric_limits<double>::infinity();
  if (c.band) return 0;
  const double width = c.relative ? c.tolerance * std::abs(c.expected) : c.tolerance;
  return width > 0 ? std::abs(c.got - c.expected) / width : 0;
}

/// Rows of a published table that hold are told as one, unless all are asked for: the one furthest out stands for them.
struct Group {
  const Check* shown;
  int count = 1;
};

std::vector<Group> grouped(const std::vector<Check>& checks, bool all) {
  std::vector<Group> groups;
  for (const Check& check : checks) {
    const auto same = [&](const Group& g) {
      return g.shown->name == check.name && g.shown->group == check.group && g.shown->source == check.source &&
             holds(*g.shown);
    };
    const auto found = all || !holds(check) ? groups.end() : std::ranges::find_if(groups, same);
    if (found == groups.end()) {
      groups.push_back({&check});
      continue;
    }
    if (distance(check) > distance(*found->shown)) found->shown = &check;
    ++found->count;
  }
  std::vector<std::string> sources;
  for (const Group& g : groups)
    if (std::ranges::find(sources, g.shown->source) == sources.end()) sources.push_back(g.shown->source);
  std::ranges::stable_sort(
      groups, {}, [&](const Group& g) { return std::ranges::find(sources, g.shown->source) - sources.begin(); });
  return groups;
}

std::string name_of(const Group& group) {
  const Check& c = *group.shown;
  std::string name = "  " + c.group + ": " + c.name;
  if (!c.at.empty())
    name += group.count > 1 ? fmt::format(" [furthest of {}: {}]", group.count, c.at) : " (" + c.at + ")";
  return name;
}

/// Under each source its checks: what, expected, got.
std::string verify_text(const std::vector<Group>& groups) {
  constexpr std::size_t widest = 96;  // of a check's name; longer ones push their row out
  std::string text;
  std::size_t name_width = 0, expected_width = 0;
  for (const Group& g : groups) {
    name_width = std::min(widest, std::max(name_width, name_of(g).size()));
    expected_width = std::max(expected_width, expected_text(*g.shown).size());
  }
  text += fmt::format("{:{}}  {:>{}}  {:>12}\n", "source and check", name_width, "expected", expected_width, "got");
  const std::string* source = nullptr;
  for (const Group& g : groups) {
    if (!source || *source != g.shown->source) text += "\n" + g.shown->source + "\n";
    source = &g.shown->source;
    text += fmt::format("{:{}}  {:>{}}  {:>12}  {}\n", name_of(g), name_width, expected_text(*g.shown), expected_width,
                        got_text(g.shown->got), holds(*g.shown) ? "ok" : "FAILED");
  }
  return text;
}

Json check_json(const Check& c) {
  Json j{{"check", c.group + ": " + c.name}, {"at", c.at},       {"source", c.source}, {"expected", expected_text(c)},
         {"why_this_wide", c.reason},        {"holds", holds(c)}};
  put_number(j, "got", std::isfinite(c.got) ? std::optional(c.got) : std::nullopt, "the check could not be computed");
  return j;
}

int verify(const VerifyOptions& options) {
  std::vector<Check> checks;
  for (const CheckSet& set : all_checks()) {
    stop_if_interrupted();
    if (!options.json) std::cerr << set.name << '\n';
    const std::vector<Check> some = run_checks(set);
    checks.insert(checks.end(), some.begin(), some.end());
  }
  const auto failed = std::ranges::count_if(checks, [](const Check& c) { return !holds(c); });
  if (options.json) {
    Json j = Json::array();
    for (const Check& check : checks) j.push_back(check_json(check));
    std::cout << json_text(j);
  } else {
    std::cout << verify_text(grouped(checks, options.all));
    std::cout << fmt::format("\n{} checks, {} failed\n", checks.size(), failed);
  }
  return failed == 0 ? ExitCode::done : ExitCode::internal;
}

}  // namespace

std::function<int()> set_up_verify(CLI::App& verb) {
  auto options = std::make_shared<VerifyOptions>();
  verb.add_flag("--all", options->all, "every row of every table, not one for each");
  verb.add_flag("--json", options->json, "print JSON");
  return [options] { return verify(*options); };
}

}  // namespace pulsewright
