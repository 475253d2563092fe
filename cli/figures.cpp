#include "cli/figures.hpp"

#include <fmt/format.h>

#include <cmath>

namespace pulsewright {
namespace {

constexpr double bar = 1e5, kilowatt = 1e3, zero_celsius = 273.15;
using Value = std::optional<double>;

template <class List, class Get>
Value highest(const List& list, Get get) {
  Value best;
  for (const auto& item : list)
    if (const Value v = get(item); v && (!best || *v > *best)) best = v;
  return best;
}

template <class List, class Get>
Value lowest(const List& list, Get get) {
  const Value turned = highest(list, [&](const auto& item) { return Value(-get(item)); });
  return turned ? Value(-*turned) : turned;
}

template <class List, class Get>
Value total(const List& list, Get get) {
  double sum = 0;
  for (const auto& item : list) sum += get(item);
  return list.empty() ? Value{} : sum;
}

template <class List, class Get>
Value average(const List& list, Get get) {
  const Value sum = total(list, get);
  return sum ? Value(*sum / static_cast<double>(list.size())) : sum;
}

double filling(const CylinderFigures& c) { return 100 * c.volumetric_efficiency; }

Value drive_gauge(const SpeedResult& s, double ambient) {
  return average(s.turbine, [=](const EntryFigures& e) { return (e.pressure_mean - ambient) / bar; });
}
Value drive_absolute(const SpeedResult& s, double) {
  return average(s.turbine, [](const EntryFigures& e) { return e.pressure_mean / bar; });
}
Value stagnation(const SpeedResult& s, double) {
  return average(s.turbine, [](const EntryFigures& e) { return e.stagnation_mean / bar; });
}
Value peak(const SpeedResult& s, double) {
  return highest(s.turbine, [](const EntryFigures& e) { return Value(e.pressure_peak / bar); });
}
Value swing(const SpeedResult& s, double) {
  return highest(s.turbine, [](const EntryFigures& e) { return Value(e.pressure_swing / bar); });
}
Value ratio_gauge(const SpeedResult& s, double) { return s.drive_to_boost_gauge; }
Value ratio_absolute(const SpeedResult& s, double) { return s.drive_to_boost_absolute; }
Value available(const SpeedResult& s, double) {
  return total(s.turbine, [](const EntryFigures& e) { return e.power_available / kilowatt; });
}
Value shaft(const SpeedResult& s, double) {
  return total(s.turbine, [](const EntryFigures& e) { return e.power_shaft / kilowatt; });
}
Value behind(const SpeedResult& s, double) {
  return average(s.shafts, [](const ShaftFigures& f) { return f.outlet_pressure / bar; });
}
Value surplus(const SpeedResult& s, double) { return s.turbine_surplus / kilowatt; }
Value gas_temperature(const SpeedResult& s, double) {
  return average(s.turbine, [](const EntryFigures& e) { return e.temperature_flow_mean - zero_celsius; });
}
Value hottest_metal(const SpeedResult& s, double) {
  const RunnerFigures* hottest = hottest_runner(s.metal);
  return hottest ? Value(hottest->hottest - zero_celsius) : Value{};
}
Value boost(const SpeedResult& s, double) { return s.boost_gauge / bar; }
Value gate_opening(const SpeedResult& s, double) {
  return highest(s.gates, [](const GateFigures& g) { return Value(100 * g.opening); });
}
Value gate_flow(const SpeedResult& s, double) {
  return total(s.gates, [](const GateFigures& g) { return 100 * g.share_of_flow; });
}
Value torque(const SpeedResult& s, double) { return s.torque; }
Value worst_filling(const SpeedResult& s, double) { return lowest(s.cylinders, filling); }
Value filling_spread(const SpeedResult& s, double) {
  const Value best = highest(s.cylinders, [](const CylinderFigures&c) { return Value(filling(c)); }),
              worst = lowest(s.cylinders, filling);
  return best && worst ? Value(*best - *worst) : Value{};
}
double burned_percent(const CylinderFigures& c) { return 100 * c.burned_gas_left; }
Value burned_left_mean(const SpeedResult& s, double) { return average(s.cylinders, burned_percent); }
Value burned_left(const SpeedResult& s, double) {
  return highest(s.cylinders, [](const CylinderFigures& c) { return Value(burned_percent(c)); });
}
Value pumping(const SpeedResult& s, double) {
  return average(s.cylinders, [](const CylinderFigures& c) { return c.pmep / bar; });
}
Value overlap_pressure(const CylinderFigures& c) {
  return c.overlap_port_minus_intake ? Value(*c.overlap_port_minus_intake / bar) : Value{};
}
Value worst_overlap_pressure(const SpeedResult& s, double) { return highest(s.cylinders, overlap_pressure); }
Value mean_overlap_pressure(const SpeedResult& s, double) {
  if (!worst_overlap_pressure(s, 0)) return {};
  return average(s.cylinders, [](const CylinderFigures& c) { return overlap_pressure(c).value_or(0); });
}
Value pulse_overlap(const SpeedResult& s, double) {
  return highest(s.overlap, [](const PulseOverlap& o) { return Value(o.percent); });
}

const char* const never_open_together = "intake and exhaust valves are never open together";
const char* const no_gate = "there is no wastegate";
const char* const low_boost = "boost is below 0.2 bar, and a ratio to it says nothing";

FigureWords words(int rank, const char* name, const char* sentence, const char* more, const char* less) {
  return {rank, name, sentence, more, less, {}, {}, 0, false, nullptr, FigureWords::Better::neither};
}

/// Adds the units and the amount that is not worth a word.
FigureWords measured(FigureWords w, const char* unit, const char* value_unit, double small, bool percent = false) {
  w.unit = unit, w.value_unit = value_unit, w.small = small, w.small_is_percent = percent;
  return w;
}

FigureWords better_low(FigureWords w) {
  w.better = FigureWords::Better::low;
  return w;
}

FigureWords better_high(FigureWords w) {
  w.better = FigureWords::Better::high;
  return w;
}

FigureWords drive_words() {
  FigureWords w = better_low(measured(words(2, "drive pressure", "needs {amount} {way} drive pressure", "more", "less"),
                                      "bar", "bar gauge", 0.03));
  w.confirm = stagnation;
  return w;
}

std::vector<FigureRow> turbine_rows() {
  return {
      {"boost, bar gauge",
       2,
       boost,
       false,
       {},
       measured(words(0, "boost", "makes {amount} {way} boost", "more", "less"), "bar", "bar gauge", 0.02)},
      {"gate open, % of lift", 0, gate_opening, false, no_gate},
      {"exhaust through the gates, %", 0, gate_flow, false, no_gate},
      {"drive pressure, bar gauge", 2, drive_gauge, false, {}, drive_words()},
      {"drive pressure, bar absolute", 2, drive_absolute},
      {"mean, gas brought to rest, bar abs", 2, stagnation},
      {"peak, bar absolute", 2, peak},
      {"behind the turbine, bar absolute", 2, behind},
      {"peak to valley, bar",
       2,
       swing,
       false,
       {},
       measured(words(11, "peak to valley", "has {amount} {way} from peak to valley at the turbine", "more", "less"),
                "bar", "bar", 0.1)},
      {"drive over boost, gauge", 2, ratio_gauge, false, low_boost},
      {"drive over boost, absolute", 2, ratio_absolute, false, low_boost},
      {"power in the pulses, kW", 1, available},
      {"turbine shaft power, kW",
       1,
       shaft,
       false,
       {},
       better_high(measured(words(5, "shaft power", "gives {amount} {way} turbine shaft power", "more", "less"), "kW",
                            "kW", 2, true))},
      {"shaft power left over, kW", 1, surplus, true},
      {"gas at the turbine, degC",
       0,
       gas_temperature,
       false,
       {},
       measured(words(7, "gas temperature", "brings the gas to the turbine {amount} {way}", "hotter", "cooler"),
                "degrees", "degC", 15)},
      {"hottest tube metal, degC", 0, hottest_metal, false, "every wall temperature is given",
       measured(words(12, "hottest metal", "has its hottest metal {amount} {way}", "hotter", "cooler"), "degrees",
                "degC", 15)},
      {"pulse overlap, worst pair, %", 1, pulse_overlap, false, "one cylinder alone has nothing to overlap with",
       measured(words(12, "pulse overlap", "has pulses that overlap {amount} {way} at the turbine", "more", "less"),
                "points", "%", 5)},
  };
}

std::vector<FigureRow> engine_rows() {
  return {
      {"torque, Nm",
       0,
       torque,
       false,
       {},
       better_high(measured(words(1, "torque", "makes {amount} {way} torque", "more", "less"), "Nm", "Nm", 1, true))},
      {"filling, worst cylinder, %",
       1,
       worst_filling,
       false,
       {},
       better_high(measured(words(3, "filling", "fills its worst cylinder {amount} {way}", "better", "worse"), "points",
                            "%", 1))},
      {"filling, best less worst, %",
       1,
       filling_spread,
       false,
       {},
       measured(words(10, "spread of filling", "has its best and worst cylinder {amount} {way} in filling",
                      "further apart", "closer together"),
                "points", "%", 1)},
      {"burned gas left in, mean, %", 1, burned_left_mean},
      {"burned gas left in, worst, %",
       1,
       burned_left,
       false,
       {},
       better_low(measured(
           words(6, "burned gas left in", "leaves {amount} {way} burned gas in its worst cylinder", "more", "less"),
           "points", "%", 0.5))},
      {"pumping: gained +, lost -, bar",
       2,
       pumping,
       true,
       {},
       better_high(measured(words(8, "pumping", "is {amount} {way} off in pumping work", "better", "worse"), "bar",
                            "bar, minus: lost", 0.05))},
      {"overlap: port less intake, mean, bar", 2, mean_overlap_pressure, true, never_open_together,
       better_low(measured(words(9, "mean pressure over the overlap",
                                 "has {amount} {way} pressure at its ports while both valves are open", "more", "less"),
                           "bar", "bar over intake, mean of the cylinders", 0.05))},
      {"overlap: port less intake, max, bar", 2, worst_overlap_pressure, true, never_open_together,
       better_low(
           measured(words(4, "worst pressure over the overlap",
                          "has {amount} {way} pressure at its worst port while both valves are open", "more", "less"),
                    "bar", "bar over intake", 0.05))},
  };
}

}  // namespace

const std::vector<FigureRow>& figure_rows() {
  static const std::vector<FigureRow> rows = [] {
    std::vector<FigureRow> all = turbine_rows();
    for (FigureRow& row : engine_rows()) all.push_back(std::move(row));
    return all;
  }();
  return rows;
}

std::string number_text(double value, int decimals, bool with_sign) {
  const double unit = std::pow(10, -decimals);
  const double shown = std::abs(value) < 0.5 * unit ? 0.0 : value;
  return with_sign ? fmt::format("{:+.{}f}", shown, decimals) : fmt::format("{:.{}f}", shown, decimals);
}

std::string figure_text(const FigureRow& row, std::optional<double> value) {
  return value ? number_text(*value, row.decimals, row.with_sign) : "-";
}

}  // namespace pulsewright
