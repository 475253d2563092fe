#pragma once
// Where the fuel's heat goes over one cycle of the whole engine: work, walls, what the turbine takes, what the exhaust
// carries into the air, what does not burn. All cylinders together, J per cycle.

#include "models/cylinder_cycle.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

struct EnergyAccount {
  double fuel = 0;                // heating value of all fuel that came in
  double gross_work = 0;          // on the pistons in compression and expansion
  double pumping_work = 0;        // on the pistons while gas is exchanged; below zero where they push
  double friction_work = 0;       // what bearings, rings and pumps take of it
  double cylinder_wall_heat = 0;  // to pistons, heads and liners
  double duct_wall_heat = 0;      // to ports, primaries and all other ducts
  double turbine_work = 0;        // taken out of the gas by the wheels
  double exhaust_heat = 0;        // enthalpy that leaves for the air beyond what the charge brought; datum 298.15 K
  double unburned = 0;            // heating value that was not set free
  double stored = 0;              // more in cylinders and ducts at the end than at the start

  double indicated_work() const { return gross_work + pumping_work; }
  double brake_work() const { return indicated_work() - friction_work; }
  /// Fuel less all that became of it, the store left out; 0 for a cycle that repeats itself exactly.
  double rest() const {
    return fuel - indicated_work() - cylinder_wall_heat - duct_wall_heat - turbine_work - exhaust_heat - unburned;
  }
};

/// What crossed the boundary of the gas in cylinders and ducts over one cycle.
struct EnergyCrossings {
  CylinderTotals cylinders;  // of all of them
  Content to_air;            // through the last ends, turbines without a downpipe and gates
  double duct_heat;          // from the walls into the gas, J
  double turbine_work;       // J
  double stored;             // sensible energy gained, J
};

/// The fuel as the account needs it.
struct FuelAccount {
  double heating_value;  // lower, J/kg
  double port_share;     // mass share of port fuel in what the intake brings; 0: direct
};

/// Work is shared out by the caller: gross_work holds all indicated work, pumping and friction are zero.
EnergyAccount energy_account(const EnergyCrossings& crossings, const FuelAccount& fuel, const Gas& gas);

}  // namespace pulsewright
