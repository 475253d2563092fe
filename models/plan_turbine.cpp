// Turbines in a plan: their addresses, and the volute that every scroll begins with.

#include <algorithm>

#include "models/drawing_edit.hpp"
#include "models/plan_draft.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

std::string scroll_name(const TurbineSketch& turbine, int scroll) {
  return turbine.scrolls == 1 ? turbine.name : turbine.name + "." + static_cast<char>('a' + scroll);
}

/// "volute", "volute a", "left volute a".
std::string volute_name(const TurbineSketch& turbine, int scroll) {
  std::string name = turbine.name == "turbine" ? "volute" : turbine.name + " volute";
  if (turbine.scrolls > 1) name += std::string(" ") + static_cast<char>('a' + scroll);
  return name;
}

std::string entries_of(const TurbineSketch& turbine) {
  std::vector<std::string> entries;
  for (int s = 0; s < turbine.scrolls; ++s) entries.push_back("'" + scroll_name(turbine, s) + "'");
  return listed(entries);
}

/// Who enters this scroll already, or nothing.
const DraftEnd* entered_by(const Draft& draft, int node, int scroll) {
  for (const DraftRun& run : draft.runs)
    if (run.ends[at_finish].node == node && run.ends[at_finish].scroll == scroll) return &run.ends[at_finish];
  return nullptr;
}

/// The scroll that is meant, or -1 after a fault.
int scroll_meant(Draft& draft, const TurbineSketch& turbine, int scroll, const PlacedText& address) {
  if (scroll < 0 && turbine.scrolls == 1) return 0;
  if (scroll >= 0 && scroll < turbine.scrolls) return scroll;
  const std::string fault =
      scroll < 0 ? " has " + std::to_string(turbine.scrolls) + " scrolls: say which" : " is no entry of this turbine";
  draft.fault(in_quotes(address.text) + fault, address.place, "its entries: " + entries_of(turbine));
  return -1;
}

}  // namespace

std::optional<TurbineAddress> turbine_address(const Draft& draft, std::string_view text) {
  const auto whole = find_name(draft, text);
  if (whole)
    return whole->kind == NameKind::turbine ? std::optional(TurbineAddress{whole->index, -1, false}) : std::nullopt;
  const auto dot = text.rfind('.');
  if (dot == std::string_view::npos) return std::nullopt;
  const auto base = find_name(draft, text.substr(0, dot));
  if (!base || base->kind != NameKind::turbine) return std::nullopt;
  const std::string_view part = text.substr(dot + 1);
  if (part == "out") return TurbineAddress{base->index, -1, true};
  const bool letter = part.size() == 1 && part[0] >= 'a' && part[0] <= 'z';
  return TurbineAddress{base->index, letter ? part[0] - 'a' : 99, false};
}

int add_volute(Draft& draft, const TurbineAddress& entry, const PlacedText& address, int from_node) {
  const TurbineSketch& turbine = draft.sketch.turbines[static_cast<std::size_t>(entry.turbine)];
  const int node = draft.turbine_node[static_cast<std::size_t>(entry.turbine)];
  if (entry.outlet) {
    draft.fault(in_quotes(address.text) + " is where the downpipe starts, not an entry", address.place,
                "its entries: " + entries_of(turbine));
    return -1;
  }
  const int scroll = scroll_meant(draft, turbine, entry.scroll, address);
  if (scroll < 0) return -1;
  if (const DraftEnd* other = entered_by(draft, node, scroll)) {
    draft.fault("two ducts enter " + in_quotes(scroll_name(turbine, scroll)) +
                    " (the other: " + draft.faults.line_of(other->place) + ")",
                address.place, "let them meet in a [[joint]] whose outlet is the turbine");
    return -1;
  }
  const CrossSection throat = round_section(equal_area_bore(turbine.throat_area));
  DraftRun run;
  run.names = {{volute_name(turbine, scroll), 0, turbine.volute_length, -1, 0, false}};
  run.drawing.sections = with_wall({straight_section(turbine.volute_length, throat, 0, 0)},
                                   {turbine.roughness, turbine.wall_temperature, turbine.metal});
  run.initial = {{turbine.volute_length, draft.sketch.air}};
  run.place = address.place;
  run.ends[at_start] = {from_node, {}, address.place, false, -1};
  run.ends[at_finish] = {node, {}, address.place, false, scroll};
  draft.runs.push_back(std::move(run));
  return static_cast<int>(draft.runs.size()) - 1;
}

}  // namespace pulsewright
