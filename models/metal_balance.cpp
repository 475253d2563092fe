#include "models/metal_balance.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "solver/root.hpp"

namespace pulsewright {
namespace {

constexpr double tolerance = 1e-6;     // K
constexpr double hottest_skin = 4000;  // K: hotter than any gas

/// ln(outer/inner) / (2 pi k L), K/W
double shell_resistance(double inner, double outer, double conductivity, double length) {
  return std::log(outer / inner) / (2 * std::numbers::pi * conductivity * length);
}

/// Where a function of the skin's temperature that falls passes zero; its slope by a small difference.
template <class Function>
double skin_where_zero(const Function& f, double low, double high, double guess) {
  const auto with_slope = [&](double skin) {
    constexpr double step = 0.05;  // K
    const double value = f(skin);
    return Slope{value, (f(skin + step) - value) / step};
  };
  return falling_root(with_slope, low, high, guess, tolerance);
}

}  // namespace

double TubePiece::metal_mass() const {
  const double outer = outside_diameter();
  return std::numbers::pi / 4 * (outer * outer - inside_diameter * inside_diameter) * length * metal.alloy->density;
}

// Equation   Q = q_out pi d_s L;  T_o = T_s + Q ln(d_s/d_o)/(2 pi k_w L);  T_i = T_o + Q ln(d_o/d_i)/(2 pi k L)
// Source     conduction through a hollow cylinder, textbook
// Symbols    Q W; d_i, d_o, d_s inside, outside, skin (over the wrap) m; k_w, k of wrap and metal W/(m K); T_s skin K
// Valid for  steady means over a cycle; no heat along the tube (a 40 mm tube of 3 mm wall moves some 10 W per 100 K over
//            100 mm, against some 500 W through that wall)
// Tested by  tests/models/metal_balance_test.cpp
WallState wall_with_skin(const TubePiece& piece, double skin, const EngineBay& bay, const Gas& gas) {
  const double inner = piece.inside_diameter, outer = piece.outside_diameter(), over = piece.skin_diameter();
  const double heat =
      std::numbers::pi * over * piece.length * outside_heat_flux(over, skin, piece.metal.emissivity, bay, gas);
  const double outside = skin + heat * shell_resistance(outer, over, piece.metal.wrap.conductivity, piece.length);
  const double k = piece.metal.alloy->conductivity.at(std::clamp(outside, 250.0, 1500.0));
  return {outside + heat * shell_resistance(inner, outer, k, piece.length), outside, skin, heat};
}

WallState wall_with_inside(const TubePiece& piece, double inside, const EngineBay& bay, const Gas& gas) {
  const auto missing = [&](double skin) { return inside - wall_with_skin(piece, skin, bay, gas).inside; };
  const double low = std::min(inside, bay.temperature) - 1, high = std::max(inside, bay.temperature) + 1;
  return wall_with_skin(piece, skin_where_zero(missing, low, high, inside), bay, gas);
}

// Equation   drive - conductance T_i(T_s) = Q(T_s)
// Source     first law over a cycle of the settled engine: what the gas gives the wall leaves it
// Symbols    drive = mean of sum(h A T_gas) W, conductance = mean of sum(h A) W/K: exactly what the gas loses
// Valid for  the settled state; temperatures swing by less than a kelvin within a cycle (thin skin of the wall)
// Tested by  tests/models/metal_balance_test.cpp, tests/models/metal_test.cpp
WallState balanced_wall(const TubePiece& piece, const GasSide& inside, const EngineBay& bay, const Gas& gas) {
  if (!(inside.conductance > 0)) return wall_with_skin(piece, bay.temperature, bay, gas);
  const auto surplus = [&](double skin) {
    const WallState wall = wall_with_skin(piece, skin, bay, gas);
    return inside.heat_in(wall.inside) - wall.heat;
  };
  const double gas_temperature = inside.gas_temperature();
  const double low = std::min(gas_temperature, bay.temperature) - 1,
               high = std::min(hottest_skin, std::max(gas_temperature, bay.temperature) + 1);
  return wall_with_skin(piece, skin_where_zero(surplus, low, high, 0.8 * gas_temperature), bay, gas);
}

double biot_number(const TubePiece& piece, double inside_coefficient, double wall_temperature) {
  return inside_coefficient * piece.metal.thickness / piece.metal.alloy->conductivity.at(wall_temperature);
}

}  // namespace pulsewright
