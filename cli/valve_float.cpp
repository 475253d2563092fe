// Whether drive pressure opens shut exhaust valves against their springs, in sentences.

#include <fmt/format.h>

#include <algorithm>

#include "cli/layout.hpp"

namespace pulsewright {
namespace {

struct Push {
  double rpm = 0;
  const CylinderFigures* cylinder = nullptr;
};

Push hardest(const Layout& layout) {
  Push most;
  for (const SpeedResult& s : layout.result.speeds)
    for (const CylinderFigures& c : s.cylinders)
      if (!most.cylinder || c.shut_valve_force > most.cylinder->shut_valve_force) most = {s.rpm, &c};
  return most;
}

}  // namespace

std::vector<std::string> valve_float(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts) {
    const Push push = hardest(l);
    if (!push.cylinder) continue;
    const std::string most = fmt::format(
        "{}: drive pressure pushes a shut exhaust valve open with up to {:.0f} N (cylinder {} at {:.0f} rpm)", l.letter,
        push.cylinder->shut_valve_force, push.cylinder->cylinder, push.rpm);
    if (!push.cylinder->seat_load)
      lines.push_back(most + "; whether its springs hold it is not known: exhaust_valve.seat_load is not given.");
    else if (push.cylinder->lifts_off())
      lines.push_back(
          fmt::format("VALVE FLOAT: {}, more than its seat load of {:.0f} N: it lifts off its seat, and what is "
                      "computed beyond that is not true.",
                      most, *push.cylinder->seat_load));
    else
      lines.push_back(fmt::format("{}; its seat load of {:.0f} N holds it.", most, *push.cylinder->seat_load));
  }
  return lines;
}

}  // namespace pulsewright
