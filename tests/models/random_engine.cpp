#include "tests/models/random_engine.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <vector>

#include "tests/models/random_manifold.hpp"
#include "tests/solver/random_numbers.hpp"

namespace pulsewright::test {
namespace {

struct Sizes {
  double bore, stroke, redline, boost;  // mm, mm, rpm, bar
  double litres(int cylinders) const { return cylinders * std::numbers::pi / 4 * bore * bore * stroke * 1e-6; }
};

/// Mean piston speeds up to 26 m/s, the fastest that is built.
Sizes random_sizes(RandomNumbers& random) {
  Sizes s{random.between(60, 110), random.between(50, 110), random.between(3000, 10000), 0};
  s.redline = std::floor(std::min(s.redline, 26 * 30 / (s.stroke * 1e-3)));
  if (!random.chance(0.15)) s.boost = random.between(0, 2.5);
  return s;
}

std::string list(const std::vector<double>& degrees) {
  std::string text;
  for (const double d : degrees) text += fmt::format("{}\"{:.1f} deg\"", text.empty() ? "" : ", ", d);
  return "[" + text + "]";
}

/// Even distances in any order, or any angles at all.
std::vector<double> random_firing(RandomNumbers& random, int cylinders) {
  std::vector<double> at(static_cast<std::size_t>(cylinders));
  const bool even = random.chance(0.5);
  for (std::size_t k = 0; k < at.size(); ++k)
    at[k] = even ? 720.0 * static_cast<double>(k) / cylinders : random.between(0, 719);
  for (std::size_t k = at.size(); k > 1; --k)
    std::swap(at[k - 1], at[static_cast<std::size_t>(random.whole(0, static_cast<int>(k) - 1))]);
  return at;
}

std::string engine_text(RandomNumbers& random, const Sizes& s, int cylinders) {
  const char* fuels[] = {"petrol", "petrol", "petrol", "ethanol", "methanol", "diesel"};
  const std::string fuel = fuels[random.whole(0, 5)];
  const bool diesel = fuel == "diesel";
  return fmt::format(
      "[engine]\ncylinders = {}\nfiring_at = {}\nbore = \"{:.1f} mm\"\nstroke = \"{:.1f} mm\"\nrod = \"{:.1f} mm\"\n"
      "compression_ratio = {:.1f}\nredline = {:.0f}\nfuel = \"{}\"\nlambda = {:.2f}\nfuel_enters = \"{}\"\n",
      cylinders, list(random_firing(random, cylinders)), s.bore, s.stroke, s.stroke * random.between(1.4, 2.1),
      diesel ? random.between(14, 18) : random.between(7.5, 12), s.redline, fuel,
      diesel ? random.between(1.2, 2) : random.between(0.75, 1.1), random.chance(0.5) ? "port" : "direct");
}

std::string valve_text(RandomNumbers& random, const std::string& which, double bore, const std::string& opens,
                       const std::string& closes) {
  const int count = random.whole(1, 2);
  const double head = bore * (count == 1 ? random.between(0.36, 0.46) : random.between(0.30, 0.40));
  return fmt::format(
      "[engine.{}]\ncount = {}\nhead = \"{:.1f} mm\"\nlift = \"{:.2f} mm\"\nopens = \"{}\"\ncloses = \"{}\"\n"
      "stated_at = \"{} mm\"\n",
      which, count, head, head * random.between(0.2, 0.35), opens, closes, random.chance(0.5) ? 0.1 : 1.0);
}

std::string valves_text(RandomNumbers& random, double bore) {
  const auto deg = [&](double low, double high, const char* where) {
    return fmt::format("{:.0f} deg {}", random.between(low, high), where);
  };
  const std::string e_opens = deg(25, 85, "before bdc"), e_closes = deg(0, 45, "after tdc"),
                    i_opens = deg(-15, 40, "before tdc"), i_closes = deg(20, 80, "after bdc");
  return valve_text(random, "exhaust_valve", bore, e_opens, e_closes) +
         valve_text(random, "intake_valve", bore, i_opens, i_closes);
}

std::string port_text(RandomNumbers& random, double bore) {
  const double d = bore * random.between(0.38, 0.48);
  const std::string exits[] = {fmt::format("round {:.1f} mm", d),
                               fmt::format("oval {:.1f} mm x {:.1f} mm", 1.2 * d, 0.8 * d),
                               fmt::format("rectangle {:.1f} mm x {:.1f} mm", d, 0.8 * d)};
  std::string text = fmt::format("[engine.exhaust_port]\nlength = \"{:.0f} mm\"\n", random.between(40, 110));
  if (random.chance(0.7)) text += "exit = \"" + exits[random.whole(0, 2)] + "\"\n";
  return text;
}

/// A turbine from far too small to far too large for the engine.
std::string turbine_text(RandomNumbers& random, const Sizes& s, int cylinders, int scrolls) {
  const double fits = 0.16 * s.litres(cylinders) / 2 * s.redline / 7500 * (1 + s.boost) / 2;
  return fmt::format(
      "[charge]\nboost_gauge = \"{:.3f} bar\"\n[turbine]\nscrolls = {}\nrotor_over_throat = {:.2f}\ncapacity = {{ flow "
      "= \"{:.5f} kg/s\", ratio = 2.0, temperature = \"288.15 K\", pressure = \"1.01325 bar\" }}\n",
      s.boost, scrolls, random.between(0.7, 1.4), fits * random.spread(0.6, 1.8));
}

}  // namespace

std::string random_engine(std::uint64_t seed) {
  RandomNumbers random(seed);
  const int cylinders = random.whole(1, 8);
  const Sizes s = random_sizes(random);
  const double tube = s.bore * random.between(0.36, 0.55);
  const RandomManifold manifold = random_manifold(random, cylinders, tube);
  std::string text = fmt::format("title = \"Engine {}\"\n", seed);
  if (random.chance(0.2)) text += "silencer = \"none\"\n";
  text += engine_text(random, s, cylinders) + valves_text(random, s.bore) + port_text(random, s.bore);
  text += turbine_text(random, s, cylinders, manifold.scrolls);
  if (random.chance(0.3)) text += fmt::format("[ambient]\naltitude = \"{:.0f} m\"\n", random.between(0, 3000));
  text += fmt::format("[run]\nrpm = [{:.0f}]\ncell = \"25 mm\"\n", s.redline * random.between(0.25, 1));
  return text + manifold.text;
}

}  // namespace pulsewright::test
