#pragma once
// A cylinder while its valves are shut: compression, burn and expansion, integrated in one go with error control.

#include <functional>
#include <vector>

#include "models/crank.hpp"
#include "models/wall_heat.hpp"
#include "solver/element.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

/// What the valves have shut in, fuel included.
struct Charge {
  Content content;
  double fuel = 0;       // kg; 0: nothing burns (motored)
  double fuel_heat = 0;  // J, set free when all has burned: heating value times combustion efficiency
  double shift = 0;      // J, added to it: the heating value is counted from 298.15 K, sensible energy from 0 K

  double fresh() const { return content.mass - content.burned; }
  double heat() const { return fuel_heat + shift; }
};

/// The case's fuel as the cylinder needs it.
struct FuelSupply {
  double air_fuel_ratio;  // kg/kg at the case's lambda; infinite: motored
  double heating_value;   // lower, J/kg, against 298.15 K
  double efficiency;      // share of it that is set free
  bool port = false;      // enters with the charge; else direct, at intake closing
};

/// The charge when the intake closes on `content`. Direct fuel is added, as vapour that counts as air at 298.15 K.
Charge make_charge(const FuelSupply& fuel, const Content& content, const Gas& gas);

/// Burned share over the cylinder's own angle: 0 up to start, 1 from end.
struct BurnProgress {
  CrankAngle start, end;
  std::function<double(CrankAngle)> fraction;
};

/// What does not change while the valves are shut. Referenced only during the integration.
struct ClosedSetting {
  const Gas& gas;
  const SliderCrank& crank;
  const CylinderWalls& walls;
  const BurnProgress& burn;
  double crank_speed;  // rad/s
};

/// What has crossed into walls and shaft since the valves shut, and how much has burned.
struct ClosedPoint {
  double burned_share = 0;
  double wall_heat = 0;  // J
  double work = 0;       // J
};

class ClosedPeriod {
 public:
  ClosedPeriod() = default;

  /// Integrates from one angle to the other. Throws Error (unphysical) where the gas leaves what is physical.
  ClosedPeriod(const ClosedSetting& setting, const Charge& charge, CrankAngle from, CrankAngle to);

  ClosedPoint at(CrankAngle angle) const;       // anywhere between
  Content content(const ClosedPoint& p) const;  // energy by balance: exact whatever the integration's error
  double energy_slope(CrankAngle angle) const;  // J/rad, of heat and work
  const Charge& charge() const { return charge_; }
  double max_pressure() const { return max_pressure_; }
  CrankAngle max_pressure_angle() const { return max_pressure_angle_; }

 private:
  struct Node {
    double angle, wall, work, wall_slope, work_slope;  // J, J/rad
  };
  friend class ClosedIntegration;

  Charge charge_;
  std::function<double(CrankAngle)> fraction_;
  std::vector<Node> nodes_;
  double max_pressure_ = 0;
  CrankAngle max_pressure_angle_;
};

}  // namespace pulsewright
