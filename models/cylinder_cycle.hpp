#pragma once
// What a cylinder reports of a cycle, and the bookkeeping that gathers it.

#include <optional>
#include <vector>

#include "models/crank.hpp"
#include "solver/element.hpp"

namespace pulsewright {

/// What has crossed a cylinder's boundary. held() changes by exactly intake - exhaust + fuel + heat - wall heat - work.
struct CylinderTotals {
  Content intake;        // from the plenum; energy as enthalpy
  Content exhaust;       // into the exhaust port, net
  Content fuel;          // direct fuel: mass, and its enthalpy as vapour at 298.15 K (port fuel is in intake)
  double fuel_mass = 0;  // kg burned, direct or port
  double fuel_heat = 0;  // J: heating value times combustion efficiency times burned share
  double heat = 0;       // J added to the sensible energy: fuel_heat and the change of reference state
  double burned = 0;     // kg turned from fresh to burned
  double wall_heat = 0;  // J
  double work = 0;       // J on the piston
};
CylinderTotals operator+(const CylinderTotals& a, const CylinderTotals& b);
CylinderTotals operator-(const CylinderTotals& a, const CylinderTotals& b);

/// What was in the cylinder when the intake closed, before direct fuel.
struct TrappedCharge {
  double mass = 0;          // kg, fuel of port injection included
  double air = 0;           // kg, without fuel and burned gas
  double burned_left = 0;   // mass fraction of burned gas
  double inducted_air = 0;  // kg from the plenum since the intake closed before, without fuel
  double fuel = 0;          // kg
  double max_pressure = 0;  // Pa, of the closed period that follows
  CrankAngle max_pressure_angle = {};
};

/// One cycle of one cylinder, from bottom dead centre before compression to the next.
struct CylinderCycle {
  int number = 0;  // full cycles since the start, from 1
  TrappedCharge charge;
  // Both over the displacement filled with air of the plenum's density:
  double volumetric_efficiency = 0;  // air trapped at intake closing
  double delivery = 0;               // air drawn from the plenum, what blew through over the overlap included
  double imep = 0;                   // gross: compression and expansion, Pa
  double pmep = 0;                   // gas exchange; above zero where the intake pushes the piston, Pa
  CylinderTotals totals;             // over this cycle
};

/// State at one crank angle.
struct CylinderSample {
  CrankAngle angle;  // the cylinder's own
  double p, T;       // Pa, K
};

/// Gathers cycles: told of every half cycle that ends (a stroke pair between bottom dead centres).
class CycleBook {
 public:
  explicit CycleBook(double displacement) : displacement_(displacement) {}

  void trapped(const TrappedCharge& charge) { charge_ = charge; }
  void compression_and_expansion_done(const CylinderTotals& totals);
  void gas_exchange_done(const CylinderTotals& totals, double plenum_air_density);

  const std::optional<CylinderCycle>& last() const { return last_; }  // empty until a whole cycle is done

 private:
  double displacement_;
  TrappedCharge charge_;
  CylinderCycle current_;
  std::optional<CylinderTotals> at_start_;  // of the current cycle
  double work_at_half_ = 0;
  std::optional<CylinderCycle> last_;
};

}  // namespace pulsewright
