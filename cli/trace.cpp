// The verb trace: a series at a place, or a profile along a duct, as CSV on standard output.

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <iostream>
#include <memory>
#include <numbers>

#include "cli/option_value.hpp"
#include "cli/trace_file.hpp"
#include "cli/verb.hpp"
#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

struct TraceOptions {
  std::string file, at, along, when, layout = "A";
  double rpm = 0;
};

std::string gas_columns(const TracedDuct& d, std::size_t a, std::size_t b, double part, double sign) {
  const auto at = [&](const std::vector<double>& field) { return field[a] + part * (field[b] - field[a]); };
  return fmt::format("{:.9g},{:.9g},{:.9g},{:.9g},{:.9g}", at(d.pressure), at(d.temperature), sign * at(d.velocity),
                     at(d.density), at(d.burned));
}

void print_series(const TraceFile& file, const std::string& address) {
  const auto colon = address.rfind(':');
  const std::string name(trimmed(address.substr(0, colon)));
  const double distance =
      colon == std::string::npos ? 0 : option_quantity(address.substr(colon + 1), Dimension::length, "--at");
  const PlanPlace place = locate(file.names(), name, distance);
  const TracedDuct d = file.duct(place.duct);
  const double cell = std::clamp(place.distance / d.dx - 0.5, 0.0, static_cast<double>(d.cells - 1));
  const auto left = std::min(static_cast<std::size_t>(cell), d.cells - 2);
  std::cout << (file.engine() ? "angle_deg," : "")
            << "time_s,pressure_Pa,temperature_K,velocity_m_s,density_kg_m3,burned\n";
  for (std::size_t i = 0; i < file.instants().size(); ++i) {
    const double instant = file.instants()[i], time = file.engine() ? instant / (6 * file.rpm()) : instant;
    if (file.engine()) std::cout << fmt::format("{:.9g},", instant);
    std::cout << fmt::format("{:.9g},", time)
              << gas_columns(d, i * d.cells + left, i * d.cells + left + 1, cell - static_cast<double>(left),
                             place.reversed ? -1 : 1)
              << '\n';
  }
}

/// The stored instant nearest to what was asked for.
std::size_t instant_of(const TraceFile& file, const std::string& when) {
  const double wanted = file.engine() ? option_quantity(when, Dimension::angle, "--when") * 180 / std::numbers::pi
                                      : option_quantity(when, Dimension::time, "--when");
  const auto& instants = file.instants();
  const auto nearest = std::ranges::min_element(instants, {}, [wanted](double t) { return std::abs(t - wanted); });
  std::cerr << (file.engine() ? fmt::format("at {:.2f} deg\n", *nearest)
                              : fmt::format("at {:.6g} ms\n", 1e3 * *nearest));
  return static_cast<std::size_t>(nearest - instants.begin());
}

void print_profile(const TraceFile& file, const std::string& name, const std::string& when) {
  const std::size_t instant = instant_of(file, when);
  const auto found = stretches(file.names(), name);
  if (found.empty()) locate(file.names(), name, 0);  // says which names there are
  std::cout << "distance_m,pressure_Pa,temperature_K,velocity_m_s,density_kg_m3,burned,bore_m\n";
  for (const NamedStretch& s : found) {
    const TracedDuct d = file.duct(s.duct);
    std::vector<std::pair<double, std::size_t>> cells;
    for (std::size_t j = 0; j < d.cells; ++j) {
      const double in_duct = (static_cast<double>(j) + 0.5) * d.dx;
      const double along = s.name_from + (s.reversed ? s.duct_at_from - in_duct : in_duct - s.duct_at_from);
      if (along >= s.name_from && along <= s.name_to) cells.emplace_back(along, j);
    }
    std::ranges::sort(cells);
    for (const auto& [along, j] : cells) {
      const std::size_t k = instant * d.cells + j;
      std::cout << fmt::format("{:.9g},{},{:.9g}\n", along, gas_columns(d, k, k, 0, s.reversed ? -1 : 1), d.bore[j]);
    }
  }
}

int trace(const TraceOptions& options) {
  if (options.at.empty() == options.along.empty())
    throw Error(ErrorKind::usage, "say --at NAME:DISTANCE, or --along NAME with --when");
  if (options.along.empty() != options.when.empty())
    throw Error(ErrorKind::usage, "--along and --when go together: a profile is of one instant");
  const TraceFile file(options.file, options.layout, options.rpm);
  options.at.empty() ? print_profile(file, options.along, options.when) : print_series(file, options.at);
  return ExitCode::done;
}

}  // namespace

std::function<int()> set_up_trace(CLI::App& verb) {
  auto options = std::make_shared<TraceOptions>();
  verb.add_option("file", options->file, "result file (HDF5) that run or compare wrote")->required();
  verb.add_option("--at", options->at, "a series at a place: NAME:DISTANCE, as \"primary 1:120 mm\"");
  verb.add_option("--along", options->along, "a profile along what has this name");
  verb.add_option("--when", options->when, "for --along: \"0.6 ms\" in a rig, \"130 deg\" in an engine");
  verb.add_option("--rpm", options->rpm, "which speed, where the file holds several");
  verb.add_option("--layout", options->layout, "which layout of a comparison: A, B ...");
  return [options] { return trace(*options); };
}

}  // namespace pulsewright
