#pragma once
// A narrow place between two ducts: a plate with a hole, a half-open butterfly valve, a flow straightener. Quasi-steady,
// without volume. The gas contracts without loss to the jet and spreads from it over the duct behind, where it loses what
// Borda and Carnot say; the jet chokes as in any orifice.

#include "solver/element.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

class Throttle : public Element {
 public:
  /// jet_area: of the contracted jet, m2; above 0. As wide as a duct or wider it costs nothing beyond the step in bore.
  explicit Throttle(double jet_area) : area_(jet_area) {}

  /// Two ports. What one gives the other takes, to the last digit.
  void advance(std::span<Port> ports, const Step& step) override;

 private:
  double area_;
  double jet_ = 0.5;  // where the last search ended: between the two pressures of the gas brought to rest, 0..1
};

/// Jet area of a place that costs `loss` velocity heads of the duct: (area/jet - 1)^2 = loss.
double jet_area_of_loss(double loss, double area);

}  // namespace pulsewright
