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
  for (auto& [head, values] : tables) {
    std::string name = head;
    std::erase_if(name, [](char c) { return c == '[' || c == ']' || c == '"'; });
    things[head.starts_with("[[") ? thing_name(name, values, ++seen[name]) : spaced_name(name)] = std::move(values);
  }
  if (const auto shared = things.extract(shared_by_primaries))
    for (auto& [name, values] : things)
      if (name.starts_with("primary ")) values.insert(shared.mapped().begin(), shared.mapped().end());
  return things;
}

/// "220 mm long, not 450 mm; bends 120 deg, not 210 deg"
std::string changes(const Values& values, const Values& base) {
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
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string all_of(const Values& values) {
  std::vector<std::string> parts;
  for (const auto& [key, value] : values)
    if (key != "name") parts.push_back(value_in_words(key, value));
  return fmt::format("{}", fmt::join(parts, ", "));
}

struct Change {
  std::string thing, text;
};

std::vector<Change> changes_between(const Things& a, const Things& b) {
  std::vector<Change> list;
  for (const auto& [name, values] : b) {
    const auto before = a.find(name);
    const std::string text = before == a.end() ? "only here: " + all_of(values) : changes(values, before->second);
    if (!text.empty()) list.push_back({name, text});
  }
  for (const auto& [name, values] : a)
    if (!b.contains(name)) list.push_back({name, "not here"});
  return list;
}

/// Things that changed alike stand in one line: "primary 1, primary 2: ...", or "every primary: ...".
std::vector<Change> gathered(const std::vector<Change>& changes, std::size_t primaries) {
  std::vector<Change> lines;
  std::vector<std::size_t> count;
  for (const Change& c : changes) {
    const auto same = std::ranges::find_if(lines, [&](const Change& l) {
      return l.text == c.text && l.thing.starts_with("primary ") && c.thing.starts_with("primary ");
    });
    if (same == lines.end()) {
      lines.push_back(c);
      count.push_back(1);
      continue;
    }
    const bool every = ++count[static_cast<std::size_t>(same - lines.begin())] == primaries;
    same->thing = every ? "every primary" : same->thing + ", " + c.thing.substr(std::string_view("primary ").size());
  }
  return lines;
}

}  // namespace

std::vector<std::string> differences(const std::vector<Layout>& layouts) {
  const auto things = [](const Layout& l) {
    Things found = things_of(l.loaded.text);
    found[""].erase("title");
    found[""].erase("use");
    return found;
  };
  const Things base = things(layouts.front());
  std::vector<std::string> lines;
  for (std::size_t k = 1; k < layouts.size(); ++k)
    for (const Change& c : gathered(changes_between(base, things(layouts[k])),
                                    static_cast<std::size_t>(layouts[k].engine().engine.cylinders())))
      lines.push_back(layouts[k].letter + ": " + (c.thing.empty() ? "" : c.thing + ": ") + c.text);
  return lines;
}

}  // namespace pulsewright
