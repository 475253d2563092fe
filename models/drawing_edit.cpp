#include "models/drawing_edit.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

constexpr double no_length = 1e-9;  // m: what rounding leaves of a stretch

/// The cross-section at a share of a stretch: bore and hydraulic diameter linear along it.
CrossSection section_at(const DuctSection& s, double share) {
  const auto between = [share](double a, double b) { return a + share * (b - a); };
  const double bore = between(equal_area_bore(s.start.area), equal_area_bore(s.finish.area));
  const double hydraulic = between(s.start.hydraulic_diameter(), s.finish.hydraulic_diameter());
  const double area = round_section(bore).area;
  return {area, 4 * area / hydraulic};
}

std::pair<DuctSection, DuctSection> parted_section(const DuctSection& s, double distance) {
  const double share = distance / s.length;
  DuctSection a = s, b = s;
  a.length = distance;
  b.length = s.length - distance;
  a.finish = b.start = section_at(s, share);
  a.bend_angle = share * s.bend_angle;
  b.bend_angle = (1 - share) * s.bend_angle;
  a.bends = std::max(1, static_cast<int>(std::lround(share * s.bends)));
  b.bends = std::max(1, s.bends - a.bends);
  return {a, b};
}

}  // namespace

double first_area(const DuctDrawing& drawing) { return drawing.sections.front().start.area; }
double last_area(const DuctDrawing& drawing) { return drawing.sections.back().finish.area; }

double drawn_volume(const DuctDrawing& drawing) {
  double volume = 0;
  for (const DuctSection& s : drawing.sections)
    volume += s.length / 3 * (s.start.area + s.finish.area + std::sqrt(s.start.area * s.finish.area));
  return volume;
}

std::pair<DuctDrawing, DuctDrawing> parted(const DuctDrawing& drawing, double distance) {
  DuctDrawing a{{}, drawing.local_losses}, b{{}, drawing.local_losses};
  double from = 0;
  for (const DuctSection& s : drawing.sections) {
    const double cut = distance - from;
    if (cut >= s.length - no_length) {
      a.sections.push_back(s);
    } else if (cut <= no_length) {
      b.sections.push_back(s);
    } else {
      auto [one, other] = parted_section(s, cut);
      a.sections.push_back(one);
      b.sections.push_back(other);
    }
    from += s.length;
  }
  return {a, b};
}

DuctDrawing joined(DuctDrawing first, const DuctDrawing& second) {
  first.sections.insert(first.sections.end(), second.sections.begin(), second.sections.end());
  return first;
}

DuctDrawing turned_round(const DuctDrawing& drawing) {
  DuctDrawing result{{drawing.sections.rbegin(), drawing.sections.rend()}, drawing.local_losses};
  for (DuctSection& s : result.sections) std::swap(s.start, s.finish);
  return result;
}

DuctDrawing with_mouth(const DuctDrawing& drawing, double bore, double length, bool at_finish) {
  if (at_finish) return turned_round(with_mouth(turned_round(drawing), bore, length, false));
  const bool whole = length >= drawing.length() - no_length;
  auto [mouth, rest] = whole ? std::pair{drawing, DuctDrawing{{}, drawing.local_losses}} : parted(drawing, length);
  const double own = equal_area_bore(last_area(mouth)), total = mouth.length();
  double from = 0;
  for (DuctSection& s : mouth.sections) {
    s.start = round_section(bore + from / total * (own - bore));
    from += s.length;
    s.finish = round_section(bore + from / total * (own - bore));
  }
  return joined(std::move(mouth), rest);
}

}  // namespace pulsewright
