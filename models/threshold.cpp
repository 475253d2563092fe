#include "models/threshold.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace pulsewright {
namespace {

struct Point {
  double rpm, boost;
};

std::vector<Point> settled_points(const std::vector<SpeedResult>& speeds) {
  std::vector<Point> points;
  for (const SpeedResult& s : speeds)
    if (s.settled) points.push_back({s.rpm, s.boost_gauge});
  std::ranges::sort(points, {}, &Point::rpm);
  return points;
}

Threshold none(std::string reason) { return {{}, 0, 0, std::move(reason)}; }

}  // namespace

// Equation   n = n1 + (n2 - n1)(b - b1)/(b2 - b1), b = 0.9 target, b1 < b <= b2
// Source     linear interpolation
// Symbols    n engine speed rpm; b boost Pa gauge; 1 and 2 neighbouring computed speeds, the lowest pair that fits
// Valid for  balanced boost; true to no more than the two speeds around it: that is its band
// Tested by  tests/models/threshold_test.cpp
Threshold boost_threshold(const EngineCase& engine, const std::vector<SpeedResult>& speeds) {
  const BoostMode mode = engine.run.boost;
  if (mode == BoostMode::given || mode == BoostMode::hold)
    return none("the boost is imposed: run with boost = \"balanced\" to see from which rpm the turbo makes it");
  const double goal = share_that_counts_as_there * engine.charge.boost_gauge;
  if (!(goal > 0)) return none("the case asks for no boost");
  const std::vector<Point> points = settled_points(speeds);
  if (points.empty()) return none("no speed settled");
  if (points.front().boost >= goal)
    return none(
        fmt::format("boost is there at every speed computed: it comes at or below {:.0f} rpm", points.front().rpm));
  const auto up = std::ranges::find_if(points, [goal](const Point& p) { return p.boost >= goal; });
  if (up == points.end())
    return none(fmt::format("boost is not there at any speed computed: it comes above {:.0f} rpm, or never",
                            points.back().rpm));
  const Point &a = *(up - 1), &b = *up;
  return {a.rpm + (b.rpm - a.rpm) * (goal - a.boost) / (b.boost - a.boost), a.rpm, b.rpm, {}};
}

}  // namespace pulsewright
