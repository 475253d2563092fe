#include "cli/option_value.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "models/engine_case.hpp"
#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {

double option_quantity(const std::string& text, Dimension dimension, const std::string& option) {
  try {
    return parse_quantity(text, dimension, option);
  } catch (const Error& error) {
    throw Error(ErrorKind::usage, error.message(), option, error.hint());
  }
}

std::vector<double> parse_rpm(const std::string& text) {
  std::vector<double> speeds;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t comma = std::min(text.find(',', at), text.size());
    const std::string_view word = trimmed(std::string_view(text).substr(at, comma - at));
    double rpm = 0;
    const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), rpm);
    if (fault != std::errc{} || end != word.data() + word.size() || !rpm_range.holds(rpm))
      throw Error(ErrorKind::usage,
                  fmt::format("{} is no speed: give rpm between {:.0f} and {:.0f}", in_quotes(word), rpm_range.low,
                              rpm_range.high),
                  "--rpm", "several speeds stand with commas between: --rpm 3000,4500");
    if (std::ranges::find(speeds, rpm) != speeds.end())
      throw Error(ErrorKind::usage, fmt::format("the speed {} is said twice", word), "--rpm");
    speeds.push_back(rpm);
    at = comma + 1;
  }
  return speeds;
}

double parse_cell(const std::string& text) {
  const double cell = option_quantity(text, Dimension::length, "--cell");
  if (cell > 0) return cell;
  throw Error(ErrorKind::usage, "a cell of " + in_quotes(text) + " has no length", "--cell", "such as --cell \"5 mm\"");
}

}  // namespace pulsewright
