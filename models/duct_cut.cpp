// Cutting a drawn duct into cells: every quantity of a cell is its exact mean over the pieces of sections that lie in
// it.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/duct_drawing.hpp"
#include "models/losses.hpp"
#include "shared/error.hpp"
#include "solver/friction.hpp"

namespace pulsewright {
namespace {

// Reynolds number at which the bend correlation takes its friction factor: a 40 mm primary at 100 m/s and 900 K has
// 0.8e5. From half to twice of it the loss of a bend moves by 7 %, far inside the handbooks' +-30 %.
constexpr double bend_reynolds = 1e5;

/// Losses of one section per metre of it. Tapers count on the head at the small end of the whole taper (area
/// reference).
struct SectionLoss {
  double bend = 0;  // on the local head, 1/m
  double taper_forward = 0, taper_backward = 0, reference = 1;
};

double bore_change(const DuctSection& s) {
  const double change = equal_area_bore(s.finish.area) - equal_area_bore(s.start.area);
  return std::abs(change) < 1e-9 ? 0 : change;  // m; a nanometre is rounding, not a taper
}

double bend_per_metre(const DuctSection& s) {
  if (s.bend_angle <= 0) return 0;
  const double bore = equal_area_bore(0.5 * (s.start.area + s.finish.area));
  const double darcy = darcy_factor(bend_reynolds, s.roughness / bore);
  return s.bends * bend_loss(s.bend_angle / s.bends, s.bend_radius / bore, darcy) / s.length;
}

// Sections one behind the other that all widen (or all narrow) are one taper of the whole area ratio: each takes of the
// sudden loss the share of its own angle and of the bore that it adds. A cone cut in two thus loses what it lost whole.
void lose_in_taper(std::span<const DuctSection> taper, std::span<SectionLoss> loss) {
  const double first = taper.front().start.area, last = taper.back().finish.area;
  const double small = std::min(first, last), ratio = small / std::max(first, last);
  double whole_change = 0;
  for (const DuctSection& s : taper) whole_change += bore_change(s);
  for (std::size_t i = 0; i < taper.size(); ++i) {
    const double change = bore_change(taper[i]), part = change / whole_change;
    const double half_angle = std::atan(std::abs(change) / (2 * taper[i].length));
    const double widening = part * diffuser_loss(half_angle, ratio) / taper[i].length;
    const double narrowing = part * contraction_loss(half_angle, ratio) / taper[i].length;
    loss[i].taper_forward = last > first ? widening : narrowing;
    loss[i].taper_backward = last > first ? narrowing : widening;
    loss[i].reference = small;
  }
}

std::vector<SectionLoss> section_losses(const DuctDrawing& drawing) {
  const std::span<const DuctSection> sections = drawing.sections;
  std::vector<SectionLoss> losses(sections.size());
  if (!drawing.local_losses) return losses;
  for (std::size_t i = 0; i < sections.size(); ++i) losses[i].bend = bend_per_metre(sections[i]);
  for (std::size_t i = 0; i < sections.size();) {
    const double change = bore_change(sections[i]);
    std::size_t end = i + 1;
    while (change != 0 && end < sections.size() && bore_change(sections[end]) * change > 0) ++end;
    if (change != 0) lose_in_taper(sections.subspan(i, end - i), std::span(losses).subspan(i, end - i));
    i = end;
  }
  return losses;
}

void check(const std::string& name, const DuctDrawing& drawing) {
  const auto fail = [&](std::string what) { throw Error(ErrorKind::internal, std::move(what), "duct " + name); };
  if (drawing.sections.empty()) fail("a duct was drawn without a section");
  for (std::size_t i = 0; i < drawing.sections.size(); ++i) {
    const DuctSection& s = drawing.sections[i];
    if (!(s.length > 0 && s.start.area > 0 && s.finish.area > 0))
      fail(fmt::format("section {} has length {} m and areas {} and {} m2; all must be above zero", i + 1, s.length,
                       s.start.area, s.finish.area));
    if (i > 0 && steps(drawing.sections[i - 1], s))
      fail(fmt::format("the area steps between sections {} and {}", i, i + 1));
  }
}

/// The part of a section from share a to share b of its length, laid into a cell.
struct Part {
  const DuctSection& section;
  const SectionLoss& loss;
  double a, b;

  double length() const { return (b - a) * section.length; }
  double bore(double share) const {
    return std::lerp(equal_area_bore(section.start.area), equal_area_bore(section.finish.area), share);
  }
  double volume() const {  // of a frustum of the equal-area cone
    if (section.start.area == section.finish.area) return section.start.area * length();
    const double p = bore(a), q = bore(b);
    return std::numbers::pi / 12 * (p * p + p * q + q * q) * length();
  }
  double hydraulic_diameter() const {
    return std::lerp(section.start.hydraulic_diameter(), section.finish.hydraulic_diameter(), 0.5 * (a + b));
  }
};

void add(const Part& part, DuctSpec& spec, std::size_t i) {
  const double share = part.length() / spec.dx;
  spec.cell_volume[i] += part.volume();
  spec.hydraulic_diameter[i] += share * part.hydraulic_diameter();
  spec.roughness[i] += share * part.section.roughness;
  spec.wall_temperature[i] += share * part.section.wall_temperature;
}

// Needs the cell's whole volume: the solver works with the head in the cell, rho u^2/2 at its mean area.
void add_loss(const Part& part, DuctSpec& spec, std::size_t i) {
  const double share = part.length() / spec.dx, area = spec.cell_volume[i] / spec.dx;
  const double head = (area / part.loss.reference) * (area / part.loss.reference);
  spec.loss_forward[i] += share * (part.loss.bend + head * part.loss.taper_forward);
  spec.loss_backward[i] += share * (part.loss.bend + head * part.loss.taper_backward);
}

template <class Visit>
void for_parts(const DuctDrawing& drawing, const std::vector<SectionLoss>& losses, const DuctSpec& spec, Visit visit) {
  double from = 0;
  for (std::size_t k = 0; k < drawing.sections.size(); ++k) {
    const DuctSection& s = drawing.sections[k];
    for (std::size_t i = 0; i < spec.cells(); ++i) {
      const double a = std::clamp((static_cast<double>(i) * spec.dx - from) / s.length, 0.0, 1.0);
      const double b = std::clamp((static_cast<double>(i + 1) * spec.dx - from) / s.length, 0.0, 1.0);
      if (b > a) visit(Part{s, losses[k], a, b}, i);
    }
    from += s.length;
  }
}

}  // namespace

DuctSpec cut_duct(std::string name, const DuctDrawing& drawing, double cell) {
  check(name, drawing);
  const auto n = static_cast<std::size_t>(cell_count(drawing.length(), cell));
  DuctSpec spec;
  spec.name = std::move(name);
  spec.dx = drawing.length() / static_cast<double>(n);
  for (auto* lane : {&spec.cell_volume, &spec.hydraulic_diameter, &spec.roughness, &spec.wall_temperature,
                     &spec.loss_forward, &spec.loss_backward})
    lane->assign(n, 0.0);
  for (std::size_t i = 0; i <= n; ++i) spec.face_area.push_back(area_at(drawing, static_cast<double>(i) * spec.dx));
  const std::vector<SectionLoss> losses = section_losses(drawing);
  for_parts(drawing, losses, spec, [&](const Part& part, std::size_t i) { add(part, spec, i); });
  for_parts(drawing, losses, spec, [&](const Part& part, std::size_t i) { add_loss(part, spec, i); });
  return spec;
}

}  // namespace pulsewright
