#include "models/records.hpp"

#include <algorithm>

#include "shared/error.hpp"

namespace pulsewright {

const PlaceRecord& CycleRecord::place(const std::string& name) const {
  const auto found = std::find_if(places.begin(), places.end(), [&](const PlaceRecord& p) { return p.name == name; });
  if (found == places.end()) throw Error(ErrorKind::internal, "no record of the place " + name);
  return *found;
}

}  // namespace pulsewright
