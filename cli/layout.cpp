#include "cli/layout.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace pulsewright {
const char* const boost_given_sentence =
    "Boost is held at the value you gave at every speed. This does not yet say from which rpm the turbo reaches it.";

const char* const no_bands_sentence =
    "There are no error bands yet: nothing here says whether a difference is larger than the doubt in the figures.";

const std::vector<std::string> how_to_read = {
    "Drive pressure: what a damped gauge shows before the turbine; it reads low in a narrow throat.",
    "Gas brought to rest: its speed made pressure. Layouts of different throats are compared by this one.",
    "Shaft power left over: beyond what the compressor takes for this boost; below 0 the boost is not held.",
    "Pumping: the piston's work while gas is changed, over the swept volume: gained (+) or lost (-).",
    "Overlap: both valves open. Port above intake (+): exhaust comes back in; below (-): burned gas is drawn out.",
};

const std::vector<std::string> cautions = {
    "A comparison of two builds is worth more than any absolute figure, and no licence to raise boost.",
    "A gate too small or badly placed lets boost creep: over-boost, knock, a broken engine. Fit a boost cut.",
    "Drive pressure far above boost: knock, valve float, heat. Knock and turbine overspeed are not computed.",
    "Purge argon and stainless fume need ventilation, parts above 700 C need shields. Local codes come first.",
};

const SpeedResult* Layout::at_rpm(double rpm) const {
  const auto found = std::ranges::find(result.speeds, rpm, &SpeedResult::rpm);
  return found == result.speeds.end() ? nullptr : &*found;
}

std::optional<double> Layout::figure(const FigureRow& row, double rpm) const {
  const SpeedResult* speed = at_rpm(rpm);
  return speed ? row.value(*speed, result.ambient_pressure) : std::nullopt;
}

std::vector<double> speeds_of(const std::vector<Layout>& layouts) {
  std::vector<double> speeds;
  for (const SpeedResult& s : layouts.front().result.speeds) speeds.push_back(s.rpm);
  return speeds;
}

std::vector<std::string> not_held(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts)
    for (const SpeedResult& s : l.result.speeds)
      if (s.boost.state == BoostFigures::State::given && s.turbine_surplus < 0)
        lines.push_back(
            fmt::format("BOOST NOT HELD: {} at {:.0f} rpm: the turbine gives {:.1f} kW less than the compressor takes "
                        "for this boost.",
                        l.letter, s.rpm, -s.turbine_surplus / 1e3));
  return lines;
}

std::vector<std::string> missing_reasons(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const FigureRow& row : figure_rows()) {
    const auto gap = [&](double rpm) {
      return std::ranges::any_of(layouts, [&](const Layout& l) { return l.at_rpm(rpm) && !l.figure(row, rpm); });
    };
    if (std::ranges::any_of(speeds_of(layouts), gap)) lines.push_back(row.label + ": \"-\" where " + row.missing);
  }
  return lines;
}

}  // namespace pulsewright
