#include "models/energy_account.hpp"

namespace pulsewright {
namespace {

constexpr double datum = 298.15;  // K, at which heating values are stated

double above_datum(const Content& c, const Gas& gas) {
  return c.energy - (c.mass - c.burned) * enthalpy(gas, datum, 0) - c.burned * enthalpy(gas, datum, 1);
}

}  // namespace

// Equation   m_f LHV = W + Q_cylinders + Q_ducts + W_turbine + H_air - H_charge + m_f LHV (1 - burned share) + stored,
//            H = E - m_fresh h_fresh(298.15) - m_burned h_burned(298.15)
// Source     first law for the open system of cylinders and ducts: Heywood 1988, section 3.6.2
// Symbols    m_f fuel kg; LHV J/kg; W, Q work and wall heat J; H what crosses, as enthalpy above 298.15 K J
// Valid for  any fuel; the cold of evaporating direct fuel is the fuel's own and comes out of its heat
// Tested by  tests/models/energy_account_test.cpp
EnergyAccount energy_account(const EnergyCrossings& c, const FuelAccount& fuel, const Gas& gas) {
  EnergyAccount a;
  const double port_fuel = fuel.port_share * (c.cylinders.intake.mass - c.cylinders.intake.burned);
  a.fuel = fuel.heating_value * (c.cylinders.fuel.mass + port_fuel);
  a.gross_work = c.cylinders.work;
  a.cylinder_wall_heat = c.cylinders.wall_heat;
  a.duct_wall_heat = -c.duct_heat;
  a.turbine_work = c.turbine_work;
  a.exhaust_heat = above_datum(c.to_air, gas) - above_datum(c.cylinders.intake, gas);
  a.unburned = a.fuel - c.cylinders.fuel_heat;
  a.stored = c.stored;
  return a;
}

}  // namespace pulsewright
