#include "models/starter_assumed.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "models/assumed.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

/// Where an assumed value stands in a case.
struct CasePlace {
  std::string path, key;
};

/// What is said once for all primaries stands there, not with each of them.
CasePlace place_of(std::string_view key) {
  const std::string address = assumed_address(key);
  const auto dot = address.rfind('.');
  if (dot == std::string::npos) return {key == "silencer" ? "" : "each_primary", address};
  const std::string path = address.substr(0, dot);
  return {path == "primary" ? "each_primary" : path, address.substr(dot + 1)};
}

/// "48.2 mm (merge)" -> the value and whose it is.
std::pair<std::string, std::string> value_and_owner(const std::string& value) {
  const auto bracket = value.rfind(" (");
  if (bracket == std::string::npos || !value.ends_with(')')) return {value, {}};
  return {value.substr(0, bracket), value.substr(bracket + 2, value.size() - bracket - 3)};
}

/// Rows that no single value of a case stands for, though they are numbers: a rule, or a key of another meaning.
bool only_a_remark(const AssumedRow& row) {
  constexpr std::array rules{"joint.taper"};  // the case gives its length, not its angle
  return !row.words.empty() || std::ranges::find(rules, row.key) != rules.end();
}

/// The value as TOML writes it; most are a number or a number and unit as displayed.
std::string toml_value(const AssumedRow& row, const std::string& shown) {
  if (row.key == "turbine.capacity")
    return fmt::format("{{ flow = \"{}\", ratio = 2.0, temperature = \"288.15 K\", pressure = \"1.01325 bar\" }}",
                       shown);
  if (row.key == "exhaust_port.exit") return "\"round " + shown + "\"";
  const std::string number = shown.substr(0, shown.find(' '));
  if (row.unit.empty() || row.unit == "turbine inducers") return number;  // a ratio
  if (row.unit.starts_with("deg from") || row.unit.starts_with("deg half")) return "\"" + number + " deg\"";
  return "\"" + shown + "\"";
}

/// The tables that a value belongs to: of joints and gates the one it names, or all where it names none.
std::vector<std::size_t> blocks_of(const std::vector<CaseBlock>& blocks, const CasePlace& place,
                                   const std::string& owner) {
  std::vector<std::size_t> found;
  for (std::size_t k = 0; k < blocks.size(); ++k)
    if (blocks[k].path == place.path && (owner.empty() || blocks[k].name.empty() || blocks[k].name == owner))
      found.push_back(k);
  return found;
}

bool says(const CaseBlock& block, const std::string& key) {
  return std::ranges::any_of(block.lines, [&](const CaseLine& l) { return l.key == key; });
}

/// Where remarks of what fits no table stand.
CaseBlock& rest_of(std::vector<CaseBlock>& blocks) {
  constexpr const char* path = "assumed beside";
  if (blocks.empty() || blocks.back().path != path)
    blocks.push_back({{}, path, {}, {}, {}, {"Assumed beside all this:"}});
  return blocks.back();
}

void note(std::vector<CaseBlock>& blocks, const AssumedEntry& entry, const AssumedRow& row) {
  const CasePlace place = place_of(entry.key);
  const auto [value, owner] = value_and_owner(entry.value);
  const std::string range = entry.range.empty() ? "assumed" : "assumed, " + entry.range;
  bool placed = false;
  for (const std::size_t k : only_a_remark(row) ? std::vector<std::size_t>{} : blocks_of(blocks, place, owner)) {
    if (says(blocks[k], place.key)) continue;
    blocks[k].lines.push_back({place.key, toml_value(row, value), range, false});
    placed = true;
  }
  if (!placed) rest_of(blocks).remarks.push_back("  " + entry.key + ": " + entry.value + " (" + range + ")");
}

}  // namespace

void note_assumed(std::vector<CaseBlock>& blocks, const EngineCase& engine) {
  for (const AssumedEntry& entry : engine.assumed) note(blocks, entry, assumed_row(entry.key, engine.engine.diesel));
  std::erase_if(blocks, [](const CaseBlock& b) { return b.path != "turbine" && b.lines.empty() && b.remarks.empty(); });
}

}  // namespace pulsewright
