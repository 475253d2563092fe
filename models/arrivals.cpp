#include "models/arrivals.hpp"

#include "models/pulse_parts.hpp"

namespace pulsewright {
namespace {

std::string in_words(const ManifoldPlan& plan, const PortPlace& from, const RayPath& path, const std::string& to) {
  std::string text = port_name(from.cylinder);
  for (int joint : path.joints) text += " - " + plan.nodes[static_cast<std::size_t>(joint)].name;
  const bool named = !path.joints.empty() && plan.nodes[static_cast<std::size_t>(path.joints.back())].name == to;
  return named ? text : text + " - " + to;
}

/// The blowdown of one cylinder as it leaves its port.
Rise source_rise(const CycleRecord& record, const PortPlace& port) {
  const PlaceRecord& place = record.place(port_name(port.cylinder));
  const WaveParts parts = wave_parts(place);
  return next_rise(parts.forward, port.opens_deg, 0);  // what the valve adds to what was there when it opened
}

}  // namespace

std::vector<Arrival> direct_arrivals(const ManifoldPlan& plan, const CycleRecord& record,
                                     const std::vector<PortPlace>& ports, const std::vector<ArrivalPlace>& places) {
  std::vector<Arrival> arrivals;
  for (const PortPlace& from : ports) {
    const Rise rise = source_rise(record, from);
    const auto add = [&](const std::string& name, const RayTarget& target) {
      const RayPath path = shortest_path(plan, from.at, from.forward, target);
      if (path.legs.empty()) return;
      const double first = arrival_degree(plan, record, path, from.at, rise.deg);
      const double steepest = arrival_degree(plan, record, path, from.at, rise.steepest_deg);
      arrivals.push_back({from.cylinder + 1, name, in_words(plan, from, path, name), first - from.opens_deg,
                          steepest - from.opens_deg, wrapped_degrees(first), path.share * rise.height()});
    };
    for (const ArrivalPlace& place : places) add(place.name, place.at);
    for (const PortPlace& other : ports)
      if (other.cylinder != from.cylinder) add(port_name(other.cylinder), other.at);
  }
  return arrivals;
}

}  // namespace pulsewright
