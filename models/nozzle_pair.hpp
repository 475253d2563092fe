#pragma once
// Two nozzles one behind the other: a turbine's throat and its rotor, or a rotor and the silencer behind it.

#include "solver/gas.hpp"

namespace pulsewright {

/// What passes two nozzles in series. The velocity head of the first is lost: between them the gas is at rest.
struct PairFlow {
  double middle;  // pressure between the nozzles over the pressure before the first
  double flow;    // mass flow times sqrt(R T0) over area and total pressure of the first
};

/// pressure_ratio: behind the second over before the first, 0..1. second_over_first: area of the second over that of
/// the first, times sqrt(T0 before the first / T0 before the second).
PairFlow pair_flow(double pressure_ratio, double second_over_first, double gamma);

/// One point of a turbine's flow: what passes at an expansion ratio (total before over static behind), corrected to a
/// reference state: flow = mass flow * sqrt(T0/temperature) / (p0/pressure).
struct CapacityPoint {
  double flow;         // kg/s
  double ratio;        // above 1
  double temperature;  // K
  double pressure;     // Pa
};

struct TurbineAreas {
  double scroll_throat;  // of each scroll, m2, effective
  double rotor;          // m2, effective
};

/// The pair of nozzles that passes the point with all scrolls fed alike. The heat ratio is that of burned gas at
/// capacity_temperature. Throws Error (case_file) where the point is none.
TurbineAreas areas_from_capacity(const CapacityPoint& point, double rotor_over_throat, int scrolls, const Gas& gas);

inline constexpr double capacity_temperature = 873.15;  // K; of a hot turbine test stand; common practice, no source

}  // namespace pulsewright
