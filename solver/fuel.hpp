#pragma once
// A fuel CHxOy as the gas and the cylinder see it.

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace pulsewright {

struct Fuel {
  std::string name;
  double hydrogen_per_carbon;  // x in CHxOy, by atoms
  double oxygen_per_carbon;    // y
  double lower_heating_value;  // J/kg of the liquid, against 298.15 K, water as vapour
  double density;              // of the liquid, kg/m3: blends are stated by volume
};

/// The fuels that a case can name.
std::span<const Fuel> known_fuels();

/// The fuel of that name, or nullptr.
const Fuel* find_fuel(const std::string& name);

/// Petrol with this share of ethanol by volume, 0 to 1.
Fuel ethanol_blend(double volume_share);

/// A fuel as a case says it: a known one, or "E85", "E10", "E27.5": per cent of ethanol by volume in petrol. Throws Error
/// (case_file) that lists what can be said.
Fuel parse_fuel(std::string_view text);

}  // namespace pulsewright
