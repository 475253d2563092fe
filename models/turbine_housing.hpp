#pragma once
// A turbine's two nozzles from what is cast on its housing and what a rule says of its wheel.

#include "models/nozzle_pair.hpp"

namespace pulsewright {

/// A housing by its A/R, and the wheel in it. Lengths in m.
struct TurbineHousing {
  double a_over_r;          // of the whole housing: flow area over the radius of its centre
  double centroid_radius;   // R_c, of the area's centre about the shaft
  double inducer, exducer;  // of the wheel
  double rotor_exit_angle;  // beta2, of the flow that leaves the wheel, from axial, rad
};

inline constexpr double hub_share = 0.3;  // wheel hub at the exducer, in exducers; from memory

/// Throat of each scroll and rotor nozzle, as drawn: no coefficient on either.
TurbineAreas housing_areas(const TurbineHousing& housing, int scrolls);

/// What a pair passes at an expansion ratio with all scrolls fed alike, corrected to 288.15 K and 1.01325 bar.
CapacityPoint capacity_of(const TurbineAreas& areas, int scrolls, double ratio, const Gas& gas);

/// Both areas times what makes the pair pass the point; the pair's own proportions stay.
TurbineAreas scaled_to(const TurbineAreas& areas, int scrolls, const CapacityPoint& point, const Gas& gas);

}  // namespace pulsewright
