// What differs between the cases of several layouts, read from their canonical text.

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <sstream>

#include "cli/case_words.hpp"
#include "cli/layout.hpp"

namespace pulsewright {
namespace {

using Values = std::map<std::string, std::string>;  // key -> value as TOML
using Things = std::map<std::string, Values>;       // "primary 2", "merge", "run", ... -> its values

/// The table that every primary shares.
constexpr const char* shared_by_primaries = "each primary";

/// What a table of a list is called: a primary by its cylinder, anything else by its name, else by its number.
std::string thing_name(const std::string& list, const Values& values, int number) {
  if (const auto cylinder = values.find("cylinder"); cylinder != values.end()) return list + " " + cylinder->second;
  if (const auto name = values.find("name"); name != values.end()) return plain_value(name->second);
  return fmt::format("{} {}", list, number);
}

/// The tables of a canonical text. A primary takes what each_primary says and it does not say itself.
Things things_of(const std::string& text) {
  std::vector<std::pair<std::string, Values>> tables{{"", {}}};
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    const auto equals = line.find(" = ");
    if (line.starts_with('['))
      tables.push_back({line, {}});
    else if (equals != std::string::npos)
      tables.back().second[line.substr(0, equals)] = line.substr(equals + 3);
  }
  Things things;
  std::map<std::string, int> seen;
  std::string list, item;  // the list that was met last, and what its last table is called
  for (auto& [head, values] : tables) {
    std::string name = head;
    std::erase_if(name, [](char c) { return c == '[' || c == ']' || c == '"'; });
    if (head.starts_with("[[")) {
      list = name, item = thing_name(name, values, ++seen[name]);
      things[item] = std::move(values);
    } else if (!list.empty() && name.starts_with(list + ".")) {  // a table inside the last one of the list
      for (auto& [key, value] : values) things[item][name.substr(list.size() + 1) + "." + key] = value;
    } else {
      list.clear();
      things[spaced_name(name)] = std::move(values);
    }
  }
  if (const auto shared = things.extract(shared_by_primaries))
    for (auto& [name, values] : things)
      if (name.starts_with("primary ")) values.insert(shared.mapped().begin(), shared.mapped().end());
  return things;
}

/// "220 mm long, not 450 mm", "bends 120 deg, not 210 deg"
std::vector<std::string> changes(const Values& values, const Values& base) {
  std::vector<std::string> parts;
  for (const auto& [key, value] : values) {
    const auto before = base.find(key);
    if (before != base.end() && before->second == value) continue;
    const std::string text =
        value_in_words(key, value) + (before == base.end() ? "" : ", not " + plain_value(before->second));
    parts.insert(key == "length" ? parts.begin() : parts.end(), text);  // the first thing a builder asks of a pipe
  }
  for (const auto& [key, value] : base)
    if (!values.contains(key))
      parts.push_back(fmt::format("{} left open, not {}", spaced_name(key), plain_value(value)));
  return parts;
}

std::string all_of(const Values& values) {
  std::vector<std::string> parts;
  for (const auto& [key, value] : values)
    if (key != "name") parts.push_back(value_in_words(key, value));
  return fmt::format("{}", fmt::join(parts, ", "));
}

struct Change {
  std::string thing;
  std::vector<std::string> parts;
  bool operator==(const Change&) const = default;
  bool of_primary() const { return thing.starts_with("primary "); }
  std::string text() const { return (thing.empty() ? "" : thing + ": ") + fmt::format("{}", fmt::join(parts, "; ")); }
};

std::vector<Change> changes_between(const Things& a, const Things& b) {
  std::vector<Change> list;
  for (const auto& [name, values] : b) {
    const auto before = a.find(name);
    if (before == a.end())
      list.push_back({name, {"only here: " + all_of(values)}});
    else if (auto parts = changes(values, before->second); !parts.empty())
      list.push_back({name, std::move(parts)});
  }
  std::vector<std::string> gone;
  for (const auto& [name, values] : a)
    if (!b.contains(name)) gone.push_back(name);
  if (!gone.empty()) list.push_back({"not here", {fmt::format("{}", fmt::join(gone, ", "))}});
  return list;
}

/// What changed in all primaries alike is said once, of every primary.
void gather_shared(std::vector<Change>& list, std::size_t primaries) {
  const auto has = [](const Change& c, const std::string& part) {
    return std::ranges::find(c.parts, part) != c.parts.end();
  };
  const auto first = std::ranges::find_if(list, &Change::of_primary);
  if (primaries < 2 || std::ranges::count_if(list, &Change::of_primary) != static_cast<std::ptrdiff_t>(primaries))
    return;
  Change shared{"every primary", {}};
  for (const std::string& part : first->parts)
    if (std::ranges::all_of(list, [&](const Change& c) { return !c.of_primary() || has(c, part); }))
      shared.parts.push_back(part);
  if (shared.parts.empty()) return;
  for (Change& c : list)
    if (c.of_primary()) std::erase_if(c.parts, [&](const std::string& part) { return has(shared, part); });
  list.insert(first, std::move(shared));
  std::erase_if(list, [](const Change& c) { return c.parts.empty(); });
}

/// Primaries that changed alike stand in one line: "primary 1, 2: ...".
std::vector<Change> gathered(std::vector<Change> changes, std::size_t primaries) {
  gather_shared(changes, primaries);
  std::vector<Change> lines;
  for (const Change& c : changes) {
    const auto alike = std::ranges::find_if(
        lines, [&](const Change& l) { return l.parts == c.parts && l.of_primary() && c.of_primary(); });
    if (alike == lines.end())
      lines.push_back(c);
    else
      alike->thing += ", " + c.thing.substr(std::string_view("primary ").size());
  }
  return lines;
}

/// A change and the layouts that have it.
struct SharedChange {
  Change change;
  std::string letters;
};

}  // namespace

std::vector<std::string> differences(const std::vector<Layout>& layouts) {
  const auto things = [](const Layout& l) {
    Things found = things_of(l.loaded.text);
    found[""].erase("title");
    found[""].erase("use");
    return found;
  };
  const Things base = things(layouts.front());
  std::vector<SharedChange> all;
  for (std::size_t k = 1; k < layouts.size(); ++k)
    for (Change& c : gathered(changes_between(base, things(layouts[k])),
                              static_cast<std::size_t>(layouts[k].engine().engine.cylinders()))) {
      const auto known = std::ranges::find(all, c, &SharedChange::change);
      if (known == all.end())
        all.push_back({std::move(c), layouts[k].letter});
      else
        known->letters += ", " + layouts[k].letter;
    }
  std::vector<std::string> lines;
  for (const SharedChange& c : all) lines.push_back(c.letters + ": " + c.change.text());
  return lines;
}

}  // namespace pulsewright
