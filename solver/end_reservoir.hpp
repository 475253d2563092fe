#pragma once
// Ends beside gas that never changes: a duct open to the air, a supply at given total state, a nozzle.

#include <memory>

#include "solver/element.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {

/// Gas of one state without end beside the duct, seen through an area. Inflow takes its pressure and temperature as
/// total values; outflow leaves against its pressure, or at sonic speed where that cannot be reached.
class ReservoirEnd : public Element {
 public:
  /// effective_area: discharge coefficient times area, m2; the duct's area or more is a plain open end.
  ReservoirEnd(const Reservoir& outside, double effective_area) : outside_(outside), area_(effective_area) {}

  void advance(std::span<Port> ports, const Step& step) override;
  Content left() const override { return left_; }

 private:
  Reservoir outside_;
  double area_;
  Content left_;
};

/// The duct's whole bore open to gas at rest. An open pipe's end correction (0.61 radius for a thin rim, H. Levine and
/// J. Schwinger, Phys. Rev. 73, 1948, 383) is not part of it: it lies outside the one-dimensional duct.
std::unique_ptr<Element> open_end(const Reservoir& outside);

/// Open to a supply of given total pressure and temperature.
std::unique_ptr<Element> supply_end(const Reservoir& total);

/// A nozzle of the given area (m2) and discharge coefficient at the duct's end.
std::unique_ptr<Element> nozzle_end(const Reservoir& outside, double area, double discharge);

}  // namespace pulsewright
