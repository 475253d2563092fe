#include "shared/number.hpp"

#include <charconv>
#include <cmath>
#include <string>
#include <system_error>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

[[noreturn]] void refuse(const std::string& what, const std::string& hint) {
  throw Error(ErrorKind::case_file, what, {}, hint);
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool starts_with_digit(std::string_view text) { return !text.empty() && is_digit(text.front()); }

std::string_view digits(std::string_view text) {
  std::size_t n = 0;
  while (n < text.size() && is_digit(text[n])) ++n;
  return text.substr(0, n);
}

double whole(std::string_view number) {
  double value = 0;
  std::from_chars(number.data(), number.data() + number.size(), value);
  return value;
}

// "3/4 ..." -> 0.75; false if the text does not begin with digits, slash, digits.
bool take_fraction(std::string_view& text, double& value) {
  const std::string_view above = digits(text);
  if (above.empty() || text.size() <= above.size() || text[above.size()] != '/') return false;
  const std::string_view below = digits(text.substr(above.size() + 1));
  if (below.empty()) return false;
  if (whole(below) == 0) refuse(in_quotes(text) + " divides by zero", "a fraction is written 3/4 or 1-1/4");
  value = whole(above) / whole(below);
  text.remove_prefix(above.size() + 1 + below.size());
  return true;
}

// "1-1/4 ..." and "1 1/4 ..."
bool take_mixed(std::string_view& text, double& value) {
  const std::string_view units = digits(text);
  if (units.empty() || text.size() <= units.size()) return false;
  std::string_view rest = text.substr(units.size());
  if (rest.front() == '-') {
    rest.remove_prefix(1);
  } else if (rest.front() == ' ') {
    rest = trimmed(rest);
  } else {
    return false;
  }
  double part = 0;
  if (!take_fraction(rest, part)) return false;
  value = whole(units) + part;
  text = rest;
  return true;
}

bool take_decimal(std::string_view& text, double& value) {
  if (!starts_with_digit(text) && !(text.size() > 1 && text[0] == '.' && is_digit(text[1]))) return false;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault == std::errc::result_out_of_range)
    refuse(in_quotes(text) + " is too large or too small a number", "the largest number is about 1e308");
  if (fault != std::errc{}) return false;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return true;
}

[[noreturn]] void refuse_no_number(std::string_view text) {
  const std::string start = lower_case(text.substr(0, 4));
  const bool infinite = start.starts_with("inf") || start.starts_with("-inf") || start.starts_with("+inf");
  const bool not_a_number = start.starts_with("nan") || start.starts_with("-nan") || start.starts_with("+nan");
  if (infinite || not_a_number) refuse(in_quotes(text) + " is not a finite number", "write a number and its unit");
  refuse(in_quotes(text) + " does not begin with a number", "write a number and its unit, such as 36.6 mm or 1-1/4 in");
}

}  // namespace

LeadingNumber leading_number(std::string_view text) {
  const std::string_view all = trimmed(text);
  std::string_view rest = all;
  const bool negative = !rest.empty() && rest.front() == '-';
  if (negative || (!rest.empty() && rest.front() == '+')) rest.remove_prefix(1);
  double value = 0;
  if (!take_mixed(rest, value) && !take_fraction(rest, value) && !take_decimal(rest, value)) refuse_no_number(all);
  if (rest.size() > 1 && rest[0] == ',' && is_digit(rest[1])) {
    std::string with_point(all);
    with_point[static_cast<std::size_t>(rest.data() - all.data())] = '.';
    refuse(in_quotes(all) + " has a comma in its number",
           "the decimal point is a point: write " + in_quotes(with_point) + "; nothing stands between thousands");
  }
  if (!std::isfinite(value)) refuse(in_quotes(all) + " is not a finite number", "write a number and its unit");
  return {negative ? -value : value, trimmed(rest)};
}

}  // namespace pulsewright
