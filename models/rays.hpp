#pragma once
// Rays: how a pulse that leaves a cylinder travels, at u + c of the settled state, along its primary, through joints,
// to the turbine and to the other ports.

#include <string>
#include <vector>

#include "models/plan.hpp"
#include "models/records.hpp"

namespace pulsewright {

/// One duct run through, from one of its ends, or up to a place within it.
struct RayLeg {
  int duct;
  bool forward;   // from start to finish
  double length;  // run in this duct, m
};

struct RayPath {
  std::vector<RayLeg> legs;
  std::vector<int> joints;  // nodes crossed between the legs
  double share;             // small-pulse transmission of the joints together
};

/// Where rays can be asked to go: a place within a duct, reached from outside it.
struct RayTarget {
  int duct;
  double distance;  // from the duct's start, m
};

/// The shortest way (fewest joints, at most 6) from a place in a duct, leaving through its finish (forward) or start, to
/// the target; no legs when there is none. Joints pass 2 A_in / sum of A.
RayPath shortest_path(const ManifoldPlan& plan, RayTarget from, bool forward, RayTarget to);

/// Crank angle at which a ray that leaves at `deg` has run the path; crossing a joint takes V/(c sum A).
double arrival_degree(const ManifoldPlan& plan, const CycleRecord& record, const RayPath& path, RayTarget from,
                      double deg);

}  // namespace pulsewright
