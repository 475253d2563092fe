#include "cli/boost_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

using State = BoostFigures::State;
constexpr double bar = 1e5;

std::string letter_of(const std::vector<Layout>& layouts, const Layout& layout) {
  return layouts.size() > 1 ? layout.letter + ": " : "";
}

std::string in_bar(double pressure) { return fmt::format("{:.2f} bar", pressure / bar); }

/// "44 mm or more"; several gates by name. Up to whole millimetres: what can be bought.
std::string bore_words(const SpeedResult& s) {
  if (!s.boost.why_no_bore.empty()) return "No larger gate would: " + s.boost.why_no_bore + ".";
  std::vector<std::string> parts;
  for (const GateFigures& g : s.gates)
    if (g.bore_that_would_hold)
      parts.push_back(fmt::format("{} of {:.0f} mm", g.name, std::ceil(*g.bore_that_would_hold * 1e3 - 1e-6)));
  return parts.empty() ? "" : fmt::format("It would take a {}.", fmt::join(parts, " and "));
}

std::string cannot_hold_line(const SpeedResult& s) {
  const std::string climbs =
      s.boost.beyond
          ? fmt::format("past {}, where the search ends: the figures there are no balance", in_bar(s.boost_gauge))
          : "to " + in_bar(s.boost_gauge);
  return fmt::format("GATE CANNOT HOLD at {:.0f} rpm: wide open, boost climbs {} (target {}). {}", s.rpm, climbs,
                     in_bar(s.boost.target), bore_words(s));
}

std::string speeds_text(const std::vector<double>& speeds) {
  std::vector<std::string> list;
  for (double rpm : speeds) list.push_back(fmt::format("{:.0f}", rpm));
  return fmt::format("{} rpm", fmt::join(list, ", "));
}

std::vector<double> speeds_in(const Layout& layout, State state) {
  std::vector<double> speeds;
  for (const SpeedResult& s : layout.result.speeds)
    if (s.boost.state == state) speeds.push_back(s.rpm);
  return speeds;
}

std::string threshold_line(const Layout& layout) {
  const Threshold& t = layout.result.threshold;
  const std::string target = fmt::format("90 % of {} boost", in_bar(layout.engine().charge.boost_gauge));
  if (!t.rpm) return target + ": " + t.reason;
  return fmt::format(
      "{} comes between {:.0f} and {:.0f} rpm, about {:.0f} on a straight line; speeds between say it closer", target,
      t.low, t.high, *t.rpm);
}

/// How far apart two thresholds are, against the spacing of the speeds.
std::string apart_line(const Layout& a, const Layout& b) {
  const Threshold &x = a.result.threshold, &y = b.result.threshold;
  const double by = *y.rpm - *x.rpm;
  std::string text = fmt::format("{} reaches boost {:.0f} rpm {} than {}", b.letter, std::abs(by),
                                 by > 0 ? "later" : "sooner", a.letter);
  if (x.low == y.low)
    text += fmt::format("; both lie between {:.0f} and {:.0f} rpm: put more speeds there to be sure", x.low, x.high);
  return text;
}

std::string step_line(const SpeedResult& s) {
  if (s.boost.time_to_boost)
    return fmt::format("full load at {:.0f} rpm: 90 % of the boost after {:.2f} s", s.rpm, *s.boost.time_to_boost);
  return fmt::format("full load at {:.0f} rpm: boost does not get there; {}", s.rpm, s.boost.why_no_time);
}

}  // namespace

std::string boost_sentence(const std::vector<Layout>& layouts) {
  const BoostMode mode = layouts.front().engine().run.boost;
  if (std::ranges::any_of(layouts, [mode](const Layout& l) { return l.engine().run.boost != mode; }))
    return "Boost is not set the same way in every layout: see the cases before comparing.";
  switch (mode) {
    case BoostMode::hold:
      return "Boost is held at the target by the wastegate, opened as far as the balance of power asks.";
    case BoostMode::balanced:
      return "Boost is what the turbo makes: turbine and compressor power are equal, the gate opens at the target.";
    case BoostMode::step:
      return "Load step: full load at once at each speed, gate shut until the target; the tables show where it ends.";
    case BoostMode::given:
      break;
  }
  return boost_given_sentence;
}

std::vector<std::string> boost_warnings(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts) {
    const std::string letter = letter_of(layouts, l);
    for (const SpeedResult& s : l.result.speeds)
      if (s.boost.state == State::cannot_hold) lines.push_back(letter + cannot_hold_line(s));
    for (const SpeedResult& s : l.result.speeds)
      if (s.boost.state == State::not_reached)
        lines.push_back(
            fmt::format("{}TARGET NOT REACHED at {:.0f} rpm: gates shut, the turbine still gives {:.1f} kW "
                        "less than {} takes. The figures there are those of a boost it cannot make.",
                        letter, s.rpm, -s.turbine_surplus / 1e3, in_bar(s.boost.target)));
    if (const auto speeds = speeds_in(l, State::no_boost); !speeds.empty())
      lines.push_back(fmt::format("{}The turbo makes no boost worth the name at {}.", letter, speeds_text(speeds)));
  }
  return lines;
}

std::vector<std::string> boost_lines(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Layout& l : layouts) {
    const BoostMode mode = l.engine().run.boost;
    if (mode != BoostMode::balanced && mode != BoostMode::step) continue;
    lines.push_back(letter_of(layouts, l) + threshold_line(l));
    for (const SpeedResult& s : l.result.speeds)
      if (mode == BoostMode::step && l.engine().charge.boost_gauge > 0)
        lines.push_back(letter_of(layouts, l) + step_line(s));
  }
  for (std::size_t k = 1; k < layouts.size(); ++k)
    if (layouts.front().result.threshold.rpm && layouts[k].result.threshold.rpm)
      lines.push_back(apart_line(layouts.front(), layouts[k]));
  return lines;
}

std::string boost_word(State state) {
  switch (state) {
    case State::held:
      return "held";
    case State::below_target:
      return "below target";
    case State::cannot_hold:
      return "cannot hold";
    case State::not_reached:
      return "not reached";
    case State::no_boost:
      return "no boost";
    case State::given:
      break;
  }
  return "given";
}

std::optional<double> bore_that_would_hold(const SpeedResult& speed) {
  std::optional<double> bore;
  for (const GateFigures& g : speed.gates) {
    if (!g.bore_that_would_hold) continue;
    if (bore && *bore != *g.bore_that_would_hold) return {};
    bore = g.bore_that_would_hold;
  }
  return bore;
}

}  // namespace pulsewright
