#include "solver/end_vessel.hpp"

#include <fmt/format.h>

#include "shared/error.hpp"
#include "solver/orifice.hpp"

namespace pulsewright {

Vessel::Vessel(VesselSpec spec, const Gas& gas) : spec_(std::move(spec)) {
  const double Y = spec_.burned, T = spec_.temperature;
  const double mass = spec_.pressure * spec_.volume / (gas_constant(gas, Y) * T);
  held_ = {mass, mass * internal_energy(gas, T, Y), mass * Y};
}

void Vessel::advance(std::span<Port> ports, const Step& step) {
  const double Y = held_.burned / held_.mass, T = temperature_from_energy(step.gas, held_.energy / held_.mass, Y);
  const double pressure = held_.mass * gas_constant(step.gas, Y) * T / spec_.volume;
  const double area = step.time >= spec_.opens ? spec_.effective_area : 0;
  flow_through_orifice(make_reservoir(step.gas, pressure, T, Y), area, step.gas, ports[0]);
  held_ += content_through(ports[0], step.dt);
  if (!(held_.mass > 0) || !(held_.energy > 0))
    throw Error(ErrorKind::unphysical,
                fmt::format("the vessel has run empty: {:g} kg and {:g} J left at {:g} s", held_.mass, held_.energy,
                            step.time + step.dt),
                spec_.name, "its volume is too small for its orifice");
}

}  // namespace pulsewright
