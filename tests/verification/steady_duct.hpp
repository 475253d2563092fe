#pragma once
// A duct between a supply and open gas, marched by the program's own network until nothing changes any more.

#include "solver/network.hpp"

namespace pulsewright {

class SteadyDuct {
 public:
  static constexpr double R = 287, supply_temperature = 900, supply_pressure = 3e5;  // perfect gas; total state

  /// Marches. Throws Error (internal) if the flow does not settle.
  SteadyDuct(double gamma, const NetworkOptions& options, const DuctSpec& duct, double back_pressure);

  std::size_t cells() const { return network_.cells(0); }
  double length() const { return network_.dx(0) * static_cast<double>(cells()); }
  double pressure(std::size_t i) const { return network_.cell(0, i).p; }
  double temperature(std::size_t i) const { return network_.cell(0, i).p / (network_.cell(0, i).rho * R); }
  double mach(std::size_t i) const;
  double total_temperature(std::size_t i) const;
  double total_pressure(std::size_t i) const;
  double flow(std::size_t i) const { return network_.cell(0, i).rho * network_.cell(0, i).u; }  // per area, kg/(s m2)

  /// A quantity of the cells at a place: linear between their middles and beyond the last ones.
  double at(double place, double (SteadyDuct::*what)(std::size_t) const) const;

  /// Where the Mach number falls through 1, between the middles of two cells; negative if nowhere.
  double shock_place() const;

 private:
  double gamma_;
  Network network_;
};

}  // namespace pulsewright
