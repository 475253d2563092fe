#include "models/turbine_map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/turbine_work.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr const char* speed_per_root = "speed_rpm_per_sqrtK";
constexpr const char* corrected_speed = "corrected_speed_rpm";
constexpr const char* ratio_column = "expansion_ratio";
constexpr const char* flow_parameter = "flow_parameter_kg_sqrtK_per_s_kPa";
constexpr const char* corrected_flow = "corrected_flow_kg_s";
constexpr const char* efficiency_column = "efficiency";

constexpr double least_share = 0.3;  // of the parabola: where it gives less, a point says nothing about its peak

struct Columns {
  int speed, ratio, flow, efficiency;
  double speed_factor, flow_factor;  // to rev/(s sqrt K) and kg sqrt(K)/(s Pa)
};

std::optional<Columns> columns_of(const MapFile& file, const MapFault& fault) {
  MapColumns columns(file, fault);
  Columns c{columns.one_of(speed_per_root, corrected_speed),
            columns.need(ratio_column),
            columns.need_one_of(corrected_flow, flow_parameter),
            columns.may(efficiency_column),
            1.0 / 60,
            1e-3};
  if (file.column(corrected_flow) >= 0 || file.column(corrected_speed) >= 0) columns.need_reference();
  if (!columns.good()) return std::nullopt;
  if (file.column(corrected_speed) >= 0) c.speed_factor /= std::sqrt(file.reference->temperature);
  if (file.column(corrected_flow) >= 0)
    c.flow_factor = std::sqrt(file.reference->temperature) / file.reference->pressure;
  return c;
}

/// What is wrong with a row as written; empty where nothing is.
std::string wrong_with(const MapRow& row, const Columns& c) {
  const auto value = [&](int column) { return row.values[static_cast<std::size_t>(column)]; };
  if (!(value(c.ratio) > 1 && value(c.ratio) <= 20))
    return fmt::format("an expansion ratio lies above 1 and up to 20, not at {:g}", value(c.ratio));
  if (!(value(c.flow) > 0)) return fmt::format("a flow must be above 0, not {:g}", value(c.flow));
  if (c.efficiency >= 0 && !(value(c.efficiency) > 0 && value(c.efficiency) < 1))
    return fmt::format("an efficiency lies between 0 and 1, not at {:g}", value(c.efficiency));
  if (c.speed >= 0 && !(value(c.speed) > 0)) return fmt::format("a speed must be above 0, not {:g}", value(c.speed));
  return {};
}

/// What no turbine of a car, a lorry or a ship passes or turns: the unit is wrong.
std::string wrong_size(const TurbineMapPoint& p, bool has_speed) {
  const double corrected = p.flow * 101325 / std::sqrt(288.15), rpm = 60 * p.speed * std::sqrt(288.15);
  if (!(corrected >= 1e-3 && corrected <= 10))
    return fmt::format("that flow is {:.3g} kg/s corrected to 288.15 K and 1.01325 bar: is the unit right?", corrected);
  if (has_speed && !(rpm >= 100 && rpm <= 1e6))
    return fmt::format("that speed is {:.3g} rpm corrected to 288.15 K: is the unit right?", rpm);
  return {};
}

/// Points of one speed stand together, ratios rising; speeds rise too.
std::string wrong_order(const TurbineMapPoint& before, const TurbineMapPoint& now) {
  if (now.speed < before.speed) return "speeds must rise from line to line; points of one speed stand together";
  if (now.speed == before.speed && !(now.ratio > before.ratio)) return "expansion ratios must rise along one speed";
  return {};
}

double falling(double x) { return std::max(x * (2 - x), 0.0); }

/// Where x stands among rising values: the one before, and the share of the way to the next. Clamped to the ends.
struct Between {
  std::size_t low;
  double share;
  bool inside;
};
template <class List, class Value>
Between between_of(const List& list, double x, Value value) {
  if (list.size() == 1) return {0, 0, x == value(list.front())};
  const auto above = std::ranges::upper_bound(list, x, {}, value);
  const auto low = static_cast<std::size_t>(
      std::clamp<std::ptrdiff_t>(above - list.begin() - 1, 0, static_cast<std::ptrdiff_t>(list.size()) - 2));
  const double share = (x - value(list[low])) / (value(list[low + 1]) - value(list[low]));
  return {low, std::clamp(share, 0.0, 1.0), share >= 0 && share <= 1};
}

double mixed(double a, double b, double share) { return a + share * (b - a); }

}  // namespace

const std::vector<std::string> turbine_map_columns = {speed_per_root, corrected_speed, ratio_column,
                                                      flow_parameter, corrected_flow,  efficiency_column};

std::optional<TurbineMapTable> turbine_map_table(const MapFile& file, const MapFault& fault) {
  const auto columns = columns_of(file, fault);
  if (!columns) return std::nullopt;
  TurbineMapTable table{columns->speed >= 0, columns->efficiency >= 0, {}};
  bool good = true;
  for (const MapRow& row : file.rows) {
    const auto value = [&](int column) { return column < 0 ? 0 : row.values[static_cast<std::size_t>(column)]; };
    const TurbineMapPoint point{columns->speed_factor * value(columns->speed), value(columns->ratio),
                                columns->flow_factor * value(columns->flow), value(columns->efficiency)};
    std::string wrong = wrong_with(row, *columns);
    if (wrong.empty()) wrong = wrong_size(point, table.has_speed);
    if (wrong.empty() && !table.points.empty()) wrong = wrong_order(table.points.back(), point);
    if (!wrong.empty()) fault(file.at(row.line) + ": " + wrong, {}), good = false;
    table.points.push_back(point);
  }
  return good ? std::optional(std::move(table)) : std::nullopt;
}

// Equation   area_i = flow_i sqrt(R)/psi_pair(1/ratio_i); efficiency_i = eta_i/(2x_i - x_i^2), x = (U/C0)/0.7071;
//            between the points linear along the ratio on each speed, then linear along the speed
// Source     own: the nozzle pair (models/nozzle_pair.hpp) and the parabola (models/turbine_work.hpp) carry the shape,
//            the map the size; a map computed from them gives them back exactly
// Symbols    flow kg sqrt(K)/(s Pa); psi flow function of the pair; U tip speed, C0 spouting velocity m/s
// Valid for  the map's own range; beyond it the scales of its edge. Heat ratio of burned gas at capacity_temperature; where
//            the parabola is below least_share that share stands in its place. Scrolls fed alike
// Tested by  tests/models/turbine_map_test.cpp
TurbineMap::TurbineMap(const TurbineMapTable& table, double rotor_over_throat, int scrolls, double inducer,
                       double peak_efficiency, const Gas& gas)
    : has_speed_(table.has_speed) {
  const double gamma = heat_ratio(gas, capacity_temperature, 1), root = std::sqrt(gas_constant(gas, 1));
  double largest = 0;
  for (const TurbineMapPoint& p : table.points) {
    const double speed = std::numbers::pi * inducer * p.speed;
    if (lines_.empty() || speed != lines_.back().speed) lines_.push_back({table.has_speed ? speed : 0, {}, {}, {}});
    Line& line = lines_.back();
    const double throat = p.flow * root / pair_flow(1 / p.ratio, rotor_over_throat, gamma).flow;
    const double drop = isentropic_drop(gas, {p.ratio, capacity_temperature, 1}, 1);
    const double x = speed * std::sqrt(capacity_temperature) / spouting_velocity(drop) / best_velocity_ratio;
    const double eta = table.has_efficiency ? p.efficiency : peak_efficiency;
    const bool at_speed = table.has_speed && table.has_efficiency;
    line.ratio.push_back(p.ratio), line.area.push_back(throat);
    line.efficiency.push_back(at_speed ? eta / std::max(falling(x), least_share) : eta);
    largest = std::max(largest, throat), best_ = std::max(best_, eta);
  }
  for (Line& line : lines_)
    for (double& area : line.area) area /= largest;
  areas_ = {largest / scrolls, largest * rotor_over_throat};
}

TurbineMap::Answer TurbineMap::on(const Line& line, double ratio) const {
  const Between b = between_of(line.ratio, ratio, [](double r) { return r; });
  const std::size_t next = std::min(b.low + 1, line.ratio.size() - 1);
  return {mixed(line.area[b.low], line.area[next], b.share),
          mixed(line.efficiency[b.low], line.efficiency[next], b.share), b.inside};
}

TurbineMap::Answer TurbineMap::at(double tip_speed, double T0, double ratio) const {
  if (!has_speed_) return on(lines_.front(), ratio);
  const Between b = between_of(lines_, tip_speed / std::sqrt(T0), [](const Line& l) { return l.speed; });
  const Answer low = on(lines_[b.low], ratio), high = on(lines_[std::min(b.low + 1, lines_.size() - 1)], ratio);
  const bool inside = b.inside && (b.share < 1 ? low.inside : true) && (b.share > 0 ? high.inside : true);
  return {mixed(low.area, high.area, b.share), mixed(low.efficiency, high.efficiency, b.share), inside};
}

}  // namespace pulsewright
