#pragma once
// When each cylinder's blowdown first reaches the merges, the turbine and the other ports, and how much pulses overlap.

#include "models/plan.hpp"
#include "models/rays.hpp"
#include "models/results.hpp"

namespace pulsewright {

/// Where one cylinder's gas starts and which way it leaves.
struct PortPlace {
  int cylinder;      // from 0
  RayTarget at;      // the valve seat
  bool forward;      // toward the duct's finish
  double opens_deg;  // crank angle of its exhaust opening, 0..720
};

/// A place that arrivals are reported for.
struct ArrivalPlace {
  std::string name;
  RayTarget at;
};

/// Direct arrivals from every port at every place and every other port that a path leads to.
std::vector<Arrival> direct_arrivals(const ManifoldPlan& plan, const CycleRecord& record,
                                     const std::vector<PortPlace>& ports, const std::vector<ArrivalPlace>& places);

}  // namespace pulsewright
