#pragma once
// What stands between the gas and the engine bay: the metal of a tube and what is wrapped round it.

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "models/alloy.hpp"

namespace pulsewright {

/// A layer on the outside of the tube; thickness 0: bare.
struct TubeWrap {
  std::string name;         // empty: bare, or given by its two figures
  double thickness = 0;     // m
  double conductivity = 1;  // W/(m K)
};

struct TubeMetal {
  double thickness = 0;          // of the wall, m
  const Alloy* alloy = nullptr;  // of the table, which outlives everything
  double emissivity = 0;         // of the outermost skin
  TubeWrap wrap;
  bool housing = false;  // a turbine's casting; else a tube
};

/// A wrap that can be named. Values are common practice without a source; they join the list of what is assumed.
struct NamedWrap {
  std::string_view name;
  double thickness, conductivity;
};
std::span<const NamedWrap> named_wraps();

/// What a case says about the wall of a duct. metal: its temperature is computed, `temperature` is only where it begins.
struct DuctWall {
  double roughness, temperature;
  std::optional<TubeMetal> metal = {};
};

}  // namespace pulsewright
