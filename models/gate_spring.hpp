#pragma once
// The forces on the valve of an external wastegate: boost on its diaphragm and drive pressure on its valve against a
// spring. Where they lift it before the boost alone would, the gate opens early.

namespace pulsewright {

/// As the gate shows itself on the bench, with an air line on its boost port and nothing on its valve.
struct GateSpring {
  double cracks;          // pressure at the port that just lifts the valve, Pa gauge: "the spring"
  double fully_open;      // pressure at the port that holds it at full lift, Pa gauge
  double diaphragm_area;  // m2
  double valve_area;      // on which the drive pressure acts, m2
  bool controller =
      false;  // a boost controller keeps the boost off the port: only drive pressure is left to lift the valve
};

/// Share of full lift, 0..1, at a boost (Pa gauge) and a drive pressure over what lies behind the valve (Pa).
double forced_opening(const GateSpring& spring, double boost_gauge, double drive_over_behind);

/// The same with nothing on the valve: what the gate does by design.
double opening_by_boost(const GateSpring& spring, double boost_gauge);

/// Boost at the port at which the valve begins to lift under this drive pressure, Pa gauge; 0 where the drive pressure
/// alone lifts it.
double cracking_boost(const GateSpring& spring, double drive_over_behind);

/// Drive pressure over what lies behind the valve that lifts it without any boost at the port, Pa.
double blowing_open_pressure(const GateSpring& spring);

}  // namespace pulsewright
