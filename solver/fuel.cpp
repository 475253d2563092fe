#include "solver/fuel.hpp"

#include <array>

namespace pulsewright {

// Composition: petrol CH1.85 and diesel CH1.80 are the usual average formulas of engine textbooks; the alcohols are
// exact. Heating values: textbook figures from memory, to 0.5 % (alcohols) or 1.5 % (petrol, diesel: make-up varies).
std::span<const Fuel> known_fuels() {
  static const std::array<Fuel, 4> fuels{{
      {"petrol", 1.85, 0.0, 43.5e6},
      {"diesel", 1.80, 0.0, 42.8e6},
      {"ethanol", 3.0, 0.5, 26.8e6},
      {"methanol", 4.0, 1.0, 19.9e6},
  }};
  return fuels;
}

const Fuel* find_fuel(const std::string& name) {
  for (const Fuel& fuel : known_fuels())
    if (fuel.name == name) return &fuel;
  return nullptr;
}

}  // namespace pulsewright
