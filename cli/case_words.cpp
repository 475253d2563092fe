#include "cli/case_words.hpp"

#include <algorithm>

#include "shared/words.hpp"

namespace pulsewright {

std::string plain_value(std::string_view toml) {
  std::string text;
  for (const char c : toml)
    if (c != '"' && c != '{' && c != '}') text += c;
  for (std::size_t at = text.find(" = "); at != std::string::npos; at = text.find(" = ", at)) text.replace(at, 3, " ");
  return std::string(trimmed(text));
}

std::string spaced_name(std::string_view name) {
  std::string text(name);
  std::ranges::replace_if(
      text, [](char c) { return c == '_' || c == '.'; }, ' ');
  return text;
}

std::string value_in_words(std::string_view key, std::string_view toml_value) {
  const std::string value = plain_value(toml_value);
  if (key == "length") return value + " long";
  if (key == "to") return "goes to " + value;
  if (key == "from") return "comes from " + value;
  if (key == "clock") return "clocked at " + value;
  return spaced_name(key) + " " + value;
}

std::string change_in_words(std::string_view assignment) {
  const auto equals = assignment.find('=');
  if (equals == std::string_view::npos) return std::string(assignment);
  const std::string_view address = trimmed(assignment.substr(0, equals));
  const auto dot = address.rfind('.');
  const std::string_view key = dot == std::string_view::npos ? address : address.substr(dot + 1);
  const std::string words = value_in_words(key, trimmed(assignment.substr(equals + 1)));
  if (dot == std::string_view::npos) return words;
  const std::string_view thing = address.substr(0, dot);
  return (thing == "each_primary" ? "every primary" : spaced_name(thing)) + ": " + words;
}

}  // namespace pulsewright
