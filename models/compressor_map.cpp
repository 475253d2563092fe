#include "models/compressor_map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>

#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr const char* shaft_speed = "corrected_speed_rpm";
constexpr const char* tip_speed = "corrected_tip_speed_m_s";
constexpr const char* flow_column = "corrected_flow_kg_s";
constexpr const char* ratio_column = "pressure_ratio";
constexpr const char* efficiency_column = "efficiency";

constexpr double on_the_edge = 1e-9;  // relative: a point of the map itself is inside

struct Columns {
  int speed, flow, ratio, efficiency;
  bool tip;
};

std::optional<Columns> columns_of(const MapFile& file, const MapFault& fault) {
  MapColumns columns(file, fault);
  const Columns c{columns.need_one_of(shaft_speed, tip_speed), columns.need(flow_column), columns.need(ratio_column),
                  columns.need(efficiency_column), columns.may(tip_speed) >= 0};
  columns.need_reference();
  return columns.good() ? std::optional(c) : std::nullopt;
}

std::string wrong_with(double speed, const CompressorMapPoint& p) {
  if (!(speed > 0)) return fmt::format("a speed must be above 0, not {:g}", speed);
  if (!(p.flow > 0)) return fmt::format("a flow must be above 0, not {:g}", p.flow);
  if (!(p.pressure_ratio >= 1 && p.pressure_ratio <= 10))
    return fmt::format("a pressure ratio lies between 1 and 10, not at {:g}", p.pressure_ratio);
  if (!(p.efficiency > 0.05 && p.efficiency < 1))
    return fmt::format("an efficiency lies between 0.05 and 1, not at {:g}", p.efficiency);
  return {};
}

/// The point joins the line of its speed, or begins the next one.
std::string place(CompressorMapTable& table, double speed, const CompressorMapPoint& point) {
  auto& lines = table.lines;
  if (lines.empty() || speed > lines.back().speed) {
    lines.push_back({speed, {point}});
    return {};
  }
  if (speed < lines.back().speed) return "speeds must rise from line to line; points of one speed stand together";
  if (!(point.flow > lines.back().points.back().flow)) return "flows must rise along one speed, from surge to choke";
  lines.back().points.push_back(point);
  return {};
}

/// Nothing crosses: at every share of the way from surge to choke the faster line lies higher.
std::string wrong_lines(const CompressorMapTable& table) {
  if (table.lines.size() < 2) return "a map needs two speeds or more";
  for (const CompressorMapLine& line : table.lines)
    if (line.points.size() < 2)
      return fmt::format("the speed {:g} has one point only: it takes two or more", line.speed);
  for (std::size_t k = 1; k < table.lines.size(); ++k) {
    const auto &slow = table.lines[k - 1].points, &fast = table.lines[k].points;
    if (!(fast.front().flow >= slow.front().flow && fast.back().flow >= slow.back().flow))
      return "surge and choke must move to more flow from one speed to the next";
    if (!(fast.front().pressure_ratio > slow.front().pressure_ratio))
      return "the pressure ratio at surge must rise from one speed to the next";
  }
  return {};
}

double mixed(double a, double b, double share) { return a + share * (b - a); }

/// A value over the share of the way from a line's surge to its choke, straight between its points.
double along(const CompressorMapLine& line, double share, double CompressorMapPoint::*value) {
  const auto& points = line.points;
  const double flow = mixed(points.front().flow, points.back().flow, share);
  const auto above = std::ranges::upper_bound(points, flow, {}, &CompressorMapPoint::flow);
  const auto high = std::clamp<std::ptrdiff_t>(above - points.begin(), 1, std::ssize(points) - 1);
  const CompressorMapPoint &a = points[static_cast<std::size_t>(high - 1)], &b = points[static_cast<std::size_t>(high)];
  return mixed(a.*value, b.*value, std::clamp((flow - a.flow) / (b.flow - a.flow), 0.0, 1.0));
}

}  // namespace

const std::vector<std::string> compressor_map_columns = {shaft_speed, tip_speed, flow_column, ratio_column,
                                                         efficiency_column};

std::optional<CompressorMapTable> compressor_map_table(const MapFile& file, const MapFault& fault) {
  const auto c = columns_of(file, fault);
  if (!c) return std::nullopt;
  CompressorMapTable table{*file.reference, c->tip, {}};
  bool good = true;
  const auto say = [&](const std::string& at, const std::string& what) {
    if (!what.empty()) fault(at + ": " + what, {}), good = false;
  };
  for (const MapRow& row : file.rows) {
    const auto value = [&](int column) { return row.values[static_cast<std::size_t>(column)]; };
    const CompressorMapPoint point{value(c->flow), value(c->ratio), value(c->efficiency)};
    const double speed = value(c->speed) * (c->tip ? 1 : 1.0 / 60);
    const std::string wrong = wrong_with(speed, point);
    say(file.at(row.line), wrong.empty() ? place(table, speed, point) : wrong);
  }
  if (good) say(file.name, wrong_lines(table));
  return good ? std::optional(std::move(table)) : std::nullopt;
}

struct CompressorMap::Line {
  const CompressorMapLine *slow, *fast;
  double share;  // of the way from slow to fast
  double surge() const { return mixed(slow->points.front().flow, fast->points.front().flow, share); }
  double choke() const { return mixed(slow->points.back().flow, fast->points.back().flow, share); }
  double at(double way, double CompressorMapPoint::*value) const {
    return mixed(along(*slow, way, value), along(*fast, way, value), share);
  }
  /// From surge, 0, to choke, 1.
  double way(double flow) const { return std::clamp((flow - surge()) / (choke() - surge()), 0.0, 1.0); }
};

CompressorMap::CompressorMap(CompressorMapTable table, double exducer)
    : table_(std::move(table)), tip_per_speed_(table_.tip_speeds ? 1 : std::numbers::pi * exducer) {}

double CompressorMap::best_efficiency() const {
  double best = 0;
  for (const CompressorMapLine& line : table_.lines)
    for (const CompressorMapPoint& point : line.points) best = std::max(best, point.efficiency);
  return best;
}

CompressorMap::Line CompressorMap::line_at(double speed) const {
  const auto& lines = table_.lines;
  const auto above = std::ranges::upper_bound(lines, speed, {}, &CompressorMapLine::speed);
  const auto high =
      static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(above - lines.begin(), 1, std::ssize(lines) - 1));
  const double low = lines[high - 1].speed;
  return {&lines[high - 1], &lines[high], std::clamp((speed - low) / (lines[high].speed - low), 0.0, 1.0)};
}

/// Level to the left of surge; past choke a line falls below every ratio, the further the more.
double CompressorMap::ratio_on(const Line& line, double flow) const {
  const double choke = line.choke();
  if (flow > choke * (1 + on_the_edge)) return 1 - flow / choke;
  return line.at(line.way(flow), &CompressorMapPoint::pressure_ratio);
}

double CompressorMap::efficiency_on(const Line& line, double flow) const {
  return line.at(line.way(flow), &CompressorMapPoint::efficiency);
}

/// Speed whose line passes flow and ratio; the map's ends where none does.
double CompressorMap::speed_for(double flow, double ratio) const {
  const double slowest = table_.lines.front().speed, fastest = table_.lines.back().speed;
  const auto above = [&](double speed) { return ratio_on(line_at(speed), flow) - ratio; };
  const double low = above(slowest), high = above(fastest);
  if (low >= 0) return slowest;
  if (high <= 0) return fastest;
  std::uintmax_t turns = 100;
  const auto root = boost::math::tools::toms748_solve(above, slowest, fastest, low, high,
                                                      boost::math::tools::eps_tolerance<double>(44), turns);
  return root.second;  // on the side of more ratio: where a line ends in choke, the one that still passes the flow
}

// Equation   m_c = m sqrt(T/T_ref)/(p/p_ref), N = N_c sqrt(T/T_ref); on a line ratio and efficiency straight between its
//            points; between two lines straight along the speed at the same share of the way from surge to choke
// Source     similarity of compressors: S. L. Dixon and C. A. Hall, Fluid Mechanics and Thermodynamics of Turbomachinery,
//            7th ed., 2014, chapter 2; the interpolation is our own
// Symbols    m air flow kg/s; T, p before the wheel; N speed of shaft or tip
// Valid for  inside the map; outside its nearest edge stands in and is flagged
// Tested by  tests/models/compressor_map_test.cpp
CompressorMapAnswer CompressorMap::at(const CompressorInlet& inlet, double air_flow, double ratio) const {
  const double root = std::sqrt(inlet.temperature / table_.reference.temperature);
  const double flow = air_flow * root / (inlet.pressure / table_.reference.pressure);
  const double speed = speed_for(flow, ratio);
  const Line line = line_at(speed);
  const double there = ratio_on(line, flow), edge = line.at(1, &CompressorMapPoint::pressure_ratio);
  CompressorMapAnswer answer{flow, speed * root * tip_per_speed_, efficiency_on(line, flow)};
  answer.choke = flow > line.choke() * (1 + on_the_edge) ||
                 (flow > line.choke() * (1 - on_the_edge) && ratio < edge * (1 - on_the_edge));
  answer.overspeed = speed == table_.lines.back().speed && ratio > there * (1 + on_the_edge) && !answer.choke;
  answer.too_slow = speed == table_.lines.front().speed && ratio < there * (1 - on_the_edge) && !answer.choke;
  answer.surge = flow < line.surge() * (1 - on_the_edge) && !answer.too_slow;
  return answer;
}

}  // namespace pulsewright
