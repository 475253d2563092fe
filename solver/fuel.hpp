#pragma once
// A fuel CHxOy as the gas and the cylinder see it.

#include <span>
#include <string>

namespace pulsewright {

struct Fuel {
  std::string name;
  double hydrogen_per_carbon;  // x in CHxOy, by atoms
  double oxygen_per_carbon;    // y
  double lower_heating_value;  // J/kg, against 298.15 K, water as vapour
};

/// The fuels that a case can name.
std::span<const Fuel> known_fuels();

/// The fuel of that name, or nullptr.
const Fuel* find_fuel(const std::string& name);

}  // namespace pulsewright
