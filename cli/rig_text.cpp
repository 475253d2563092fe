#include "cli/rig_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "shared/text_table.hpp"

namespace pulsewright {

std::string rig_text(const LoadedCase& loaded, const RigResult& result) {
  using Align = TextTable::Align;
  std::string text = fmt::format("{}  ({})\n\n", loaded.title(), loaded.file);
  TextTable table({{"duct, at the end"},
                   {"cells", Align::right},
                   {"pressure from, bar", Align::right},
                   {"to", Align::right},
                   {"temperature from, K", Align::right},
                   {"to", Align::right},
                   {"velocity from, m/s", Align::right},
                   {"to", Align::right}});
  for (const RigDuctRecord& d : result.ducts) {
    const auto range = [&](const std::vector<double>& field) {
      return std::minmax_element(field.end() - static_cast<std::ptrdiff_t>(d.cells), field.end());
    };
    const auto [p0, p1] = range(d.p);
    const auto [T0, T1] = range(d.T);
    const auto [u0, u1] = range(d.u);
    table.add_row({d.name, std::to_string(d.cells), fmt::format("{:.4f}", *p0 / 1e5), fmt::format("{:.4f}", *p1 / 1e5),
                   fmt::format("{:.1f}", *T0), fmt::format("{:.1f}", *T1), fmt::format("{:.2f}", *u0),
                   fmt::format("{:.2f}", *u1)});
  }
  text += table.text();
  text += fmt::format("\n{:.4g} ms in {} instants; mass error {:.1e}, energy error {:.1e}\n", 1e3 * result.times.back(),
                      result.times.size(), result.mass_error, result.energy_error);
  text +=
      "See it along a duct or at a place: run with --out FILE.h5, then pulsewright trace FILE.h5 --at NAME:DISTANCE\n";
  return text;
}

std::string timing_text(const Timing& t, double fma_peak) {
  const double ns = 1e9 * t.seconds / t.cell_updates();
  std::string text = fmt::format(
      "{} cells, {} steps, {:.3f} s: {:.2f} ns a cell-update, {:.0f} peak flops (core: {:.1f} GFLOP/s); step set by "
      "{}\n",
      t.cells, t.steps, t.seconds, ns, ns * fma_peak, fma_peak, t.step_setter);
  for (const auto& [name, share] : t.shares) text += fmt::format("  {:4.1f} %  {}\n", 100 * share, name);
  return text;
}

std::string timing_text(const EngineResult& result, double fma_peak) {
  std::string text;
  for (const SpeedResult& s : result.speeds)
    text += fmt::format("{:.0f} rpm: ", s.rpm) + timing_text(s.timing, fma_peak);
  return text;
}

}  // namespace pulsewright
