// The ten questions of start, and what each answer must be.

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <numbers>
#include <optional>

#include "models/arrangement.hpp"
#include "models/starter.hpp"
#include "models/starter_parts.hpp"
#include "shared/cam_angle.hpp"
#include "shared/error.hpp"
#include "shared/plain_rows.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

[[noreturn]] void refuse(const std::string& what, const std::string& hint = {}) {
  throw Error(ErrorKind::usage, what, {}, hint);
}

/// A fault of reading, as a fault of the answer.
template <class Read>
auto answered(Read read) {
  try {
    return read();
  } catch (const Error& error) {
    refuse(error.message(), error.hint());
  }
}

double measured(std::string_view text, Dimension dimension, std::string_view what, const Range& range) {
  const double value = answered([&] { return parse_quantity(text, dimension, what); });
  if (!range.holds(value))
    refuse(fmt::format("a {} of {}: it must lie between {} and {}", what, in_quotes(text),
                       in_words(range.low, dimension), in_words(range.high, dimension)));
  return value;
}

void check_cylinders(const StarterOptions& o) { arrangement_meant(o.cylinders); }
void check_bore(const StarterOptions& o) { measured(o.bore, Dimension::length, "bore", between(0.02, 0.5)); }
void check_stroke(const StarterOptions& o) { measured(o.stroke, Dimension::length, "stroke", between(0.02, 0.6)); }
void check_boost(const StarterOptions& o) { measured(o.boost, Dimension::pressure_gauge, "boost", between(0, 10e5)); }

void check_redline(const StarterOptions& o) {
  const auto rpm = plain_number(o.redline);
  if (!rpm || !between(500, 25000).holds(*rpm))
    refuse(fmt::format("{} is no redline: a number between 500 and 25000, in rpm", in_quotes(o.redline)));
}

void check_fuel(const StarterOptions& o) {
  answered([&] { return parse_fuel(o.fuel); });
}

void check_cam(const StarterOptions& o) {
  const auto [opens, closes] = two_parts(o.exhaust_cam);
  if (closes.empty())
    refuse(in_quotes(o.exhaust_cam) + " gives one angle; opening and closing stand with a comma between");
  const auto own = [&](std::string_view text, std::string_view key) {
    const CamAngle a = answered([&] { return parse_cam_angle(text, key); });
    if (a.centre) refuse(in_quotes(text) + " is the centre of the lift; give opening and closing");
    return CrankAngle{(a.dead == DeadCentre::bottom ? std::numbers::pi : 2 * std::numbers::pi) + a.after}.degrees();
  };
  if (!between(60, 240).holds(own(opens, "opens")))
    refuse(in_quotes(opens) + " is no opening: an exhaust valve opens between 120 deg before and 60 deg after bdc");
  if (!between(300, 460).holds(own(closes, "closes")))
    refuse(in_quotes(closes) + " is no closing: an exhaust valve closes between 60 deg before and 100 deg after tdc");
}

void check_port(const StarterOptions& o) {
  answered([&] { return parse_cross_section(o.port); });
}

void check_manifold(const StarterOptions& o) {
  const auto& all = starter_manifolds();
  if (std::ranges::find(all, o.manifold) == all.end()) {
    const std::string near = nearest_word(o.manifold, all);
    refuse("no manifold is called " + in_quotes(o.manifold),
           near.empty() ? "one of: " + listed(all) : "did you mean " + near + "?");
  }
  const int count = starter_cylinders(o.cylinders);
  const auto fitting = starter_manifolds(count);
  if (std::ranges::find(fitting, o.manifold) == fitting.end())
    refuse(fmt::format("a {} manifold is not for {} cylinder{}", o.manifold, count, count == 1 ? "" : "s"),
           fmt::format("for {}: {}", count, listed(fitting)));
}

void check_turbine(const StarterOptions& o) {
  const auto [housing, wheel] = two_parts(o.turbine);
  const auto [inducer, exducer] = two_parts(wheel);
  if (exducer.empty()) refuse(in_quotes(o.turbine) + " is not three sizes: A/R, inducer, exducer, with commas between");
  constexpr double inch = 0.0254;
  if (const auto inches = plain_number(housing); !inches)
    measured(housing, Dimension::length, "A/R", between(0.1 * inch, 5 * inch));
  else if (!between(0.1, 5).holds(*inches))
    refuse("an A/R of " + in_quotes(housing) + " in: it must lie between 0.1 and 5 in");
  const Range wheel_range = between(0.01, 0.3);
  const double in = measured(inducer, Dimension::length, "inducer", wheel_range);
  if (measured(exducer, Dimension::length, "exducer", wheel_range) > in)
    refuse("an exducer of " + in_quotes(exducer) + " is wider than the inducer of " + in_quotes(inducer),
           "gas enters a turbine wheel at the inducer, its largest diameter");
}

using O = StarterOptions;

constexpr std::array<StarterQuestion, 10> questions{{
    {"--cylinders", "Cylinders, and how they stand", "inline 4", "4, inline 6, boxer 4, vee 8",
     "A number alone means in line. The firing order comes with it by common practice; overrule it in the case.",
     &O::cylinders, check_cylinders},
    {"--bore", "Bore", "86 mm", "86 mm, 3.386 in", "Diameter of a cylinder.", &O::bore, check_bore},
    {"--stroke", "Stroke", "86 mm", "86 mm, 3.386 in", "How far a piston travels.", &O::stroke, check_stroke},
    {"--redline", "Redline", "7000", "7500", "The highest engine speed that matters to you, rpm.", &O::redline,
     check_redline},
    {"--boost", "Boost you aim for, above the air outside", "1.0 bar", "1.0 bar, 15 psi, 100 kPa",
     "What the boost gauge is to show; how hot the charge gets follows from it.", &O::boost, check_boost},
    {"--fuel", "Fuel", "petrol", "petrol, diesel, E85 or another blend, ethanol, methanol",
     "Sets the burned gas, its amount and the usual mixture.", &O::fuel, check_fuel},
    {"--exhaust-cam", "Exhaust cam: opens, closes", "54 deg before bdc, 18 deg after tdc",
     "54 deg before bdc, 18 deg after tdc",
     "As on the cam card. Nothing moves the pulses more; at which lift the card states them stands in the case.",
     &O::exhaust_cam, check_cam},
    {"--port", "Exhaust port where it leaves the head", "round, as the tube",
     "oval 36 mm x 28 mm, round 32 mm, rectangle 34 mm x 28 mm",
     "Measure the hole in the head face. The tube is chosen by it.", &O::port, check_port},
    {"--turbine", "Turbine: A/R, wheel inducer, wheel exducer", "one that suits the engine", "0.63 in, 64 mm, 55 mm",
     "A/R is cast on the housing (a plain number means inches). Gas enters the wheel at the inducer, its largest "
     "diameter, and leaves at the exducer.",
     &O::turbine, check_turbine},
    {"--manifold", "Layout of the manifold", "4-1", "log, 4-1, 4-2-1, divided, 3-3",
     "log: stubs into a pipe along the head. 4-1: all into one merge, whatever their number. 4-2-1: pairs first. "
     "divided: two halves, a scroll of the housing each. 3-3: a six in threes, a scroll each.",
     &O::manifold, check_manifold},
}};

}  // namespace

std::span<const StarterQuestion> starter_questions() { return questions; }

const std::vector<std::string>& starter_manifolds() {
  static const std::vector<std::string> names{"log", "4-1", "4-2-1", "divided", "3-3"};
  return names;
}

std::vector<std::string> starter_manifolds(int cylinders) {
  std::vector<std::string> names{"log", "4-1"};
  if (cylinders == 4) names.emplace_back("4-2-1");
  if (cylinders == 4 || cylinders == 6 || cylinders == 8) names.emplace_back("divided");
  if (cylinders == 6) names.emplace_back("3-3");
  return names;
}

int starter_cylinders(std::string_view text) { return static_cast<int>(arrangement_meant(text).firing_order.size()); }

const Arrangement& arrangement_meant(std::string_view text) {
  std::string name = lower_case(trimmed(text));
  if (name.empty()) name = "inline 4";
  if (const auto count = plain_number(name)) name = *count == 1 ? "single" : fmt::format("inline {}", *count);
  if (const Arrangement* found = find_arrangement(name)) return *found;
  std::vector<std::string> names;
  for (const Arrangement& a : arrangements()) names.emplace_back(a.name);
  const std::string near = nearest_word(name, names);
  refuse("no usual firing order is known for " + in_quotes(text),
         (near.empty() ? "" : "did you mean " + near + "? ") + "known: " + listed(names));
}

std::pair<std::string_view, std::string_view> two_parts(std::string_view text) {
  const auto comma = text.find(',');
  if (comma == std::string_view::npos) return {trimmed(text), {}};
  return {trimmed(text.substr(0, comma)), trimmed(text.substr(comma + 1))};
}

}  // namespace pulsewright
