#pragma once
// What one settled engine cycle left behind: every quantity against crank angle, in equal steps. Crank angle 0 is the
// firing top dead centre of cylinder 1; a record covers [0, 720) degrees.

#include <string>
#include <vector>

namespace pulsewright {

inline constexpr double record_step_deg = 0.5;
inline constexpr std::size_t record_samples = 1440;  // 720 degrees

/// The name of the place at a cylinder's valve seat; cylinder from 0.
std::string port_name(int cylinder);

/// The same crank angle within a cycle, [0, 720).
double wrapped_degrees(double deg);

using Series = std::vector<double>;  // one value per sample

/// Gas at one place of a duct. u is positive along the duct that the user drew.
struct PlaceRecord {
  std::string name;           // "port 1", "primary 1 at merge", "turbine"
  int duct;                   // of the plan
  double distance;            // from that duct's start, m
  Series p, u, rho, T, Y, c;  // Pa, m/s, kg/m3, K, -, m/s
};

/// The gas of one whole duct: [sample * cells + cell], single precision.
struct DuctRecord {
  std::string name;
  double dx;  // m
  std::size_t cells;
  Series bore;  // of the equal-area circle, per cell, m
  std::vector<float> p, u, T, Y, c;
};

struct JointRecord {
  std::string name;
  Series p, T;  // Pa, K
};

struct CylinderRecord {
  int cylinder;                      // from 1
  Series p, T, volume;               // Pa, K, m3
  Series exhaust_flow, intake_flow;  // kg/s, out through the exhaust valve, in through the intake valve
};

struct EntryRecord {
  std::string name;                           // "turbine", "turbine.a"
  Series flow, power_available, power_shaft;  // kg/s, W, W
};

struct CycleRecord {
  double rpm;
  std::vector<PlaceRecord> places;
  std::vector<DuctRecord> ducts;
  std::vector<JointRecord> joints;
  std::vector<CylinderRecord> cylinders;
  std::vector<EntryRecord> entries;

  double seconds_per_degree() const { return 1 / (6 * rpm); }
  const PlaceRecord& place(const std::string& name) const;  // throws Error (internal) where there is none
};

}  // namespace pulsewright
