#pragma once
// A vessel of gas at a duct's end, behind an orifice that opens at a given time.

#include <string>

#include "solver/element.hpp"

namespace pulsewright {

struct VesselSpec {
  std::string name;
  double volume;              // m3
  double pressure;            // Pa, absolute, at the start
  double temperature;         // K, at the start
  double burned = 0;          // burned mass fraction at the start
  double effective_area = 0;  // discharge coefficient times area of the orifice, m2
  double opens = 0;           // s: shut before, open after
};

/// Its mass, energy and burned mass advance by the very fluxes that the duct receives; well stirred, no heat through
/// its wall.
class Vessel : public Element {
 public:
  Vessel(VesselSpec spec, const Gas& gas);

  /// Throws Error (unphysical) when the vessel has run empty.
  void advance(std::span<Port> ports, const Step& step) override;
  Content held() const override { return held_; }

 private:
  VesselSpec spec_;
  Content held_;
};

}  // namespace pulsewright
