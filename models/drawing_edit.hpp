#pragma once
// Cutting, joining and turning round what was drawn.

#include <utility>

#include "models/duct_drawing.hpp"

namespace pulsewright {

double first_area(const DuctDrawing& drawing);  // m2
double last_area(const DuctDrawing& drawing);
double drawn_volume(const DuctDrawing& drawing);  // m3, exact for cones

/// The two parts on either side of a cut, 0 < distance < length. A bend that is cut leaves its share on each side.
std::pair<DuctDrawing, DuctDrawing> parted(const DuctDrawing& drawing, double distance);

DuctDrawing joined(DuctDrawing first, const DuctDrawing& second);
DuctDrawing turned_round(const DuctDrawing& drawing);

/// The drawing with the bore given at its start (or finish), running in a straight cone to its own bore over `length`,
/// which must not exceed that of the drawing.
DuctDrawing with_mouth(const DuctDrawing& drawing, double bore, double length, bool at_finish);

}  // namespace pulsewright
