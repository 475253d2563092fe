#include "models/starter.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

#include "models/arrangement.hpp"
#include "models/assumed.hpp"
#include "models/cross_section.hpp"
#include "models/tube_stock.hpp"
#include "models/valve_lift.hpp"
#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

std::string mm(double metres) { return fmt::format("\"{:.4g} mm\"", metres * 1e3); }

void check(const StarterOptions& o) {
  const auto demand = [](bool good, const std::string& what) {
    if (!good) throw Error(ErrorKind::usage, what);
  };
  demand(find_arrangement("inline " + std::to_string(o.cylinders)) != nullptr,
         fmt::format("no usual firing order is known for {} cylinders in line", o.cylinders));
  demand(o.bore > 0.02 && o.bore < 0.5, fmt::format("a bore of {:.4g} mm: between 20 and 500 mm", o.bore * 1e3));
  demand(o.stroke > 0.02 && o.stroke < 0.6,
         fmt::format("a stroke of {:.4g} mm: between 20 and 600 mm", o.stroke * 1e3));
  demand(o.redline >= 500 && o.redline <= 25000,
         fmt::format("a redline of {:.0f}: between 500 and 25000 rpm", o.redline));
  demand(o.boost_gauge >= 0 && o.boost_gauge <= 1e6,
         fmt::format("a boost of {:.3g} bar: between 0 and 10 bar above ambient", o.boost_gauge / 1e5));
  demand(o.title.find_first_of("\"\\\n\r\t") == std::string::npos, "a title has no quotes, backslashes or line ends");
}

/// The stock pipe next above the bore that two exhaust valves' throats amount to.
std::string stock_tube(const StarterOptions& o) {
  AssumedList assumed;
  assumed.facts().bore = o.bore;
  ValveShape valves;
  valves.count = static_cast<int>(assumed.take("exhaust_valve.count"));
  assumed.facts().exhaust_head = valves.head = assumed.take("exhaust_valve.head");
  valves.throat = assumed.take("exhaust_valve.throat") / valves.head;
  return stock_pipe_above(equal_area_bore(throat_area(valves))).tube().name;
}

/// What several primaries run through is a size up: 1.3 times their area or more.
std::string tube_above(const std::string& tube) {
  try {
    return stock_pipe_above(parse_tube(tube).bore() * 1.14).tube().name;
  } catch (const Error&) {
    return tube;
  }
}

std::string head_text(const StarterOptions& o) {
  AssumedList assumed;
  std::string speeds;
  for (const double share : {0.35, 0.5, 0.65, 0.8, 0.95})
    speeds += fmt::format("{}{:.0f}", speeds.empty() ? "" : ", ", std::round(share * o.redline / 100) * 100);
  return fmt::format(
      R"(# A first case: change what you know, leave out what you don't. Whatever stands behind a # is assumed;
# take the # away to give your own value.
title = "{}"

[engine]
arrangement = "inline {}"          # firing order and angles by common practice
bore        = {}
stroke      = {}
redline     = {:.0f}
# rod = "145 mm"
# compression_ratio = 9.0
# fuel = "petrol"

# [engine.exhaust_valve]            # the cam card
# count = 2
# head  = "29 mm"
# lift  = "9 mm"
# opens  = "54 deg before bdc"
# closes = "18 deg after tdc"

# [engine.exhaust_port]
# exit   = "oval 36 mm x 28 mm"     # or "round 32 mm", "rectangle 34 mm x 28 mm"
# length = "70 mm"                  # valve seat to head face

[charge]
boost_gauge = "{:.4g} bar"          # the target, above ambient

[turbine]
# capacity = {{ flow = "0.16 kg/s", ratio = 2.0, temperature = "288.15 K", pressure = "1.01325 bar" }}

[run]
rpm  = [{}]
cell = "5 mm"

)",
      o.title, o.cylinders, mm(o.bore), mm(o.stroke), o.redline, o.boost_gauge / 1e5, speeds);
}

std::string each_primary_text(const std::string& tube, const std::string& rest) {
  return fmt::format(R"([each_primary]                      # what all primaries share; a primary's own key wins
tube  = "{}"
{}
)",
                     tube, rest);
}

std::string primary_text(int cylinder, const std::string& rest) {
  return fmt::format("[[primary]]\ncylinder = {}\n{}\n", cylinder, rest);
}

/// Of the layouts' joints, the last before the turbine; with the gate on it.
std::string last_joint_text(const std::string& name, const std::string& gate_angle) {
  return fmt::format(R"([[joint]]
name   = "{0}"
outlet = "turbine"
# throat = "48 mm"                  # bore where the turbine's volute begins

[[wastegate]]
name    = "gate"
at      = "{0}"
angle   = "{1}"
to      = "air"
opening = 0.0                       # share of full lift
# bore = "44 mm"
)",
                     name, gate_angle);
}

std::string downpipe_text() {
  return R"(
# [[duct]]                          # without it an assumed restriction stands behind the turbine
# name   = "downpipe"
# from   = "turbine.out"
# to     = "air"
# length = "900 mm"
# bore   = "63.5 mm"
)";
}

/// All primaries into one merge.
std::string single_merge(const StarterOptions& o, const std::string& tube) {
  std::string text = each_primary_text(
      tube,
      "angle = \"15 deg\"                  # between the primary and the collector's centre line\nto    = \"merge\"\n");
  for (int c = 1; c <= o.cylinders; ++c)
    text += primary_text(c, "length   = \"350 mm\"                # head flange to the merge, on the centre line\n");
  return text + last_joint_text("merge", "30 deg");
}

/// One stub a cylinder into a pipe along the head, the turbine at its end beyond the last cylinder.
std::string log(const StarterOptions& o, const std::string& tube) {
  const double spacing = 1.1 * o.bore;
  std::string text = each_primary_text(
      tube,
      "length = \"60 mm\"                  # stubs, square into the log\nbends  = \"0 deg\"\nangle  = \"90 deg\"\n");
  for (int c = 1; c <= o.cylinders; ++c) text += primary_text(c, fmt::format("to       = \"over port {}\"\n", c));
  for (int c = 1; c < o.cylinders; ++c)
    text += fmt::format(R"([[joint]]
name   = "over port {0}"
outlet = "log {0}-{1}"

[[duct]]
name     = "log {0}-{1}"
from     = "over port {0}"
to       = "over port {1}"
to_angle = "0 deg"
length   = {2}
tube     = "{3}"

)",
                        c, c + 1, mm(spacing), tube_above(tube));
  return text + last_joint_text(fmt::format("over port {}", o.cylinders), "90 deg");
}

/// Two merges whose outlets meet in a third, or enter the two scrolls of a divided housing. Cylinders that fire
/// alternately share one.
std::string two_merges(const StarterOptions& o, const std::string& tube, bool divided) {
  const auto order = find_arrangement("inline " + std::to_string(o.cylinders))->firing_order;
  std::string text = each_primary_text(
      tube, "angle = \"10 deg\"                  # between the primary and its merge's centre line\n");
  for (std::size_t k = 0; k < order.size(); ++k)
    text += primary_text(order[k],
                         fmt::format("length   = \"350 mm\"\nto       = \"{}\"\n", k % 2 == 0 ? "front" : "rear"));
  for (const char* side : {"front", "rear"}) {
    const bool front = side == std::string("front");
    const std::string outlet = divided ? (front ? "turbine.a" : "turbine.b") : std::string(side) + " pipe";
    text += fmt::format("[[joint]]\nname   = \"{}\"\noutlet = \"{}\"\n\n", side, outlet);
    if (divided)
      text += fmt::format(
          "[[wastegate]]\nname    = \"{0} gate\"\nat      = \"{0}\"\nangle   = \"30 deg\"\nto      = \"air\"\nopening "
          "= 0.0\n\n",
          side);
    else
      text += fmt::format(
          "[[duct]]\nname     = \"{0} pipe\"\nfrom     = \"{0}\"\nto       = \"merge\"\nto_angle = \"10 deg\"\nlength  "
          " = \"150 mm\"\ntube     = \"{1}\"\n\n",
          side, tube_above(tube));
  }
  return divided ? text : text + last_joint_text("merge", "30 deg");
}

std::string manifold_text(const StarterOptions& o, const std::string& tube) {
  const auto only_for = [&](int cylinders) {
    if (o.cylinders != cylinders)
      throw Error(ErrorKind::usage,
                  fmt::format("manifold {} is for {} cylinders, not for {}", o.manifold, cylinders, o.cylinders), {},
                  "log and 4-1 take any number");
  };
  if (o.manifold == "log") return log(o, tube);
  if (o.manifold == "4-1") return single_merge(o, tube);
  if (o.manifold == "4-2-1") return only_for(4), two_merges(o, tube, false);
  if (o.manifold == "3-3") return only_for(6), two_merges(o, tube, true);
  if (o.manifold == "divided") return two_merges(o, tube, true);
  const std::string near = nearest_word(o.manifold, starter_manifolds());
  throw Error(ErrorKind::usage, "no manifold is called " + in_quotes(o.manifold), {},
              near.empty() ? listed(starter_manifolds()) : "did you mean " + in_quotes(near) + "?");
}

/// A divided housing has two scrolls.
std::string with_scrolls(std::string text, bool divided) {
  const std::string table = "[turbine]\n";
  return divided
             ? text.replace(text.find(table), table.size(),
                            table + "scrolls = 2                         # front and rear keep apart up to the wheel\n")
             : text;
}

}  // namespace

const std::vector<std::string>& starter_manifolds() {
  static const std::vector<std::string> names{"log", "4-1", "4-2-1", "divided", "3-3"};
  return names;
}

std::string starter_case(const StarterOptions& options) {
  check(options);
  const std::string tube = options.tube ? parse_tube(*options.tube).name : stock_tube(options);
  const bool divided = options.manifold == "divided" || options.manifold == "3-3";
  if (divided && options.cylinders < 2) throw Error(ErrorKind::usage, "a divided manifold needs two cylinders or more");
  return with_scrolls(head_text(options), divided) + manifold_text(options, tube) + downpipe_text();
}

}  // namespace pulsewright
