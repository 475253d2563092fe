#pragma once
// A lift curve measured point by point, as a cam doctor or a dial gauge and a degree wheel give it.

#include <string>
#include <vector>

#include "models/crank.hpp"

namespace pulsewright {

struct LiftPoint {
  CrankAngle angle;  // as in LiftCurve: the cylinder's own; in a file after the dead centre between exhaust and intake
  double lift;       // m
};

/// Throws Error (case_file) unless angles rise over less than a cycle, lifts are 0 to 50 mm, the first and the last no
/// more than 0.1 mm, and the highest above that.
void check_lift_table(const std::vector<LiftPoint>& table);

/// From the text of a file called `name`: heading "crank_deg,lift_mm", lines that begin with # left out. Throws Error
/// (case_file) with the line.
std::vector<LiftPoint> parse_lift_table(const std::string& text, const std::string& name);

}  // namespace pulsewright
