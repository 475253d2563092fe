#include "shared/case_address.hpp"

#include <fmt/format.h>

#include <charconv>
#include <vector>

#include "shared/case_toml.hpp"
#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

[[noreturn]] void refuse(std::string_view assignment, const std::string& what, const std::string& hint = {}) {
  throw Error(ErrorKind::usage, what + " in " + in_quotes(assignment), {}, hint);
}

struct Assignment {
  std::vector<std::string> address;
  std::string_view value;
  std::size_t value_at;  // where the value begins in the text
};

constexpr std::string_view form =
    "write it as ADDRESS=VALUE, such as 'joint.merge.throat=\"50 mm\"' or 'run.rpm=[3000]'";

// Words between dots; a word with a dot or blank in it may stand between quotes.
std::vector<std::string> address_words(std::string_view text, std::string_view assignment) {
  std::vector<std::string> words(1);
  char quote = 0;
  for (const char c : text) {
    if (quote != 0) {
      if (c == quote)
        quote = 0;
      else
        words.back() += c;
    } else if (c == '"' || c == '\'') {
      quote = c;
    } else if (c == '.') {
      words.emplace_back();
    } else {
      words.back() += c;
    }
  }
  for (std::string& word : words) {
    word = std::string(trimmed(word));
    if (word.empty() || quote != 0) refuse(assignment, "the address is not complete", std::string(form));
  }
  return words;
}

Assignment split(std::string_view text) {
  char quote = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (quote != 0) {
      if (text[i] == quote) quote = 0;
    } else if (text[i] == '"' || text[i] == '\'') {
      quote = text[i];
    } else if (text[i] == '=') {
      std::size_t start = i + 1;
      while (start < text.size() && text[start] == ' ') ++start;
      return {address_words(text.substr(0, i), text), text.substr(start), start};
    }
  }
  refuse(text, "there is no equals sign", std::string(form));
}

void move_places(CaseValue& value, std::size_t source, std::ptrdiff_t columns) {
  value.place = {source, value.place.line,
                 static_cast<std::size_t>(static_cast<std::ptrdiff_t>(value.place.column) + columns)};
  for (CaseValue& item : value.items) move_places(item, source, columns);
  for (CaseEntry& entry : value.entries) move_places(entry.value, source, columns);
}

CaseValue value_of(const Assignment& parts, std::string_view assignment, std::size_t source) {
  constexpr std::string_view before = "v=";
  const std::string hint = "a text keeps its own quotes: 'each_primary.tube=\"NPS 1-1/2 sch 10S\"'";
  if (parts.value.find_first_of("\r\n") != std::string_view::npos)
    refuse(assignment, "the value has more than one line", std::string(form));
  try {
    CaseValue root = parse_toml(std::string(before) + std::string(parts.value), source);
    CaseEntry* entry = root.find("v");
    if (entry == nullptr) refuse(assignment, "there is no value", hint);
    move_places(entry->value, source,
                static_cast<std::ptrdiff_t>(parts.value_at) - static_cast<std::ptrdiff_t>(before.size()));
    return entry->value;
  } catch (const TomlFault&) {
    refuse(assignment, in_quotes(parts.value) + " is not a TOML value", hint);
  }
}

bool is_whole_number(std::string_view word, std::size_t& number) {
  const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), number);
  return fault == std::errc{} && end == word.data() + word.size();
}

CaseValue* picked(CaseValue& list, const std::string& word) {
  for (CaseValue& item : list.items)
    if (const CaseEntry* name = item.find("name"); name != nullptr && name->value.text == word) return &item;
  std::size_t number = 0;
  if (!is_whole_number(word, number)) return nullptr;
  bool by_cylinder = false;
  for (CaseValue& item : list.items) {
    const CaseEntry* cylinder = item.find("cylinder");
    if (cylinder == nullptr) continue;
    by_cylinder = true;
    if (cylinder->value.integer == static_cast<std::int64_t>(number)) return &item;
  }
  return !by_cylinder && number >= 1 && number <= list.items.size() ? &list.items[number - 1] : nullptr;
}

std::string names_in(const CaseValue& list) {
  std::vector<std::string> names;
  for (const CaseValue& item : list.items) {
    const CaseEntry* name = item.find("name");
    const CaseEntry* cylinder = item.find("cylinder");
    if (name != nullptr)
      names.push_back(in_quotes(name->value.text));
    else
      names.push_back(fmt::format(
          "{}", cylinder != nullptr ? cylinder->value.integer : static_cast<std::int64_t>(names.size() + 1)));
  }
  return listed(names, "and");
}

// The table that the word at `at` leads to; moves `at` past the words used up.
CaseValue* step_into(CaseValue* table, const Assignment& parts, std::size_t& at, std::string_view assignment) {
  const std::string& word = parts.address[at++];
  CaseEntry* entry = table->find(word);
  if (entry == nullptr) {  // a table that the case leaves out; the reader finds it if nobody knows it
    table->entries.push_back({word, {}, {}});
    return &table->entries.back().value;
  }
  if (entry->value.kind == CaseKind::table) return &entry->value;
  if (!entry->value.is_list_of_tables())
    refuse(assignment, fmt::format("`{}` is {}, there is nothing below it", word, described(entry->value)));
  CaseValue& list = entry->value;
  if (at + 1 < parts.address.size())
    if (CaseValue* item = picked(list, parts.address[at])) {
      ++at;
      return item;
    }
  if (list.items.size() == 1 && (at + 1 == parts.address.size())) return &list.items.front();
  refuse(assignment, fmt::format("`{}` does not say which one", word), fmt::format("there are {}", names_in(list)));
}

}  // namespace

void set_by_address(CaseValue& root, std::string_view assignment, const std::string& origin, CaseFaults& faults) {
  const Assignment parts = split(assignment);
  const std::size_t source = faults.add_source(origin, std::string(assignment));
  const CaseValue value = value_of(parts, assignment, source);
  const Place key_place{source, 1, 1};
  CaseValue* table = &root;
  std::size_t at = 0;
  while (at + 1 < parts.address.size()) table = step_into(table, parts, at, assignment);
  const std::string& key = parts.address.back();
  if (CaseEntry* entry = table->find(key)) {
    if (entry->value.is_list_of_tables() || entry->value.kind == CaseKind::table)
      if (value.kind != entry->value.kind)
        refuse(assignment, fmt::format("`{}` is {}, not a single value", key, described(entry->value)));
    entry->place = key_place;
    entry->value = value;
  } else {
    table->entries.push_back({key, key_place, value});
  }
}

}  // namespace pulsewright
