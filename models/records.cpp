#include "models/records.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"

namespace pulsewright {

std::string port_name(int cylinder) { return "port " + std::to_string(cylinder + 1); }

double wrapped_degrees(double deg) { return deg - 720 * std::floor(deg / 720); }

const PlaceRecord& CycleRecord::place(const std::string& name) const {
  const auto found = std::find_if(places.begin(), places.end(), [&](const PlaceRecord& p) { return p.name == name; });
  if (found == places.end()) throw Error(ErrorKind::internal, "no record of the place " + name);
  return *found;
}

}  // namespace pulsewright
