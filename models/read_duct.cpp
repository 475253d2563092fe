#include "models/read_duct.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/tube_stock.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double largest_single_bend = 90 * degree;

void read_bore(const CaseTable& t, DuctShape& shape) {
  shape.first_bore = shape.last_bore = t.quantity("bore", Dimension::length, bore_range()).value_or(shape.first_bore);
}

void read_tube(const CaseTable& t, DuctShape& shape) {
  const auto tube = t.parsed("tube", parse_tube);
  if (tube) shape.first_bore = shape.last_bore = tube->bore(), shape.wall = tube->wall;
}

void read_taper(const CaseTable& t, DuctShape& shape) {
  shape.first_bore = t.need_quantity("bore_from", Dimension::length, bore_range());
  shape.last_bore = t.need_quantity("bore_to", Dimension::length, bore_range());
}

void read_area_table(const CaseTable& t, DuctShape& shape) {
  const auto rows = t.rows("area_table", {Dimension::length, Dimension::length});
  if (!rows) return;
  for (const auto& row : *rows) shape.table.push_back({row[0], row[1]});
  try {
    sections_from_table(shape.table, 0, 0);
    shape.length = shape.table.back().distance;
  } catch (const Error& error) {
    t.fault("area_table", error.message(), error.hint());
    shape.table.clear();
  }
}

void read_length(const CaseTable& t, DuctShape& shape) {
  if (shape.table.empty()) {
    shape.length = t.need_quantity("length", Dimension::length, length_range());
    return;
  }
  const auto said = t.quantity("length", Dimension::length, length_range());
  if (said && std::abs(*said - shape.length) > 1e-6)
    t.fault("length", "length is " + in_words(*said, Dimension::length) + ", but area_table ends at " +
                          in_words(shape.length, Dimension::length));
}

/// The one of the keys that say a bore which stands in the table; more than one is a fault.
std::string_view bore_key(const CaseTable& t) {
  std::vector<std::string_view> found;
  for (const std::string_view key : {"bore", "tube", "bore_from", "area_table"})
    if (t.has(key)) found.push_back(key);
  if (found.empty() && t.has("bore_to")) found.push_back("bore_from");
  if (found.size() > 1)
    t.fault(found[1], "the bore is said twice, by " + std::string(found[0]) + " (" + t.line_of(found[0]) + ") and by " +
                          std::string(found[1]));
  return found.empty() ? "" : found[0];
}

}  // namespace

const CaseTable& Layered::with(std::string_view key) const { return with_any({key}); }

const CaseTable& Layered::with_any(std::initializer_list<std::string_view> keys) const {
  bool own = false, shared = false;
  for (const std::string_view key : keys) {
    own = own_.has(key) || own;
    shared = shared_.has(key) || shared;
  }
  return own || !shared ? own_ : shared_;
}

Range bore_range() { return above(0, 1.0); }
Range length_range() { return above(0, 100.0); }
Range angle_range() { return between(0, std::numbers::pi * (1 + 1e-12)); }
Range clock_range() { return between(-2 * std::numbers::pi, 2 * std::numbers::pi); }
Range wall_range() { return between(200, 2000); }
Range pressure_range() { return between(1e2, 1e8); }
Range gas_temperature_range() { return between(150, 3500); }

double chosen_cell(double command_line, double of_case, const Range& range) {
  if (command_line <= 0) return of_case;
  if (range.holds(command_line)) return command_line;
  throw Error(ErrorKind::usage, "cells of " + in_words(command_line, Dimension::length) + " are outside " +
                                    in_words(range.low, Dimension::length) + " to " +
                                    in_words(range.high, Dimension::length));
}

PlacedText read_address(const CaseTable& table, std::string_view key) {
  if (!table.has(key)) return {{}, table.place()};
  return {table.text(key).value_or("?"), table.place(key)};
}

MeetingSketch read_meeting(const Layered& table, const MeetingKeys& keys) {
  MeetingSketch meeting;
  const CaseTable& t = table.with_any({keys.angle, keys.direction});
  if (t.has(keys.angle)) meeting.angle = t.quantity(keys.angle, Dimension::angle, angle_range()).value_or(0);
  if (t.has(keys.direction)) {
    const auto v = t.numbers(keys.direction, between(-1e6, 1e6));
    meeting.direction =
        v && v->size() == 3 ? Eigen::Vector3d((*v)[0], (*v)[1], (*v)[2]) : Eigen::Vector3d::UnitX().eval();
    if (v && v->size() != 3) t.fault(keys.direction, "a direction is three numbers, [x, y, z]");
    if (meeting.angle)
      t.fault(keys.direction,
              std::string(keys.direction) + " and " + std::string(keys.angle) + " say the same thing twice");
  }
  meeting.clock = table.with(keys.clock).quantity(keys.clock, Dimension::angle, clock_range());
  return meeting;
}

DuctWall read_wall(const Layered& table, AssumedList& assumed) {
  const auto roughness = table.with("roughness").quantity("roughness", Dimension::length, between(0, 5e-3));
  const auto temperature =
      table.with("wall_temperature").quantity("wall_temperature", Dimension::temperature, wall_range());
  return {assumed.given_or(roughness, "roughness"), assumed.given_or(temperature, "wall_temperature")};
}

DuctShape read_shape(const Layered& table) {
  const CaseTable& t = table.with_any({"bore", "tube", "bore_from", "bore_to", "area_table"});
  DuctShape shape;
  const std::string_view key = bore_key(t);
  if (key == "bore") read_bore(t, shape);
  if (key == "tube") read_tube(t, shape);
  if (key == "bore_from") read_taper(t, shape);
  if (key == "area_table") read_area_table(t, shape);
  if (key.empty()) table.own().fault_here("no bore: give tube, bore, bore_from and bore_to, or area_table");
  read_length(table.with("length"), shape);
  return shape;
}

BendReading read_bends(const Layered& table) {
  return {table.with("bends").quantity("bends", Dimension::angle, between(0, 4 * std::numbers::pi)),
          table.with("bend_radius").quantity("bend_radius", Dimension::length, above(0, 5))};
}

void lay_bends(DuctSection& section, double angle, double radius) {
  section.bend_angle = angle;
  section.bend_radius = radius;
  section.bends = std::max(1, static_cast<int>(std::ceil(angle / largest_single_bend - 1e-9)));
}

std::vector<DuctSection> read_sections(const CaseTable& table, const DuctShape& shape, AssumedList& assumed) {
  const Layered t(table);
  const BendReading bends = read_bends(t);
  if (!shape.table.empty()) {
    if (bends.angle)
      table.fault("bends", "bends on an area_table are not possible yet", "draw the bend as a duct of its own");
    return sections_from_table(shape.table, 0, 0);
  }
  DuctSection section = straight_section(shape.length, round_section(shape.first_bore), 0, 0);
  section.finish = round_section(shape.last_bore);
  if (bends.angle && *bends.angle > 0) {
    assumed.facts().primary_bore = shape.first_bore;
    lay_bends(section, *bends.angle, assumed.given_or(bends.radius, "primary.bend_radius", table.path()));
  }
  return {section};
}

void read_duct_ends(const CaseTable& table, DuctSketch& duct) {
  duct.from.address = read_address(table, "from");
  duct.to.address = read_address(table, "to");
  const Layered t(table);
  duct.from.meeting = read_meeting(t, {"from_angle", "from_clock", "from_direction"});
  duct.to.meeting = read_meeting(t, {"to_angle", "to_clock", table.has("to_direction") ? "to_direction" : "direction"});
}

}  // namespace pulsewright
