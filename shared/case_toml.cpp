#include "shared/case_toml.hpp"

#include <toml++/toml.h>

#include <algorithm>
#include <sstream>
#include <utility>

namespace pulsewright {
namespace {

Place place_of(const toml::source_region& region, std::size_t source) {
  return {source, region.begin.line, region.begin.column};
}

CaseValue converted_node(const toml::node& node, std::size_t source);

// A hundred times what any table of a case has: beyond that, looking keys up takes seconds.
constexpr std::size_t most_keys = 500;

CaseValue converted_table(const toml::table& table, std::size_t source) {
  if (table.size() > most_keys) throw TomlFault{"a table of more than 500 keys", place_of(table.source(), source)};
  CaseValue result;
  for (const auto& [key, node] : table)
    result.entries.push_back({std::string(key.str()), place_of(key.source(), source), converted_node(node, source)});
  // the library iterates alphabetically; the file's own order is the user's
  std::stable_sort(result.entries.begin(), result.entries.end(), [](const CaseEntry& a, const CaseEntry& b) {
    return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
  });
  return result;
}

std::string date_text(const toml::node& node) {
  std::ostringstream text;
  node.visit([&text](const auto& value) {
    if constexpr (toml::is_chronological<decltype(value)>) text << value;
  });
  return text.str();
}

CaseValue converted_node(const toml::node& node, std::size_t source) {
  CaseValue result;
  if (const toml::table* table = node.as_table()) {
    result = converted_table(*table, source);
  } else if (const toml::array* array = node.as_array()) {
    result.kind = CaseKind::list;
    for (const toml::node& item : *array) result.items.push_back(converted_node(item, source));
  } else if (const auto* text = node.as_string()) {
    result.kind = CaseKind::text;
    result.text = text->get();
  } else if (const auto* integer = node.as_integer()) {
    result.kind = CaseKind::integer;
    result.integer = integer->get();
    result.number = static_cast<double>(result.integer);
  } else if (const auto* number = node.as_floating_point()) {
    result.kind = CaseKind::number;
    result.number = number->get();
  } else if (const auto* boolean = node.as_boolean()) {
    result.kind = CaseKind::boolean;
    result.boolean = boolean->get();
  } else {
    result.kind = CaseKind::date;
    result.text = date_text(node);
  }
  result.place = place_of(node.source(), source);
  return result;
}

// A dotted key of thousands of words nests as many tables, and the library's recursion overflows the stack: count
// first. Finds the line of a key with more than `most` dots; 0 if there is none. Quoted words and comments don't count;
// triple quotes are taken for plain text, so that what follows them on their line is still counted.
std::size_t line_of_absurd_key(std::string_view text) {
  constexpr std::size_t most = 50;
  std::size_t line = 1, dots = 0;
  char quote = 0;
  bool comment = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\n') {
      ++line;
      dots = 0;
      quote = 0;
      comment = false;
    } else if (comment) {
      continue;
    } else if (quote != 0) {
      if (c == '\\' && quote == '"' && i + 1 < text.size() && text[i + 1] != '\n') ++i;
      if (c == quote) quote = 0;
    } else if (text.substr(i, 3) == "\"\"\"" || text.substr(i, 3) == "'''") {
      i += 2;
    } else if (c == '"' || c == '\'') {
      quote = c;
    } else if (c == '#') {
      comment = true;
    } else if (std::string_view(",=[]{}").find(c) != std::string_view::npos) {
      dots = 0;
    } else if (c == '.' && ++dots > most) {
      return line;
    }
  }
  return 0;
}

}  // namespace

CaseValue parse_toml(std::string_view text, std::size_t source) {
  if (const std::size_t line = line_of_absurd_key(text); line > 0)
    throw TomlFault{"a key of more than 50 words", {source, line, 1}};
  try {
    return converted_node(toml::parse(text), source);
  } catch (const toml::parse_error& error) {
    throw TomlFault{std::string(error.description()), place_of(error.source(), source)};
  }
}

}  // namespace pulsewright
