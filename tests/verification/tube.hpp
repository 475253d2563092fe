#pragma once
// One duct with anechoic ends, marched by the program's own network: what shock-tube problems need.

#include <functional>

#include "solver/network.hpp"

namespace pulsewright {

class Tube {
 public:
  using Profile = std::function<Primitive(double x)>;  // x from the duct's start, m

  Tube(const Gas& gas, double length, int cells, const Profile& profile, double courant = 0.8);

  /// A duct of any shape.
  Tube(const Gas& gas, const DuctSpec& duct, double courant = 0.8);

  void run_until(double t) { network_.run_until(t); }
  void step() { network_.step(network_.allowed_step()); }

  std::size_t cells() const { return network_.cells(0); }
  double dx() const { return network_.dx(0); }
  double x(std::size_t i) const { return (static_cast<double>(i) + 0.5) * dx(); }
  Primitive cell(std::size_t i) const { return network_.cell(0, i); }
  Primitive at(double x) const;                                          // between the cells' middles, linear
  Content balance() const { return network_.held() + network_.left(); }  // what was there at first, if nothing is lost
  const Network& network() const { return network_; }

 private:
  Network network_;
};

/// Mean over the cells of |what(marched cell) - what(exact at its middle)|.
double mean_error(const Tube& tube, const Tube::Profile& exact, const std::function<double(const Primitive&)>& what);

}  // namespace pulsewright
