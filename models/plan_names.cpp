// Names of a case, and the taps that addresses of the form NAME:DISTANCE ask for.

#include <algorithm>
#include <cmath>
#include <map>

#include "models/drawing_edit.hpp"
#include "models/plan_draft.hpp"
#include "shared/error.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

void add_name(Draft& draft, NameEntry entry) {
  if (const NameEntry* other = find_name(draft, entry.name)) {
    draft.fault("the name " + in_quotes(entry.name) + " is taken" +
                    (other->place.line == 0 ? "" : " (" + draft.faults.line_of(other->place) + ")"),
                entry.place, "ducts, joints, ends, gates, restrictions and turbines share one set of names");
    return;
  }
  draft.names.push_back(std::move(entry));
}

template <class List>
void add_names(Draft& draft, const List& list, NameKind kind) {
  int index = 0;
  for (const auto& item : list) add_name(draft, {item.name, item.place, kind, index++});
}

/// A tap: a node in the duct at a distance.
struct Tap {
  double distance;
  int node;
};

struct TapTable {
  std::map<int, std::vector<Tap>> by_duct;  // sketch index
};

/// NAME and DISTANCE of an address, or nothing where it has no colon.
struct TapAddress {
  std::string name, distance;
};
std::optional<TapAddress> tap_address(const std::string& text) {
  const auto colon = text.rfind(':');
  if (colon == std::string::npos) return std::nullopt;
  return TapAddress{std::string(trimmed(text.substr(0, colon))), std::string(trimmed(text.substr(colon + 1)))};
}

std::optional<double> tap_distance(Draft& draft, const PlacedText& address, const TapAddress& tap) {
  try {
    return parse_quantity(tap.distance, Dimension::length, address.text);
  } catch (const Error& error) {
    draft.fault(error.message(), address.place, error.hint());
    return std::nullopt;
  }
}

constexpr double same_place = 1e-6;  // m: taps nearer than this are one

void add_tap(Draft& draft, TapTable& taps, const PlacedText& address) {
  const auto tap = tap_address(address.text);
  if (!tap || draft.taps.contains(address.text)) return;
  int& known = draft.taps[address.text] = -1;
  const NameEntry* entry = find_name(draft, tap->name);
  if (!entry || entry->kind != NameKind::duct) return unknown_address(draft, {tap->name, address.place}, "a tap");
  const auto distance = tap_distance(draft, address, *tap);
  if (!distance) return;
  const DuctSketch& duct = draft.sketch.ducts[static_cast<std::size_t>(entry->index)];
  const double length = duct.drawing.length();
  if (!(*distance > same_place && *distance < length - same_place))
    return draft.fault(in_quotes(address.text) + ": a tap must lie inside the duct, which is " +
                           in_words(length, Dimension::length) + " long",
                       address.place);
  auto& list = taps.by_duct[entry->index];
  for (const Tap& other : list)
    if (std::abs(other.distance - *distance) < same_place) {
      known = other.node;
      return;
    }
  DraftNode node;
  node.name = tap->name + ":" + in_words(*distance, Dimension::length);
  node.place = address.place;
  node.kind = JointNode{};
  node.tap = true;
  known = draft.add_node(std::move(node));
  list.push_back({*distance, known});
}

/// The duct as runs one behind the other, with a tap between each two.
void cut_one(Draft& draft, int index, std::vector<Tap> taps) {
  const DuctSketch& duct = draft.sketch.ducts[static_cast<std::size_t>(index)];
  std::ranges::sort(taps, {}, &Tap::distance);
  DuctDrawing rest = duct.drawing;
  double from = 0;
  int node_before = -1;
  draft.first_run.push_back(static_cast<int>(draft.runs.size()));
  for (std::size_t k = 0; k <= taps.size(); ++k) {
    const bool last = k == taps.size();
    const double to = last ? duct.drawing.length() : taps[k].distance;
    DraftRun run;
    if (last) {
      run.drawing = rest;
    } else {
      std::tie(run.drawing, rest) = parted(rest, to - from);
    }
    run.names = {{duct.name, from, to, -1, 0, false}};
    run.initial = {{to - from, duct.initial}};
    run.place = duct.place;
    run.ends[at_start] = {node_before, {}, duct.from.address.place, k > 0};
    run.ends[at_finish] = {last ? -1 : taps[k].node, {}, duct.to.address.place, !last};
    node_before = run.ends[at_finish].node;
    from = to;
    draft.runs.push_back(std::move(run));
    // The part of the duct beyond a tap is that joint's axis.
    if (k > 0) draft.node(taps[k - 1].node).outlet = DraftPort{static_cast<int>(draft.runs.size()) - 1, at_start};
  }
  draft.last_run.push_back(static_cast<int>(draft.runs.size()) - 1);
}

}  // namespace

const NameEntry* find_name(const Draft& draft, std::string_view name) {
  const auto found = std::ranges::find(draft.names, name, &NameEntry::name);
  return found == draft.names.end() ? nullptr : &*found;
}

void gather_names(Draft& draft) {
  for (const char* word : {"air"}) add_name(draft, {word, {}, NameKind::word, 0});
  add_names(draft, draft.sketch.turbines, NameKind::turbine);
  add_names(draft, draft.sketch.joints, NameKind::joint);
  add_names(draft, draft.sketch.ends, NameKind::end);
  add_names(draft, draft.sketch.gates, NameKind::gate);
  add_names(draft, draft.sketch.restrictions, NameKind::restriction);
  add_names(draft, draft.sketch.ducts, NameKind::duct);
}

void unknown_address(Draft& draft, const PlacedText& address, std::string_view key) {
  std::vector<std::string> known;
  for (const NameEntry& entry : draft.names)
    if (entry.kind != NameKind::word || draft.sketch.engine()) known.push_back(entry.name);
  const std::string near = nearest_word(address.text, known);
  const NameEntry* entry = find_name(draft, address.text);
  if (entry && entry->kind == NameKind::duct)
    return draft.fault(std::string(key) + ": " + in_quotes(address.text) + " is a duct; say where along it",
                       address.place, "for example " + in_quotes(address.text + ":100mm") + ", or name a joint");
  draft.fault(std::string(key) + ": nothing is called " + in_quotes(address.text), address.place,
              near.empty() ? "known: " + listed(known) : "nearest: " + in_quotes(near));
}

void cut_at_taps(Draft& draft) {
  TapTable taps;
  for (const DuctSketch& duct : draft.sketch.ducts) {
    add_tap(draft, taps, duct.from.address);
    add_tap(draft, taps, duct.to.address);
  }
  for (const GateSketch& gate : draft.sketch.gates) {
    add_tap(draft, taps, gate.at);
    add_tap(draft, taps, gate.to);
  }
  for (const RestrictionSketch& restriction : draft.sketch.restrictions) add_tap(draft, taps, restriction.at);
  for (std::size_t k = 0; k < draft.sketch.ducts.size(); ++k)
    cut_one(draft, static_cast<int>(k), taps.by_duct[static_cast<int>(k)]);
}

}  // namespace pulsewright
