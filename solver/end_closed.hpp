#pragma once
// A closed end: a wall across the duct.

#include "solver/element.hpp"

namespace pulsewright {

class ClosedEnd : public Element {
 public:
  void advance(std::span<Port> ports, const Step& step) override;
};

}  // namespace pulsewright
