// Pipe flow: friction, wall heat, bends, changes of area; and the pipe table.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/losses.hpp"
#include "models/tube_stock.hpp"
#include "solver/friction.hpp"
#include "tests/verification/all_checks.hpp"
#include "tests/verification/pipe_tables.hpp"

namespace pulsewright {
namespace {

constexpr double deg = std::numbers::pi / 180;

// The middle of what several handbooks print for one thing.
double median(std::span<const double> values) {
  std::vector<double> v;
  for (double x : values)
    if (!std::isnan(x)) v.push_back(x);
  std::sort(v.begin(), v.end());
  const std::size_t n = v.size();
  return n % 2 ? v[n / 2] : 0.5 * (v[n / 2 - 1] + v[n / 2]);
}

std::vector<Check> friction_checks() {
  CheckList list("pipe friction", "Hagen-Poiseuille, 64/Re");
  list.relative(closed_form, closed_form_reason);
  list.table(laminar_table(), [](auto at) { return std::vector{darcy_factor(at[0], 1e-3)}; });
  list.source("S. E. Haaland, J. Fluids Eng. 105 (1983) 89");
  const CheckList::Table both = turbulent_table();
  CheckList::Table haaland{{both.columns[0], both.columns[1], both.columns[2]}, 2, {}}, colebrook = haaland;
  colebrook.columns[2] = both.columns[3];
  for (const auto& row : both.rows) {
    haaland.rows.push_back({row[0], row[1], row[2]});
    colebrook.rows.push_back({row[0], row[1], row[3]});
  }
  const auto factor = [](auto at) { return std::vector{darcy_factor(at[0], at[1])}; };
  list.table(haaland, factor);
  list.source("C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133");
  list.relative(0.02, "Haaland's explicit law stays within 2 % of Colebrook's, as its author states");
  list.table(colebrook, factor);
  return list.checks();
}

std::vector<Check> heat_checks() {
  CheckList list("wall heat", "V. Gnielinski, Int. Chem. Eng. 16 (1976) 359: smooth steady pipe, Pr 0.7");
  list.relative(
      0, "published fits for exhaust manifolds lie between one and four times the steady pipe; ours at about twice");
  for (const auto& row : gnielinski_table().rows)
    list.band(fmt::format("Nusselt number over the steady pipe's at Re {:g}", row[0]), 1, 4, nusselt(row[0]) / row[1]);
  return list.checks();
}

std::vector<Check> bend_checks() {
  CheckList list(
      "bends",
      "D. C. Rennels and H. M. Hudson, Pipe Flow, 2012, ch. 15 (second hand), Re 1e5, relative roughness 1e-3");
  const double rough = darcy_factor(1e5, 1e-3), smooth = darcy_factor(1e5, 0);
  list.relative(1e-4, "one formula evaluated twice; the published figures have five digits");
  for (const auto& row : bend_table().rows)
    list.value(fmt::format("K of {:g} deg, radius/bore {:g}", row[1], row[0]), row[6],
               bend_loss_with_friction(row[1] * deg, row[0], rough));
  list.source(
      "Crane TP-410, 2009; Idelchik, diagram 6-1; Ito, 1960; Miller, 1990; Rennels and Hudson, 2012 (all second hand)");
  list.relative(0, "handbooks differ by 30 % and more: within 30 % of their median");
  for (const auto& row : bend_table().rows) {
    const double middle = median(std::span(row).subspan(2));
    list.band(fmt::format("K of {:g} deg, radius/bore {:g}, smooth", row[1], row[0]), 0.7 * middle, 1.3 * middle,
              bend_loss_with_friction(row[1] * deg, row[0], smooth));
  }
  return list.checks();
}

std::vector<Check> area_checks() {
  CheckList list("changes of area", "Borda and Carnot; Crane TP-410, 2009 (sudden narrowing, second hand)");
  list.relative(closed_form, closed_form_reason);
  list.table(area_change_table(), [](auto at) {
    return std::vector{diffuser_loss(90 * deg, at[0]), contraction_loss(90 * deg, at[0])};
  });
  list.source("Crane TP-410, 2009 (after Gibson); Rennels and Hudson, 2012; Idelchik; Miller, 1990 (second hand)");
  list.relative(0, "handbooks agree to about 25 %: within 25 % of their median, with the friction that they include");
  for (const auto& row : diffuser_table().rows) {
    const double half = 0.5 * row[0] * deg, ratio = 1 / row[1];
    const double friction = row[0] < 90 ? 0.02 / (8 * std::sin(half)) * (1 - ratio * ratio) : 0;
    const double middle = median(std::span(row).subspan(2));
    list.band(fmt::format("K of a cone of {:g} deg, area ratio {:g}", row[0], row[1]), 0.75 * middle, 1.25 * middle,
              diffuser_loss(half, ratio) + friction);
  }
  return list.checks();
}

std::vector<Check> stock_checks() {
  CheckList list("stock pipe", "ASME B36.19M, stainless steel pipe (second hand)");
  for (const PublishedPipe& pipe : pipe_table()) {
    const std::string name = fmt::format("NPS {} sch {}", pipe.nominal_size, pipe.schedule);
    const Tube tube = parse_tube(name);
    list.absolute(1e-6, "the same table; a thousandth of a millimetre is rounding");
    list.value("bore of " + name + " in m", 1e-3 * pipe.bore_mm, tube.bore());
    list.absolute(0.06e-3, "the standard rounds inches to 0.1 mm outside and 0.01 mm in the wall");
    list.value("outside diameter of " + name + " in m", 0.0254 * pipe.outside_diameter_in, tube.outside_diameter);
    list.absolute(0.006e-3, "the standard rounds inches to 0.01 mm in the wall");
    list.value("wall of " + name + " in m", 0.0254 * pipe.wall_in, tube.wall);
  }
  return list.checks();
}

}  // namespace

std::vector<Check> pipe_checks() {
  return joined({friction_checks(), heat_checks(), bend_checks(), area_checks(), stock_checks()});
}

}  // namespace pulsewright
