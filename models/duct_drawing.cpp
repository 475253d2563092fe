#include "models/duct_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/units.hpp"

namespace pulsewright {

DuctSection straight_section(double length, const CrossSection& section, double roughness, double wall_temperature) {
  DuctSection s;
  s.length = length;
  s.start = s.finish = section;
  s.roughness = roughness;
  s.wall_temperature = wall_temperature;
  return s;
}

std::vector<DuctSection> with_wall(std::vector<DuctSection> sections, const DuctWall& wall) {
  for (DuctSection& s : sections)
    s.roughness = wall.roughness, s.wall_temperature = wall.temperature, s.metal = wall.metal;
  return sections;
}

double DuctDrawing::length() const {
  double sum = 0;
  for (const DuctSection& s : sections) sum += s.length;
  return sum;
}

std::vector<DuctSection> sections_from_table(std::span<const BoreAt> table, double roughness, double wall_temperature) {
  const auto refuse = [](std::string what) {
    throw Error(ErrorKind::case_file, std::move(what), {},
                "an area table is a list of [distance, bore], distances rising from \"0 mm\"");
  };
  const auto mm = [](double x) { return in_words(x, Dimension::length); };
  if (table.size() < 2) refuse(fmt::format("an area table needs two rows or more, this has {}", table.size()));
  if (table.front().distance != 0)
    refuse(fmt::format("the area table begins at {}, not at 0 mm", mm(table.front().distance)));
  std::vector<DuctSection> sections;
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (!(table[i].bore > 0))
      refuse(fmt::format("a bore of the area table is {}; it must be above zero", mm(table[i].bore)));
    if (i == 0) continue;
    const double length = table[i].distance - table[i - 1].distance;
    if (!(length > 0))
      refuse(fmt::format("the distances of the area table do not rise: {} follows {}", mm(table[i].distance),
                         mm(table[i - 1].distance)));
    DuctSection s = straight_section(length, round_section(table[i - 1].bore), roughness, wall_temperature);
    s.finish = round_section(table[i].bore);
    sections.push_back(s);
  }
  return sections;
}

bool steps(const DuctSection& a, const DuctSection& b) {
  constexpr double same = 1e-9;  // of the area: rounding in where the two figures come from
  return std::abs(a.finish.area - b.start.area) > same * std::max(a.finish.area, b.start.area);
}

int cell_count(double length, double cell) { return std::max(2, static_cast<int>(std::lround(length / cell))); }

double area_at(const DuctDrawing& drawing, double distance) {
  double from = 0;
  for (const DuctSection& s : drawing.sections) {
    if (distance <= from + s.length || &s == &drawing.sections.back()) {
      const double share = std::clamp((distance - from) / s.length, 0.0, 1.0);
      if (s.start.area == s.finish.area) return s.start.area;
      const double bore = std::lerp(equal_area_bore(s.start.area), equal_area_bore(s.finish.area), share);
      return round_section(bore).area;
    }
    from += s.length;
  }
  throw Error(ErrorKind::internal, "a duct without a section has no area");
}

}  // namespace pulsewright
