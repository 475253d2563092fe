// Mouths: the throat that the outlet of a joint starts at, the taper behind it, and the volute that follows.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/drawing_edit.hpp"
#include "models/plan_draft.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double no_taper = 1e-6;  // m: bores that differ by less are one

bool is_volute(const DraftRun& run) { return run.ends[at_finish].scroll >= 0; }

double assumed_throat(Draft& draft, int node, DraftPort outlet) {
  double largest = 0;
  for (const DraftPort port : ports_at(draft, node))
    if (port.run != outlet.run) largest = std::max(largest, area_of(draft, port));
  draft.assumed.facts().largest_primary_bore = equal_area_bore(largest);
  return draft.assumed.take("joint.throat", draft.node(node).name);
}

void shape_volute(DraftRun& run, double bore) {
  run.drawing = with_mouth(run.drawing, bore, run.drawing.length(), false);
}

void shape_outlet_duct(Draft& draft, const JointSketch& joint, DraftPort outlet) {
  if (!joint.throat) {
    if (joint.taper)
      draft.fault("taper: joint " + in_quotes(joint.name) + " has no throat for it to start at", joint.place);
    return;
  }
  DraftRun& run = draft.run(outlet.run);
  const double length = run.drawing.length(), own = equal_area_bore(area_of(draft, outlet));
  if (joint.taper && *joint.taper > length)
    return draft.fault(fmt::format("taper: {} is longer than the outlet duct, {}",
                                   in_words(*joint.taper, Dimension::length), in_words(length, Dimension::length)),
                       joint.place);
  const double half_change = std::abs(*joint.throat - own) / 2;
  if (half_change < no_taper) return;
  const double taper = joint.taper
                           ? *joint.taper
                           : std::min(length, half_change / std::tan(draft.assumed.take("joint.taper", joint.name)));
  run.drawing = with_mouth(run.drawing, *joint.throat, taper, outlet.end == at_finish);
}

void shape_joint(Draft& draft, int node) {
  const JointSketch& joint = *draft.node(node).joint;
  if (!draft.node(node).outlet) return;
  const DraftPort outlet = *draft.node(node).outlet;
  if (!is_volute(draft.run(outlet.run))) return shape_outlet_duct(draft, joint, outlet);
  if (joint.taper)
    draft.fault(
        "taper: the outlet of " + in_quotes(joint.name) + " is a turbine entry, whose volute starts at the throat",
        joint.place, "leave the taper out, or draw a [[duct]] between");
  const double bore = joint.throat ? *joint.throat : assumed_throat(draft, node, outlet);
  if (bore > 0) shape_volute(draft.run(outlet.run), bore);
}

/// A volute behind a duct starts at that duct's bore.
void shape_flange(Draft& draft, int node) {
  const auto ports = ports_at(draft, node);
  for (const DraftPort volute : ports)
    for (const DraftPort duct : ports)
      if (volute.run != duct.run && is_volute(draft.run(volute.run)))
        shape_volute(draft.run(volute.run), equal_area_bore(area_of(draft, duct)));
}

}  // namespace

void shape_mouths(Draft& draft) {
  const int count = static_cast<int>(draft.nodes.size());
  for (int k = 0; k < count; ++k)
    if (draft.node(k).joint) shape_joint(draft, k);
  for (int k = 0; k < count; ++k)
    if (draft.node(k).flange) shape_flange(draft, k);
}

}  // namespace pulsewright
