#include "shared/plain_rows.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>
#include <sstream>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

std::string count_words(std::size_t count) {
  constexpr const char* words[] = {"no", "one", "two", "three", "four"};
  return count < std::size(words) ? words[count] : std::to_string(count);
}

std::vector<double> numbers(std::string_view line, std::size_t columns, const std::string& place,
                            const std::string& hint) {
  std::vector<double> values;
  for (std::size_t from = 0; from <= line.size();) {
    const std::size_t comma = std::min(line.find(',', from), line.size());
    const std::string_view field = trimmed(line.substr(from, comma - from));
    const auto value = plain_number(field);
    if (!value) throw Error(ErrorKind::case_file, place + ": " + in_quotes(field) + " is not a number", {}, hint);
    values.push_back(*value);
    from = comma + 1;
  }
  if (values.size() != columns)
    throw Error(ErrorKind::case_file, place + ": " + in_quotes(line) + " is not " + count_words(columns) + " values",
                {}, hint);
  return values;
}

}  // namespace

std::optional<double> plain_number(std::string_view text) {
  text = trimmed(text);
  double value = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::vector<PlainRow> plain_rows(const std::string& text, const std::string& name, std::string_view heading,
                                 const std::string& hint) {
  const auto columns = static_cast<std::size_t>(std::ranges::count(heading, ',')) + 1;
  std::vector<PlainRow> rows;
  std::istringstream lines(text);
  bool headed = false;
  int count = 0;
  for (std::string line; std::getline(lines, line);) {
    const std::string place = name + ":" + std::to_string(++count);
    const std::string_view words = trimmed(line);
    if (words.empty() || words.front() == '#') continue;
    if (!headed && words != heading)
      throw Error(ErrorKind::case_file, place + ": the heading is " + in_quotes(words) + ", not " + in_quotes(heading),
                  {}, hint);
    if (headed) rows.push_back({place, numbers(words, columns, place, hint)});
    headed = true;
  }
  return rows;
}

}  // namespace pulsewright
