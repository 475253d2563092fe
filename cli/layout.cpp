#include "cli/layout.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>

namespace pulsewright {
namespace {

constexpr double bar = 1e5, kilowatt = 1e3;
using Value = std::optional<double>;

template <class List, class Get>
Value highest(const List& list, Get get) {
  Value best;
  for (const auto& item : list)
    if (const Value v = get(item); v && (!best || *v > *best)) best = v;
  return best;
}

template <class List, class Get>
Value average(const List& list, Get get) {
  double sum = 0;
  for (const auto& item : list) sum += get(item);
  return list.empty() ? Value{} : sum / static_cast<double>(list.size());
}

template <class List, class Get>
Value total(const List& list, Get get) {
  const Value mean = average(list, get);
  return mean ? Value(*mean * static_cast<double>(list.size())) : mean;
}

Value drive_gauge(const SpeedResult& s, double ambient) {
  return average(s.turbine, [=](const EntryFigures& e) { return (e.pressure_mean - ambient) / bar; });
}
Value stagnation(const SpeedResult& s, double) { return average(s.turbine, [](const EntryFigures& e) { return e.stagnation_mean / bar; }); }
Value peak(const SpeedResult& s, double) { return highest(s.turbine, [](const EntryFigures& e) { return Value(e.pressure_peak / bar); }); }
Value swing(const SpeedResult& s, double) { return highest(s.turbine, [](const EntryFigures& e) { return Value(e.pressure_swing / bar); }); }
Value drive_to_boost(const SpeedResult& s, double) { return s.drive_to_boost_gauge; }
Value available(const SpeedResult& s, double) { return total(s.turbine, [](const EntryFigures& e) { return e.power_available / kilowatt; }); }
Value shaft(const SpeedResult& s, double) { return total(s.turbine, [](const EntryFigures& e) { return e.power_shaft / kilowatt; }); }
Value surplus(const SpeedResult& s, double) { return s.turbine_surplus / kilowatt; }
Value turbine_temperature(const SpeedResult& s, double) {
  return average(s.turbine, [](const EntryFigures& e) { return e.temperature_flow_mean - 273.15; });
}
Value torque_of(const SpeedResult& s, double) { return s.torque; }
Value worst_breathing(const SpeedResult& s, double) {
  return -*highest(s.cylinders, [](const CylinderFigures& c) { return Value(-100 * c.volumetric_efficiency); });
}
Value breathing_spread(const SpeedResult& s, double ambient) {
  return *highest(s.cylinders, [](const CylinderFigures& c) { return Value(100 * c.volumetric_efficiency); }) - *worst_breathing(s, ambient);
}
Value burned_left(const SpeedResult& s, double) { return highest(s.cylinders, [](const CylinderFigures& c) { return Value(100 * c.burned_gas_left); }); }
Value pumping(const SpeedResult& s, double) { return average(s.cylinders, [](const CylinderFigures& c) { return c.pmep / bar; }); }
Value worst_overlap_pressure(const SpeedResult& s, double) {
  return highest(s.cylinders, [](const CylinderFigures& c) {
    return c.overlap_port_minus_intake ? Value(*c.overlap_port_minus_intake / bar) : Value{};
  });
}
Value pulse_overlap(const SpeedResult& s, double) { return highest(s.overlap, [](const PulseOverlap& o) { return Value(o.percent); }); }

/// A case text as "table.key" -> value; tables of a list carry their name, their cylinder or their number.
std::map<std::string, std::string> addressed_values(const std::string& text) {
  struct Block {
    std::string table;
    std::vector<std::pair<std::string, std::string>> keys;
  };
  std::vector<Block> blocks(1);
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    if (line.empty()) continue;
    const auto equals = line.find(" = ");
    if (line.front() == '[') blocks.push_back({line, {}});
    else if (equals != std::string::npos) blocks.back().keys.emplace_back(line.substr(0, equals), line.substr(equals + 3));
  }
  std::map<std::string, std::string> values;
  std::map<std::string, int> seen;
  for (const Block& block : blocks) {
    std::string address = block.table;
    std::erase_if(address, [](char c) { return c == '[' || c == ']'; });
    if (block.table.starts_with("[[")) {
      std::string which = std::to_string(++seen[address]);
      for (const auto& [key, value] : block.keys)
        if (key == "cylinder" || key == "name") which = value;
      address += " " + which;
    }
    for (const auto& [key, value] : block.keys) values[address.empty() ? key : address + " " + key] = value;
  }
  return values;
}

}  // namespace

const char* const boost_given_sentence =
    "Boost is held at the value you gave at every speed. This does not yet say from which rpm the turbo reaches it.";

const std::vector<std::string> cautions = {
    "A comparison of two builds is worth more than any absolute figure; no result is a licence to raise boost. Fit a boost cut.",
    "Drive pressure far above boost brings knock, valve float and heat; turbine overspeed is not computed.",
    "Purge argon and stainless fume need ventilation; parts above 700 C need shields. Follow local codes and licensed practice.",
};

const std::vector<FigureRow>& figure_rows() {
  static const std::vector<FigureRow> rows = {
      {"drive pressure: mean at the turbine, bar gauge", 3, drive_gauge},
      {"mean with the gas brought to rest, bar", 3, stagnation},
      {"peak at the turbine, bar", 2, peak},
      {"peak to valley, bar", 2, swing},
      {"drive pressure over boost, both gauge", 2, drive_to_boost},
      {"power in the pulses, kW", 2, available},
      {"turbine shaft power, kW", 2, shaft},
      {"shaft power left over by the compressor, kW", 2, surplus},
      {"gas at the turbine, degC", 0, turbine_temperature},
      {"torque, Nm", 1, torque_of},
      {"worst cylinder's filling, %", 1, worst_breathing},
      {"filling, best minus worst cylinder, %", 2, breathing_spread},
      {"burned gas left in, worst, %", 2, burned_left},
      {"work lost pumping (minus: lost), bar", 3, pumping},
      {"port minus intake over the overlap, worst, bar", 3, worst_overlap_pressure},
      {"pulse overlap at the turbine, worst pair, %", 1, pulse_overlap},
  };
  return rows;
}

std::vector<std::string> held_equal(const std::vector<Layout>& layouts) {
  const EngineCase& e = layouts.front().engine();
  std::vector<std::string> lines;
  const auto same = [&](auto get) {
    return std::ranges::all_of(layouts, [&](const Layout& l) { return std::abs(get(l.engine()) - get(e)) <= 1e-9 * std::abs(get(e)); });
  };
  if (same([](const EngineCase& c) { return c.engine.displacement(); }))
    lines.push_back(fmt::format("engine of {:.2f} l, {} cylinders, compression {:.1f}", 1e3 * e.engine.displacement(), e.engine.cylinders(),
                                e.engine.crank.compression_ratio));
  if (same([](const EngineCase& c) { return c.charge.boost_gauge; }))
    lines.push_back(fmt::format("boost {:.2f} bar gauge at the intake, {:.0f} degC; air outside {:.3f} bar", e.charge.boost_gauge / bar,
                                e.charge.temperature - 273.15, e.ambient.pressure / bar));
  if (same([](const EngineCase& c) { return c.turbines.front().capacity.flow; }))
    lines.push_back(fmt::format("turbine passing {:.3f} kg/s (corrected) at a pressure ratio of {:.2f}", e.turbines.front().capacity.flow,
                                e.turbines.front().capacity.ratio));
  if (same([](const EngineCase& c) { return c.run.cell; })) lines.push_back(fmt::format("cell {:.1f} mm", 1e3 * e.run.cell));
  return lines;
}

std::vector<std::string> differences(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  const auto base = addressed_values(layouts.front().loaded.text);
  for (const Layout& layout : layouts) {
    if (&layout == &layouts.front()) continue;
    const auto values = addressed_values(layout.loaded.text);
    for (const auto& [key, value] : values) {
      const auto in_base = base.find(key);
      if (key != "title" && (in_base == base.end() || in_base->second != value))
        lines.push_back(fmt::format("{}: {} = {}{}", layout.letter, key, value, in_base == base.end() ? "" : ", not " + in_base->second));
    }
    for (const auto& [key, value] : base)
      if (!values.contains(key)) lines.push_back(fmt::format("{}: without {} = {}", layout.letter, key, value));
  }
  return lines;
}

std::vector<std::string> in_short(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  const EngineResult& a = layouts.front().result;
  for (std::size_t k = 1; k < layouts.size(); ++k) {
    const EngineResult& b = layouts[k].result;
    for (const FigureRow& row : figure_rows()) {
      double largest = 0;
      std::string text;
      for (std::size_t s = 0; s < std::min(a.speeds.size(), b.speeds.size()); ++s) {
        const Value x = row.value(a.speeds[s], a.ambient_pressure), y = row.value(b.speeds[s], b.ambient_pressure);
        if (!x || !y || std::abs(*y - *x) <= largest) continue;
        largest = std::abs(*y - *x);
        text = fmt::format("{} against {}: {} {:+.{}f} at {:.0f} rpm ({:.{}f}, not {:.{}f})", layouts[k].letter, layouts.front().letter, row.label,
                           *y - *x, row.decimals, a.speeds[s].rpm, *y, row.decimals, *x, row.decimals);
      }
      if (largest >= std::pow(10, -row.decimals)) lines.push_back(text);
    }
  }
  return lines;
}

}  // namespace pulsewright
