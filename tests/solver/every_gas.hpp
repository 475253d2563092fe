#pragma once
// The gases that the identities are held to.

#include <string>
#include <vector>

#include "solver/gas.hpp"

namespace pulsewright {

struct NamedGas {
  std::string name;
  Gas gas;
};

inline std::vector<NamedGas> every_gas() {
  std::vector<NamedGas> gases{{"perfect 1.4", perfect_gas(1.4, 287)}, {"perfect 1.33", perfect_gas(1.33, 290)}};
  for (const Fuel& fuel : known_fuels())
    for (double lambda : {0.6, 0.85, 1.0, 1.4, 5.0})
      gases.push_back({fuel.name + " at lambda " + std::to_string(lambda), mixture_gas(fuel, lambda)});
  return gases;
}

/// Calls check(gas, T, Y) for every gas, burned fraction and temperature, also outside the range of the fits.
template <class Claim>
void for_every_state(Claim claim) {
  for (const NamedGas& g : every_gas())
    for (double Y : {0.0, 0.3, 0.7, 1.0})
      for (double T : {90.0, 150.0, 250.0, 300.0, 650.0, 1000.0, 1400.0, 2100.0, 3000.0, 3450.0, 3800.0, 4500.0})
        claim(g, T, Y);
}

}  // namespace pulsewright
