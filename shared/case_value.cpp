#include "shared/case_value.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "shared/words.hpp"

namespace pulsewright {
namespace {

bool is_bare_key(std::string_view key) {
  const auto is_bare = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
  };
  return !key.empty() && std::all_of(key.begin(), key.end(), is_bare);
}

std::string toml_string(std::string_view text) {
  std::string result = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      result += '\\';
      result += c;
    } else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) {
      result += fmt::format("\\u{:04X}", static_cast<unsigned>(c));
    } else {
      result += c;
    }
  }
  return result + '"';
}

std::string toml_key(std::string_view key) { return is_bare_key(key) ? std::string(key) : toml_string(key); }

std::string toml_number(double number) {
  if (std::isnan(number)) return "nan";
  if (std::isinf(number)) return number > 0 ? "inf" : "-inf";
  std::string text = fmt::format("{}", number);
  if (text.find_first_of(".e") == std::string::npos) text += ".0";
  return text;
}

std::vector<const CaseEntry*> sorted(const CaseValue& table) {
  std::vector<const CaseEntry*> result;
  for (const CaseEntry& entry : table.entries) result.push_back(&entry);
  std::sort(result.begin(), result.end(), [](const CaseEntry* a, const CaseEntry* b) { return a->key < b->key; });
  return result;
}

std::string in_line(const CaseValue& value) {
  std::vector<std::string> parts;
  switch (value.kind) {
    case CaseKind::text:
      return toml_string(value.text);
    case CaseKind::integer:
      return fmt::format("{}", value.integer);
    case CaseKind::number:
      return toml_number(value.number);
    case CaseKind::boolean:
      return value.boolean ? "true" : "false";
    case CaseKind::list:
      for (const CaseValue& item : value.items) parts.push_back(in_line(item));
      return fmt::format("[{}]", fmt::join(parts, ", "));
    case CaseKind::table:
      for (const CaseEntry* e : sorted(value)) parts.push_back(toml_key(e->key) + " = " + in_line(e->value));
      return parts.empty() ? "{}" : fmt::format("{{ {} }}", fmt::join(parts, ", "));
    case CaseKind::date:
    case CaseKind::absent:
      return value.text;
  }
  return {};
}

// Plain values first, then the tables below them: TOML wants it so.
void write_table(const CaseValue& table, const std::string& path, std::string& text) {
  const std::vector<const CaseEntry*> entries = sorted(table);
  for (const CaseEntry* e : entries)
    if (e->value.kind != CaseKind::table && !e->value.is_list_of_tables())
      text += toml_key(e->key) + " = " + in_line(e->value) + "\n";
  for (const CaseEntry* e : entries) {
    const std::string below = path.empty() ? toml_key(e->key) : path + "." + toml_key(e->key);
    if (e->value.kind == CaseKind::table) {
      text += "\n[" + below + "]\n";
      write_table(e->value, below, text);
    } else if (e->value.is_list_of_tables()) {
      for (const CaseValue& item : e->value.items) {
        text += "\n[[" + below + "]]\n";
        write_table(item, below, text);
      }
    }
  }
}

}  // namespace

const CaseEntry* CaseValue::find(std::string_view key) const {
  const auto it = std::find_if(entries.begin(), entries.end(), [key](const CaseEntry& e) { return e.key == key; });
  return it == entries.end() ? nullptr : &*it;
}

CaseEntry* CaseValue::find(std::string_view key) {
  const auto it = std::find_if(entries.begin(), entries.end(), [key](const CaseEntry& e) { return e.key == key; });
  return it == entries.end() ? nullptr : &*it;
}

bool CaseValue::is_list_of_tables() const {
  return kind == CaseKind::list && !items.empty() &&
         std::all_of(items.begin(), items.end(), [](const CaseValue& v) { return v.kind == CaseKind::table; });
}

std::string described(const CaseValue& value) {
  switch (value.kind) {
    case CaseKind::text:
      return "the text " + in_quotes(value.text);
    case CaseKind::integer:
      return fmt::format("the number {}", value.integer);
    case CaseKind::number:
      return fmt::format("the number {}", value.number);
    case CaseKind::boolean:
      return value.boolean ? "true" : "false";
    case CaseKind::list:
      return "a list";
    case CaseKind::table:
      return "a table";
    case CaseKind::date:
      return "the date or time " + in_quotes(value.text);
    case CaseKind::absent:
      break;
  }
  return "nothing";
}

void lay_over(CaseValue& base, const CaseValue& over) {
  if (base.kind != CaseKind::table || over.kind != CaseKind::table) {
    base = over;
    return;
  }
  base.place = over.place;
  for (const CaseEntry& entry : over.entries) {
    CaseEntry* below = base.find(entry.key);
    if (below == nullptr) {
      base.entries.push_back(entry);
    } else {
      below->place = entry.place;
      lay_over(below->value, entry.value);
    }
  }
}

std::string canonical_text(const CaseValue& root) {
  std::string text;
  write_table(root, {}, text);
  return text;
}

}  // namespace pulsewright
