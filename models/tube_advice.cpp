#include "models/tube_advice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "models/describe.hpp"
#include "shared/text_table.hpp"

namespace pulsewright {
namespace {

using Align = TextTable::Align;

/// How far a bore may lie below or above the port's and still be worth a try: less chokes, more only slows the gas.
constexpr double smallest_of_port = 0.88, largest_of_port = 1.45;  // common practice, no source

std::string mm(double metres) { return fmt::format("{:.1f} mm", 1e3 * metres); }

/// The stock pipe of the given schedule nearest below (or above) a bore, within what is worth a try.
std::optional<Tube> neighbour(double bore, bool above, double port, std::string_view schedule) {
  std::optional<Tube> best;
  for (const StockPipe& pipe : stock_pipes()) {
    const Tube tube = pipe.tube();
    const double b = tube.bore();
    if (pipe.schedule != schedule || b < smallest_of_port * port || b > largest_of_port * port) continue;
    if (above ? b <= bore : b >= bore) continue;
    if (!best || (above ? b < best->bore() : b > best->bore())) best = tube;
  }
  return best;
}

/// What the step at the flange and the wall mean; nothing where both are as usual.
std::string fit_words(const Tube& tube, double port) {
  std::string words;
  if (tube.bore() < port - 0.5e-4) words += "; a step in at the flange";
  if (tube.wall < 2e-3) words += "; thin: light, brace it";
  if (tube.wall > 3.2e-3) words += "; thick: heavy, stands heat";
  return words;
}

std::string speed_words(double speed) {
  if (speed > usual_gas_speed_high) return "fast: boost early, drive pressure at the top";
  return speed < usual_gas_speed_low ? "slow: free at the top, boost late" : "usual gas speed";
}

bool same_bore(double a, double b) { return std::abs(a - b) < 1e-5; }

/// Bores at the ends of the primaries, each once.
std::vector<double> drawn_bores(const EngineCase& c) {
  std::vector<double> bores;
  for (const PrimaryLine& p : primary_lines(c))
    if (std::ranges::none_of(bores, [&](double b) { return same_bore(b, p.last_bore); })) bores.push_back(p.last_bore);
  return bores;
}

TubeChoice choice(const EngineParts& engine, const Tube& tube, double port) {
  const double speed = gas_speed_at_redline(engine, tube.bore());
  return {tube, speed, speed_words(speed) + fit_words(tube, port)};
}

/// The pipe nearest above the port; nothing where the table ends below it.
std::optional<Tube> nearest_above(double port) {
  std::optional<Tube> best;
  for (const StockPipe& pipe : stock_pipes())
    if (pipe.tube().bore() >= port && (!best || pipe.tube().bore() < best->bore())) best = pipe.tube();
  return best && best->bore() <= largest_of_port * port ? best : std::nullopt;
}

}  // namespace

double port_bore(const EngineParts& engine) {
  return equal_area_bore(engine.port.exit ? engine.port.exit->area : throat_area(engine.exhaust.shape));
}

// Equation   v = s (B/d)^2: what the piston sweeps goes through the primary at the density that it has in the cylinder
// Source     continuity, incompressible; the usual range beside it is common practice, no source
// Symbols    s mean piston speed at redline m/s, B cylinder bore m, d bore of the primary m, v m/s
// Valid for  a mean over the exhaust stroke, to set tubes beside each other; the blowdown itself runs several times faster
// Tested by  tests/models/tube_advice_test.cpp
double gas_speed_at_redline(const EngineParts& engine, double bore) {
  const double ratio = engine.crank.bore / bore;
  return SliderCrank(engine.crank).mean_piston_speed(radians_per_second(engine.redline)) * ratio * ratio;
}

std::vector<TubeChoice> tubes_to_try(const EngineParts& engine) {
  const double port = port_bore(engine);
  const auto fits = nearest_above(port);
  if (!fits) return {};
  std::vector<TubeChoice> choices;
  constexpr std::string_view usual_wall = "10S";  // what stock weld bends come in most; common practice, no source
  if (const auto below = neighbour(port, false, port, usual_wall)) choices.push_back(choice(engine, *below, port));
  choices.push_back(choice(engine, *fits, port));
  if (const auto up =
          neighbour(fits->bore() * 1.005, true, port, usual_wall))  // the same bore in another wall is no other tube
    choices.push_back(choice(engine, *up, port));
  if (choices.size() < 3 && choices.back().tube.name != fits->name)
    if (const auto up = neighbour(choices.back().tube.bore(), true, port, usual_wall))
      choices.push_back(choice(engine, *up, port));
  return choices;
}

std::string tube_advice_text(const EngineCase& c) {
  const EngineParts& engine = c.engine;
  const double port = port_bore(engine);
  std::vector<double> drawn = drawn_bores(c);
  TextTable table({{"  tube"},
                   {"bore", Align::right},
                   {"over the port", Align::right},
                   {"wall", Align::right},
                   {"gas speed", Align::right},
                   {"what that means"}});
  const auto add = [&](const std::string& name, double bore, const std::string& wall, const std::string& words) {
    table.add_row({"  " + name, mm(bore), fmt::format("{:+.1f} mm", 1e3 * (bore - port)), wall,
                   fmt::format("{:.0f} m/s", gas_speed_at_redline(engine, bore)), words});
  };
  const auto choices = tubes_to_try(engine);
  for (const TubeChoice& t : choices) {
    const bool is_drawn = std::erase_if(drawn, [&](double d) { return same_bore(d, t.tube.bore()); }) > 0;
    add(t.tube.name + (is_drawn ? " (drawn)" : ""), t.tube.bore(), fmt::format("{:.2f} mm", 1e3 * t.tube.wall),
        t.reason);
  }
  for (const double bore : drawn) add("as drawn", bore, "", speed_words(gas_speed_at_redline(engine, bore)));
  const std::string none = choices.empty() ? "No pipe of the table (NPS 1/2 to 4) is near that port.\n" : "";
  return fmt::format(
      "The port is as wide as a round hole of {}{}. Gas speed: mean of the exhaust stroke at redline;\n"
      "{:.0f} to {:.0f} m/s is usual (common practice, no source).\n{}{}",
      mm(port), engine.port.exit ? "" : " (by its valves' throats)", usual_gas_speed_low, usual_gas_speed_high, none,
      table.text());
}

}  // namespace pulsewright
