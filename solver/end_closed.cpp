#include "solver/end_closed.hpp"

#include "solver/orifice.hpp"

namespace pulsewright {

void ClosedEnd::advance(std::span<Port> ports, const Step&) { close_port(ports[0]); }

}  // namespace pulsewright
