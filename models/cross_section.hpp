#pragma once
// The hole that the gas runs through, cut square: area and wetted perimeter.

#include <string_view>

namespace pulsewright {

struct CrossSection {
  double area;       // m2
  double perimeter;  // m

  double hydraulic_diameter() const { return 4 * area / perimeter; }
};

CrossSection round_section(double bore);

/// Two half rounds with straight sides between (what a cutter leaves): width over all, height over all, m.
CrossSection oval_section(double width, double height);

CrossSection rectangle_section(double width, double height);

/// Bore of the round hole of the same area, m.
double equal_area_bore(double area);

/// Reads "round 32 mm", "oval 36 mm x 28 mm" (or "28 mm x 36 mm"), "rectangle 34 mm x 28 mm". Throws Error (case)
/// naming what was found and the three allowed forms.
CrossSection parse_cross_section(std::string_view text);

}  // namespace pulsewright
