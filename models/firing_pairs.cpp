#include "models/firing_pairs.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numbers>

#include "models/plan_ways.hpp"
#include "models/valve_lift.hpp"

namespace pulsewright {
namespace {

/// What every pair asks of the engine.
struct Timing {
  const EngineCase& engine;
  LiftCurve exhaust{engine.engine.exhaust.card};
  Overlap both = overlap(exhaust, LiftCurve(engine.engine.intake.card));

  double fires(int cylinder) const { return engine.engine.firing_at[static_cast<std::size_t>(cylinder)].radians; }
};

/// Length of a stretch of crank angle that two have in common, both repeating every cycle.
double common(double from, double to, double other_from, double other_to) {
  double sum = 0;
  for (const double shift : {-2 * cycle_angle, -cycle_angle, 0.0, cycle_angle, 2 * cycle_angle})
    sum += std::max(0.0, std::min(to, other_to + shift) - std::max(from, other_from + shift));
  return sum;
}

/// The same angle, between minus half a cycle and half a cycle.
double nearest_turn(double angle) { return wrapped({angle}, {-cycle_angle / 2}).radians; }

FiringPair firing_pair(const Timing& t, int blows, int hears) {
  FiringPair pair{blows + 1, hears + 1, 0, 0, 0, false, {}};
  pair.fires_after = wrapped({t.fires(blows) - t.fires(hears)}, {0}).radians;
  const double opens = t.fires(blows) + t.exhaust.opens().radians, bottom = t.fires(blows) + std::numbers::pi;
  pair.opens_before_end = nearest_turn(t.fires(hears) + t.both.to.radians - opens);
  if (t.both.duration() > 0)
    pair.into_overlap = common(opens, bottom, t.fires(hears) + t.both.from.radians, t.fires(hears) + t.both.to.radians);
  const ManifoldPlan& plan = t.engine.plan;
  pair.meet_at = meeting_place(plan, valve_node(plan, blows), valve_node(plan, hears));
  pair.one_scroll = !pair.meet_at.empty();
  return pair;
}

/// Cylinders of a bit mask, from 1.
std::vector<int> numbers_of(unsigned mask) {
  std::vector<int> numbers;
  for (int c = 0; mask >> c != 0; ++c)
    if ((mask >> c & 1U) != 0) numbers.push_back(c + 1);
  return numbers;
}

Parting parting(const std::vector<FiringPair>& pairs, unsigned mask, unsigned all) {
  Parting p{numbers_of(mask), numbers_of(all & ~mask), cycle_angle, 0, 0};
  for (const FiringPair& pair : pairs) {
    const bool share = (mask >> (pair.blows - 1) & 1U) == (mask >> (pair.hears - 1) & 1U);
    if (!share) continue;
    p.apart = std::min(p.apart, pair.fires_after);
    p.worst = std::max(p.worst, pair.into_overlap);
    p.sum += pair.into_overlap;
  }
  return p;
}

}  // namespace

std::vector<FiringPair> firing_pairs(const EngineCase& engine) {
  const Timing timing{engine};
  std::vector<FiringPair> pairs;
  for (const int hears : engine.engine.firing_order) {
    const auto first = pairs.size();
    for (const int blows : engine.engine.firing_order)
      if (blows != hears) pairs.push_back(firing_pair(timing, blows - 1, hears - 1));
    std::ranges::sort(pairs.begin() + static_cast<std::ptrdiff_t>(first), pairs.end(), {}, &FiringPair::fires_after);
  }
  return pairs;
}

std::vector<PipeGroup> pipe_groups(const EngineCase& engine) {
  std::vector<PipeGroup> groups;
  std::vector<bool> placed(engine.engine.firing_at.size(), false);
  for (int c = 0; c < engine.engine.cylinders(); ++c) {
    if (placed[static_cast<std::size_t>(c)]) continue;
    const auto reached = before_turbine(engine.plan, valve_node(engine.plan, c));
    PipeGroup group{{}, entries_of(engine.plan, reached)};
    for (int other = c; other < engine.engine.cylinders(); ++other) {
      if (std::ranges::find(reached, valve_node(engine.plan, other)) == reached.end()) continue;
      placed[static_cast<std::size_t>(other)] = true;
      group.cylinders.push_back(other + 1);
    }
    groups.push_back(std::move(group));
  }
  return groups;
}

std::vector<Parting> partings(const EngineCase& engine) {
  constexpr int most = 10;  // 126 ways; with 16 cylinders there would be 6435
  const int count = engine.engine.cylinders();
  std::vector<Parting> ways;
  if (count < 3 || count > most) return ways;
  const auto pairs = firing_pairs(engine);
  const unsigned all = (1U << count) - 1;
  for (unsigned mask = 1; mask < all; mask += 2) {  // cylinder 1 is in it
    const int size = std::popcount(mask);
    if (size == count / 2 || size == count - count / 2) ways.push_back(parting(pairs, mask, all));
  }
  constexpr double rounding = 1e-9;
  std::ranges::stable_sort(ways, [](const Parting& a, const Parting& b) {
    return std::abs(a.apart - b.apart) > rounding ? a.apart > b.apart : a.sum < b.sum - rounding;
  });
  return ways;
}

}  // namespace pulsewright
