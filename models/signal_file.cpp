#include "models/signal_file.hpp"

#include <charconv>
#include <cmath>
#include <sstream>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr std::string_view heading = "time_s,pressure_Pa,temperature_K";

[[noreturn]] void refuse(const std::string& place, const std::string& what) {
  throw Error(ErrorKind::case_file, place + ": " + what, {},
              "heading " + std::string(heading) + ", then three numbers a line");
}

double number(std::string_view field, const std::string& place) {
  field = trimmed(field);
  double value = 0;
  const auto [end, fault] = std::from_chars(field.data(), field.data() + field.size(), value);
  if (fault != std::errc() || end != field.data() + field.size() || !std::isfinite(value))
    refuse(place, in_quotes(field) + " is not a number");
  return value;
}

SignalPoint row(std::string_view line, const std::string& place) {
  const auto one = line.find(','), two = one == std::string_view::npos ? one : line.find(',', one + 1);
  if (two == std::string_view::npos) refuse(place, in_quotes(line) + " is not three values");
  return {number(line.substr(0, one), place), number(line.substr(one + 1, two - one - 1), place),
          number(line.substr(two + 1), place)};
}

void check(const std::vector<SignalPoint>& points, const std::string& place) {
  const SignalPoint& last = points.back();
  if (!(last.pressure > 0 && last.pressure < 1e9))
    refuse(place, "the pressure must be above 0 and below 1e9 Pa, absolute");
  if (!(last.temperature > 100 && last.temperature < 5000))
    refuse(place, "the temperature must lie between 100 and 5000 K");
  if (points.size() > 1 && !(last.time > points[points.size() - 2].time)) refuse(place, "times must rise");
}

}  // namespace

std::vector<SignalPoint> parse_signal(const std::string& text, const std::string& name) {
  std::vector<SignalPoint> points;
  std::istringstream lines(text);
  bool headed = false;
  int count = 0;
  for (std::string line; std::getline(lines, line);) {
    const std::string place = name + ":" + std::to_string(++count);
    const std::string_view words = trimmed(line);
    if (words.empty() || words.front() == '#') continue;
    if (!headed) {
      if (words != heading) refuse(place, "the heading is " + in_quotes(words));
      headed = true;
      continue;
    }
    points.push_back(row(words, place));
    check(points, place);
  }
  if (points.size() < 2) refuse(name, "fewer than two rows");
  return points;
}

}  // namespace pulsewright
