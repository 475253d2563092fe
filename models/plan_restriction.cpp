// Restrictions in a plan: each stands at a tap of a duct, alone.

#include <algorithm>

#include "models/plan_draft.hpp"
#include "models/restriction.hpp"
#include "shared/words.hpp"
#include "solver/throttle.hpp"

namespace pulsewright {
namespace {

double jet_area(const RestrictionSketch& restriction, double pipe) {
  switch (restriction.kind) {
    case RestrictionSketch::Kind::plate:
      return jet_of_plate(round_section(restriction.value).area, pipe);
    case RestrictionSketch::Kind::butterfly:
      return jet_of_butterfly(restriction.value, pipe);
    case RestrictionSketch::Kind::loss:
      return jet_area_of_loss(restriction.value, pipe);
  }
  return pipe;
}

void attach_restriction(Draft& draft, int index) {
  const RestrictionSketch& restriction = draft.sketch.restrictions[static_cast<std::size_t>(index)];
  const auto tap = draft.taps.find(restriction.at.text);
  if (tap == draft.taps.end())
    return draft.fault("at: " + in_quotes(restriction.at.text) + " is no place along a duct", restriction.at.place,
                       "a duct and a distance, such as \"downpipe:400mm\"");
  if (tap->second < 0) return;
  DraftNode& node = draft.node(tap->second);
  if (node.restriction >= 0 || node.gates > 0 || ports_at(draft, tap->second).size() != 2)
    return draft.fault("restriction " + in_quotes(restriction.name) + " stands where something else does",
                       restriction.at.place, "move one of them a little along the duct");
  node.restriction = index;
  node.name = restriction.name;
  node.kind = ThrottleNode{0, 0, restriction.at.text};
}

}  // namespace

void attach_restrictions(Draft& draft) {
  for (std::size_t k = 0; k < draft.sketch.restrictions.size(); ++k) attach_restriction(draft, static_cast<int>(k));
}

void resolve_restrictions(Draft& draft) {
  for (std::size_t k = 0; k < draft.nodes.size(); ++k) {
    DraftNode& node = draft.nodes[k];
    auto* throttle = std::get_if<ThrottleNode>(&node.kind);
    if (!throttle || node.gone) continue;
    const auto ports = ports_at(draft, static_cast<int>(k));
    throttle->pipe_area = std::min(area_of(draft, ports[0]), area_of(draft, ports[1]));
    throttle->jet_area =
        jet_area(draft.sketch.restrictions[static_cast<std::size_t>(node.restriction)], throttle->pipe_area);
  }
}

}  // namespace pulsewright
