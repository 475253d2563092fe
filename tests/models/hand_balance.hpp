#pragma once
// The metal of a tube by hand: three resistances and a bisection, written apart from the program's own.

#include <cmath>
#include <numbers>

namespace pulsewright::test {

struct HandTube {
  double length, inside, outside, skin;  // m, diameters
  double k_metal, k_wrap, emissivity;
  double bay;  // K, still air at 1 atm
};

// Air by Sutherland's laws (White, Viscous Fluid Flow; constants from memory), c_p 1060 J/(kg K) at film temperatures.
inline double hand_heat_off_skin(const HandTube& t, double T) {
  const double film = (T + t.bay) / 2;
  const double mu = 1.716e-5 * std::pow(film / 273.15, 1.5) * (273.15 + 110.4) / (film + 110.4);
  const double k = 0.0241 * std::pow(film / 273.15, 1.5) * (273.15 + 194) / (film + 194);
  const double rho = 101325 / (287 * film), Pr = mu * 1060 / k;
  const double Ra = 9.81 / film * (T - t.bay) * std::pow(t.skin, 3) * rho * rho * Pr / (mu * mu);
  const double Nu =
      std::pow(0.6 + 0.387 * std::pow(Ra / std::pow(1 + std::pow(0.559 / Pr, 0.5625), 16.0 / 9), 1.0 / 6), 2);
  const double area = std::numbers::pi * t.skin * t.length;
  return area * (Nu * k / t.skin * (T - t.bay) + t.emissivity * 5.67e-8 * (std::pow(T, 4) - std::pow(t.bay, 4)));
}

/// Inside temperature of the metal for gas at T_gas that gives hA W/K.
inline double hand_metal(const HandTube& t, double hA, double T_gas) {
  double low = t.bay, high = T_gas;
  for (int turn = 0; turn < 60; ++turn) {
    const double skin = (low + high) / 2, heat = hand_heat_off_skin(t, skin);
    const double across = heat *
                          (std::log(t.outside / t.inside) / t.k_metal + std::log(t.skin / t.outside) / t.k_wrap) /
                          (2 * std::numbers::pi * t.length);
    (heat < hA * (T_gas - skin - across) ? low : high) = skin;
  }
  const double heat = hand_heat_off_skin(t, low);
  return T_gas - heat / hA;
}

}  // namespace pulsewright::test
