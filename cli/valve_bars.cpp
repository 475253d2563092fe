#include "cli/valve_bars.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/valve_lift.hpp"

namespace pulsewright {
namespace {

struct Stretch {
  double from, to;  // deg
};

bool same(const Stretch& a, const Stretch& b) {
  constexpr double unseen = 0.05;  // deg: less than a chart shows
  return std::abs(a.from - b.from) < unseen && std::abs(a.to - b.to) < unseen;
}

/// When the valves of one cylinder are open, and which layouts have it so.
struct ValveTimes {
  std::string letters;
  Stretch exhaust, intake, both;
  bool like(const ValveTimes& o) const {
    return same(exhaust, o.exhaust) && same(intake, o.intake) && same(both, o.both);
  }
};

double degrees(double radians) { return radians * 180 / std::numbers::pi; }

Stretch open(double fires, const LiftCurve& valve) {
  const double from = fires + valve.opens().degrees();
  return {from, from + degrees(valve.closes().radians - valve.opens().radians)};
}

ValveTimes valve_times(const Layout& layout, std::size_t cylinder) {
  const EngineParts& engine = layout.engine().engine;
  const double fires = engine.firing_at[cylinder].degrees();
  const LiftCurve exhaust(engine.exhaust.card), intake(engine.intake.card);
  const Overlap both = overlap(exhaust, intake);
  const double from = fires + both.from.degrees();
  return {layout.letter, open(fires, exhaust), open(fires, intake), {from, from + degrees(both.duration())}};
}

std::vector<ValveTimes> groups(const std::vector<Layout>& layouts, std::size_t cylinder) {
  std::vector<ValveTimes> all;
  for (const Layout& l : layouts) {
    if (cylinder >= l.engine().engine.firing_at.size()) continue;
    const ValveTimes times = valve_times(l, cylinder);
    const auto known = std::ranges::find_if(all, [&](const ValveTimes& t) { return t.like(times); });
    if (known == all.end())
      all.push_back(times);
    else
      known->letters += l.letter;
  }
  return all;
}

}  // namespace

void add_valve_bars(Chart& chart, const std::vector<Layout>& layouts, std::size_t cylinder) {
  const std::vector<ValveTimes> all = groups(layouts, cylinder);
  for (const ValveTimes& t : all) {
    const std::string of = all.size() > 1 ? " " + t.letters : "";
    chart.bars.push_back({t.exhaust.from, t.exhaust.to, (of.empty() ? "exhaust" : "exh.") + of});
    chart.bars.push_back({t.intake.from, t.intake.to, (of.empty() ? "intake" : "int.") + of});
    if (t.both.to > t.both.from) chart.bands.push_back({t.both.from, t.both.to, "both valves open" + of});
  }
}

}  // namespace pulsewright
