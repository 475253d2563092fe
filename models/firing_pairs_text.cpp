// Firing pairs in words.

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "models/firing_pairs.hpp"
#include "shared/text_table.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

using Align = TextTable::Align;

constexpr double least_shown = 0.05 * std::numbers::pi / 180;  // what prints as 0 is none

double degrees(double radians) { return radians * 180 / std::numbers::pi; }
std::string deg(double radians) { return fmt::format("{:.3g} deg", degrees(radians)); }

std::string joined(const std::vector<int>& cylinders) {
  std::string text;
  for (const int c : cylinders) text += (text.empty() ? "" : "+") + std::to_string(c);
  return text;
}

bool in_group(const PipeGroup& group, int cylinder) {
  return std::ranges::find(group.cylinders, cylinder) != group.cylinders.end();
}

std::string group_head(const PipeGroup& group) {
  std::vector<std::string> numbers;
  for (const int c : group.cylinders) numbers.push_back(std::to_string(c));
  const std::string into = group.entries.empty() ? "" : " into " + listed(group.entries, "and");
  return group.cylinders.size() == 1 ? "Cylinder " + numbers[0] + " alone" + into + ": no other blows into it\n"
                                     : "Cylinders " + listed(numbers, "and") + " share pipe" + into + "\n";
}

/// The worst, and the others that are as bad.
std::string worst_line(const std::vector<FiringPair>& pairs) {
  const double most = std::ranges::max_element(pairs, {}, &FiringPair::into_overlap)->into_overlap;
  const auto as_bad = [most](const FiringPair& p) { return p.into_overlap > most - least_shown; };
  const auto worst = std::ranges::find_if(pairs, as_bad);
  std::vector<std::string> alike;
  for (const FiringPair& p : pairs)
    if (&p != &*worst && as_bad(p)) alike.push_back(fmt::format("{} into {}", p.blows, p.hears));
  return "  worst: " + in_a_sentence(*worst) + (alike.empty() ? "" : "; alike: " + listed(alike, "and")) + "\n";
}

std::string group_text(const PipeGroup& group, const std::vector<FiringPair>& pairs) {
  std::vector<FiringPair> inside;
  for (const FiringPair& p : pairs)
    if (in_group(group, p.blows) && in_group(group, p.hears) && p.into_overlap >= least_shown) inside.push_back(p);
  const std::string head = group_head(group);
  if (group.cylinders.size() == 1) return head;
  if (inside.empty()) return head + "  no blowdown falls into another's overlap\n";
  TextTable table({{"  blowdown of"},
                   {"in the overlap of"},
                   {"for", Align::right},
                   {"fires after it", Align::right},
                   {"pipes meet at"}});
  for (const FiringPair& p : inside)
    table.add_row({fmt::format("  cylinder {}", p.blows), fmt::format("cylinder {}", p.hears), deg(p.into_overlap),
                   deg(p.fires_after), p.meet_at});
  return head + table.text() + worst_line(inside);
}

/// "3 into 1 (14 deg)": what a divided housing or a second turbine keeps away.
std::string apart_text(const std::vector<FiringPair>& pairs) {
  std::vector<std::string> apart;
  for (const FiringPair& p : pairs)
    if (!p.one_scroll && p.into_overlap >= least_shown)
      apart.push_back(fmt::format("{} into {} ({})", p.blows, p.hears, deg(p.into_overlap)));
  return apart.empty() ? "" : "Kept apart up to the wheel: " + listed(apart, "and") + "\n";
}

std::string parting_line(const Parting& p) {
  const std::string sharing = joined(p.one) + " and " + joined(p.other);
  const std::string head = fmt::format("  {:19} fire {:.3g} deg apart or more; ", sharing, degrees(p.apart));
  if (p.sum < least_shown) return head + "no blowdown in an overlap\n";
  return head + fmt::format("{} in all, {} the worst pair\n", deg(p.sum), deg(p.worst));
}

/// The best ways to part them, and the worst for the scale.
std::string partings_text(const EngineCase& engine) {
  constexpr std::size_t shown = 3;
  const auto ways = partings(engine);
  if (ways.empty()) return {};
  std::string text = "To part them over two scrolls (or two first merges), furthest apart first\n";
  for (std::size_t k = 0; k < std::min(shown, ways.size()); ++k) text += parting_line(ways[k]);
  if (ways.size() > shown)
    text += fmt::format("  ... {} ways; the last of them:\n{}", ways.size(), parting_line(ways.back()));
  return text;
}

}  // namespace

std::string in_a_sentence(const FiringPair& p) {
  return fmt::format(
      "cylinder {}'s exhaust opens {:.3g} degrees before cylinder {}'s overlap ends: {:.3g} degrees of its blowdown "
      "land "
      "in it",
      p.blows, degrees(p.opens_before_end), p.hears, degrees(p.into_overlap));
}

std::string firing_pairs_text(const EngineCase& engine) {
  const auto pairs = firing_pairs(engine);
  std::string text =
      "Blowdown: exhaust opening to bottom dead centre. Overlap: both valves open. (A definition of ours, at the "
      "valves;\n"
      "the way through the pipes comes on top.)\n";
  for (const PipeGroup& group : pipe_groups(engine)) text += group_text(group, pairs);
  return text + apart_text(pairs) + partings_text(engine);
}

}  // namespace pulsewright
