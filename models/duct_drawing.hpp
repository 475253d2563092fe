#pragma once
// A duct as it is drawn, section behind section, and how it is cut into the equal cells of the solver.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "models/cross_section.hpp"
#include "models/tube_metal.hpp"
#include "solver/duct.hpp"

namespace pulsewright {

/// One stretch of a duct. Between its two cross-sections the bore of the equal-area circle changes linearly. An oval
/// port running into a round tube is such a stretch; so is a cone.
struct DuctSection {
  double length = 0;  // along the centre line, m
  CrossSection start{}, finish{};
  double bend_angle = 0;                // all bends of the stretch together, rad
  double bend_radius = 0;               // of the centre line, m; unused without bends
  int bends = 1;                        // how many equal bends share bend_angle
  double roughness = 0;                 // m
  double wall_temperature = 0;          // K
  std::optional<TubeMetal> metal = {};  // its temperature is computed; wall_temperature is where that begins
};

/// A straight stretch of one cross-section.
DuctSection straight_section(double length, const CrossSection& section, double roughness, double wall_temperature);

/// Sections with that wall on all of them.
std::vector<DuctSection> with_wall(std::vector<DuctSection> sections, const DuctWall& wall);

struct DuctDrawing {
  std::vector<DuctSection> sections;
  bool local_losses = true;  // false: bends and tapers lose nothing (a rig without friction)

  double length() const;
};

/// One row of an area table: the bore at a distance from the duct's start, m.
struct BoreAt {
  double distance, bore;
};

/// Sections from an area table, linear in bore between its rows. Throws Error (case): fewer than two rows, a first
/// distance other than 0, distances that do not rise, a bore that is not positive.
std::vector<DuctSection> sections_from_table(std::span<const BoreAt> table, double roughness, double wall_temperature);

/// Whether the bore steps where b follows a (a step is a joint of two ducts, not a section).
bool steps(const DuctSection& a, const DuctSection& b);

/// Cells that a duct of this length gets: max(2, round(length / cell)).
int cell_count(double length, double cell);

/// Area at a distance from the start, m2; beyond the ends that of the end.
double area_at(const DuctDrawing& drawing, double distance);

/// Cuts the drawing into equal cells: face areas and cell volumes exact, hydraulic diameter, roughness and wall
/// temperature as the mean over each cell, bends and tapers as loss per metre for each direction. The first state is
/// left to the caller. Throws Error (internal) for an empty drawing, a length that is not positive, or a step in area.
DuctSpec cut_duct(std::string name, const DuctDrawing& drawing, double cell);

}  // namespace pulsewright
