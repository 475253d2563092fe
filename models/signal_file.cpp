#include "models/signal_file.hpp"

#include "shared/error.hpp"
#include "shared/plain_rows.hpp"

namespace pulsewright {
namespace {

constexpr std::string_view heading = "time_s,pressure_Pa,temperature_K";

const std::string hint = "heading " + std::string(heading) + ", then three numbers a line";

[[noreturn]] void refuse(const std::string& place, const std::string& what) {
  throw Error(ErrorKind::case_file, place + ": " + what, {}, hint);
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
  for (const PlainRow& row : plain_rows(text, name, heading, hint)) {
    points.push_back({row.values[0], row.values[1], row.values[2]});
    check(points, row.place);
  }
  if (points.size() < 2) refuse(name, "fewer than two rows");
  return points;
}

}  // namespace pulsewright
