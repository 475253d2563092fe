#pragma once
// The heat through one piece of tube: from the gas into the wall, through wall and wrap, off the skin.

#include "models/outside_heat.hpp"
#include "models/tube_metal.hpp"

namespace pulsewright {

/// A round piece of tube and what surrounds it.
struct TubePiece {
  double length;           // m
  double inside_diameter;  // m; of the round tube of the same wetted perimeter
  TubeMetal metal;

  double outside_diameter() const { return inside_diameter + 2 * metal.thickness; }
  double skin_diameter() const { return outside_diameter() + 2 * metal.wrap.thickness; }
  double metal_mass() const;  // kg
};

/// What the gas does to the wall over a cycle, mean of h A and of h A T_gas: heat in = drive - conductance T_wall.
struct GasSide {
  double conductance = 0;  // W/K
  double drive = 0;        // W
  double heat_in(double wall_temperature) const { return drive - conductance * wall_temperature; }
  double gas_temperature() const { return drive / conductance; }  // as the wall feels it, K
};

/// Temperatures across the wall, K, and the heat that crosses it, W.
struct WallState {
  double inside, outside;  // of the metal
  double skin;             // outermost: of the wrap where there is one
  double heat;
  double metal() const { return 0.5 * (inside + outside); }
};

/// With its skin at this temperature.
WallState wall_with_skin(const TubePiece& piece, double skin, const EngineBay& bay, const Gas& gas);

/// With its inside at this temperature: what leaves.
WallState wall_with_inside(const TubePiece& piece, double inside, const EngineBay& bay, const Gas& gas);

/// In balance: what comes in leaves. Without any exchange with the gas the wall is as cold as the bay.
WallState balanced_wall(const TubePiece& piece, const GasSide& inside, const EngineBay& bay, const Gas& gas);

/// Resistance of the wall to heat over that of the gas film inside it: small where one temperature stands for all of the
/// wall.
double biot_number(const TubePiece& piece, double inside_coefficient, double wall_temperature);

}  // namespace pulsewright
