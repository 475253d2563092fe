#include "models/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "shared/error.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

[[noreturn]] void unknown_name(const ManifoldPlan& plan, std::string_view name) {
  std::vector<std::string> known;
  for (const NamedStretch& stretch : plan.names)
    if (std::ranges::find(known, stretch.name) == known.end()) known.push_back(stretch.name);
  const std::string near = nearest_word(name, known);
  throw Error(ErrorKind::usage, "no duct is called " + in_quotes(name), {},
              near.empty() ? "ducts: " + listed(known) : "nearest: " + in_quotes(near));
}

}  // namespace

std::vector<NamedStretch> stretches(const ManifoldPlan& plan, std::string_view name) {
  std::vector<NamedStretch> found;
  std::ranges::copy_if(plan.names, std::back_inserter(found), [&](const NamedStretch& s) { return s.name == name; });
  std::ranges::sort(found, {}, &NamedStretch::name_from);
  return found;
}

PlanPlace locate(const ManifoldPlan& plan, std::string_view name, double distance) {
  const auto found = stretches(plan, name);
  if (found.empty()) unknown_name(plan, name);
  constexpr double rounding = 1e-9;  // m
  for (const NamedStretch& s : found)
    if (distance >= s.name_from - rounding && distance <= s.name_to + rounding) {
      const double along = std::clamp(distance, s.name_from, s.name_to) - s.name_from;
      return {s.duct, s.duct_at_from + (s.reversed ? -along : along), s.reversed};
    }
  throw Error(ErrorKind::usage, in_words(distance, Dimension::length) + " lies beyond " + in_quotes(name), {},
              "it is " + in_words(found.back().name_to, Dimension::length) + " long");
}

std::string no_spring_sentence(const GatePlan& gate) {
  if (gate.spring) return {};
  const std::string what = gate.no_spring.empty() ? "spring" : gate.no_spring;
  return fmt::format("The {} of gate {} {} not given: whether drive pressure opens it early is not computed.", what,
                     in_quotes(gate.name), what == "spring and diaphragm" ? "are" : "is");
}

double gate_area(const GatePlan& gate) {
  const double curtain = std::numbers::pi * gate.bore * gate.opening * gate.full_lift;
  return std::min(curtain, round_section(gate.bore).area);
}

}  // namespace pulsewright
