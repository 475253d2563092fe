#include "solver/end_reservoir.hpp"

#include <limits>

namespace pulsewright {

void ReservoirEnd::advance(std::span<Port> ports, const Step& step) {
  flow_through_orifice(outside_, area_, step.gas, ports[0]);
  left_ += content_through(ports[0], step.dt);
}

std::unique_ptr<Element> open_end(const Reservoir& outside) {
  return std::make_unique<ReservoirEnd>(outside, std::numeric_limits<double>::infinity());
}

std::unique_ptr<Element> supply_end(const Reservoir& total) { return open_end(total); }

std::unique_ptr<Element> nozzle_end(const Reservoir& outside, double area, double discharge) {
  return std::make_unique<ReservoirEnd>(outside, area * discharge);
}

}  // namespace pulsewright
