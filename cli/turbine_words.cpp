// What is said of the turbines besides their figures.

#include <fmt/format.h>

#include "cli/layout.hpp"

namespace pulsewright {
namespace {

constexpr double worth_saying = 0.005;  // of the gas: less is left out

std::string outside_sentence(const Layout& l, const SpeedResult& s, const ShaftFigures& f) {
  if (f.outside_map.value_or(0) < worth_saying) return {};
  return fmt::format(
      "OUTSIDE THE MAP: {} at {:.0f} rpm: {:.0f} % of the gas passed {} where its map has no point; the map's edge "
      "stands for it.",
      l.letter, s.rpm, 100 * *f.outside_map, f.name);
}

std::string share_sentence(const Layout& l, const SpeedResult& s) {
  std::string shares;
  for (const ShaftFigures& f : s.shafts)
    shares += fmt::format("{}{} drives {:.0f} % of it with {:.1f} kW", shares.empty() ? "" : ", ", f.name,
                          100 * f.share_of_air, f.power_shaft / 1e3);
  return fmt::format("Air shared so that every shaft is as far from its balance: {} at {:.0f} rpm: {}.", l.letter,
                     s.rpm, shares);
}

}  // namespace

std::vector<std::string> turbine_sentences(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts)
    for (const SpeedResult& s : l.result.speeds) {
      if (s.shafts.size() > 1) lines.push_back(share_sentence(l, s));
      for (const ShaftFigures& f : s.shafts)
        if (const std::string line = outside_sentence(l, s, f); !line.empty()) lines.push_back(line);
    }
  return lines;
}

}  // namespace pulsewright
