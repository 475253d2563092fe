// The walls of a plan in words: what they are made of, and where their temperature comes from.

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <vector>

#include "models/describe.hpp"
#include "models/metal.hpp"

namespace pulsewright {
namespace {

std::string wrap_words(const TubeWrap& wrap) {
  if (wrap.thickness <= 0) return "bare";
  const std::string name = wrap.name.empty() ? "wrap" : wrap.name;
  return fmt::format("{} of {:.3g} mm at {:.3g} W/(m K)", name, 1e3 * wrap.thickness, wrap.conductivity);
}

std::string wall_words(const MetalPiece& piece) {
  if (!piece.computed) return fmt::format("{:.0f} K, given or assumed", piece.temperature);
  const TubeMetal& m = piece.tube.metal;
  return fmt::format("computed; {} ({}), wall {:.3g} mm, {}, emissivity {:.2g}", m.alloy->name, m.alloy->designation,
                     1e3 * m.thickness, wrap_words(m.wrap), m.emissivity);
}

struct Alike {
  std::string words;
  std::vector<std::string> names;
};

}  // namespace

std::string metal_text(const ManifoldPlan& plan) {
  std::vector<Alike> groups;
  for (const MetalPiece& piece : metal_pieces(plan)) {
    const std::string words = wall_words(piece);
    auto group = std::ranges::find(groups, words, &Alike::words);
    if (group == groups.end()) group = groups.insert(groups.end(), {words, {}});
    if (std::ranges::find(group->names, piece.name) == group->names.end()) group->names.push_back(piece.name);
  }
  std::string text;
  for (const Alike& group : groups) text += fmt::format("  {}: {}\n", fmt::join(group.names, ", "), group.words);
  return text;
}

}  // namespace pulsewright
