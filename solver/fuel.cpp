#include "solver/fuel.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double carbon = 12.011, hydrogen = 1.008, oxygen = 15.9994;  // kg/kmol

double mass_per_carbon(const Fuel& f) {
  return carbon + f.hydrogen_per_carbon * hydrogen + f.oxygen_per_carbon * oxygen;
}

/// The number behind the E of "E85"; nothing where the text is not of that form or the number not a per cent.
std::optional<double> ethanol_per_cent(std::string_view text) {
  if (text.size() < 2 || (text.front() != 'E' && text.front() != 'e')) return std::nullopt;
  double value = 0;
  const char* const last = text.data() + text.size();
  const auto [end, error] = std::from_chars(text.data() + 1, last, value);
  if (error != std::errc() || end != last || !(value >= 0 && value <= 100)) return std::nullopt;
  return value;
}

}  // namespace

// Composition: petrol CH1.85 and diesel CH1.80 are the usual average formulas of engine textbooks; the alcohols are
// exact. Heating values of petrol and diesel, and densities: Properties of Fuels, Alternative Fuels Data Center, U.S.
// Department of Energy (18 676 and 18 394 Btu/lb; specific gravity 0.745 as the middle of 0.72 to 0.78, 0.85, 0.794,
// 0.796). Heating values of the alcohols: enthalpies of formation of the liquids, -277.6 and -239.2 kJ/mol (handbook
// values, from memory), CO2 -393.51, water vapour -241.83 (the same table says 26.95 and 20.09 MJ/kg). To 1 % (alcohols)
// or 1.5 % (petrol, diesel: make-up varies).
std::span<const Fuel> known_fuels() {
  static const std::array<Fuel, 4> fuels{{
      {"petrol", 1.85, 0.0, 43.5e6, 745},
      {"diesel", 1.80, 0.0, 42.8e6, 850},
      {"ethanol", 3.0, 0.5, 26.8e6, 794},
      {"methanol", 4.0, 1.0, 19.9e6, 796},
  }};
  return fuels;
}

const Fuel* find_fuel(const std::string& name) {
  for (const Fuel& fuel : known_fuels())
    if (fuel.name == name) return &fuel;
  return nullptr;
}

// Equation   x, y of the blend = means over carbon atoms; LHV = mean over mass
// Source     conservation of atoms; heat of mixing neglected
// Symbols    mass share of ethanol w = v rho_e/(v rho_e + (1 - v) rho_p), v share by volume
// Valid for  any share; volumes taken as additive
// Tested by  tests/solver/fuel_test.cpp
Fuel ethanol_blend(double volume_share) {
  const Fuel petrol = *find_fuel("petrol"), ethanol = *find_fuel("ethanol");
  const double density = volume_share * ethanol.density + (1 - volume_share) * petrol.density;
  const double w = volume_share * ethanol.density / density;
  const double carbon_e = w / mass_per_carbon(ethanol), carbon_p = (1 - w) / mass_per_carbon(petrol);
  const auto by_carbon = [&](double e, double p) { return (carbon_e * e + carbon_p * p) / (carbon_e + carbon_p); };
  const auto by_mass = [&](double e, double p) { return w * e + (1 - w) * p; };
  return {fmt::format("E{:g}", 100 * volume_share), by_carbon(ethanol.hydrogen_per_carbon, petrol.hydrogen_per_carbon),
          by_carbon(ethanol.oxygen_per_carbon, petrol.oxygen_per_carbon),
          by_mass(ethanol.lower_heating_value, petrol.lower_heating_value), density};
}

Fuel parse_fuel(std::string_view text) {
  const std::string_view name = trimmed(text);
  if (const Fuel* known = find_fuel(lower_case(name))) return *known;
  if (const auto per_cent = ethanol_per_cent(name)) return ethanol_blend(*per_cent / 100);
  std::string names;
  std::vector<std::string> plain;
  for (const Fuel& fuel : known_fuels()) names += in_quotes(fuel.name) + ", ", plain.push_back(fuel.name);
  const std::string near = nearest_word(name, plain);
  throw Error(ErrorKind::case_file, in_quotes(text) + " is not a fuel that is known", {},
              (near.empty() ? "" : "did you mean " + near + "? ") + "fuel may be " + names +
                  "or \"E85\", \"E10\", ... : per cent of ethanol by volume in petrol");
}

}  // namespace pulsewright
