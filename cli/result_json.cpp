#include "cli/result_json.hpp"

#include "cli/boost_text.hpp"
#include "cli/metal_text.hpp"
#include "shared/version.hpp"

namespace pulsewright {
namespace {

constexpr int schema = 1;
constexpr double bar = 1e5, kilowatt = 1e3;

Json entry_json(const EntryFigures& e, double ambient) {
  Json j;
  j["name"] = e.name;
  put_number(j, "pressure_mean_bar", e.pressure_mean / bar);
  put_number(j, "pressure_mean_gauge_bar", (e.pressure_mean - ambient) / bar);
  put_number(j, "stagnation_mean_bar", e.stagnation_mean / bar);
  put_number(j, "pressure_peak_bar", e.pressure_peak / bar);
  put_number(j, "pressure_swing_bar", e.pressure_swing / bar);
  put_number(j, "temperature_flow_mean_K", e.temperature_flow_mean);
  put_number(j, "temperature_time_mean_K", e.temperature_time_mean);
  put_number(j, "mass_flow_kg_s", e.mass_flow);
  put_number(j, "power_available_kW", e.power_available / kilowatt);
  put_number(j, "power_shaft_kW", e.power_shaft / kilowatt);
  return j;
}

Json shaft_json(const ShaftFigures& s) {
  Json j{{"name", s.name}};
  put_number(j, "tip_speed_m_s", s.tip_speed);
  put_number(j, "shaft_rpm", s.revolutions, "the wheel's size is not given: inducer");
  put_number(j, "power_shaft_kW", s.power_shaft / kilowatt);
  put_number(j, "share_of_air", s.share_of_air);
  put_number(j, "surplus_kW", s.surplus / kilowatt);
  put_number(j, "outlet_pressure_mean_bar", s.outlet_pressure / bar);
  put_number(j, "expansion_ratio", s.expansion_ratio);
  put_number(j, "outside_map", s.outside_map, "the turbine is not given by a map");
  return j;
}

Json cylinder_json(const CylinderFigures& c) {
  constexpr std::string_view no_overlap = "intake and exhaust valves are never open together";
  const auto in_bar = [](std::optional<double> p) { return p ? std::optional(*p / bar) : p; };
  Json j;
  j["cylinder"] = c.cylinder;
  put_number(j, "volumetric_efficiency", c.volumetric_efficiency);
  put_number(j, "burned_gas_left", c.burned_gas_left);
  put_number(j, "pmep_bar", c.pmep / bar);
  put_number(j, "imep_bar", c.imep / bar);
  put_number(j, "pressure_peak_bar", c.pressure_peak / bar);
  put_number(j, "port_pressure_mean_bar", c.port_pressure_mean / bar);
  put_number(j, "port_pressure_peak_bar", c.port_pressure_peak / bar);
  put_number(j, "overlap_port_pressure_bar", in_bar(c.overlap_port_pressure), no_overlap);
  put_number(j, "overlap_port_minus_intake_bar", in_bar(c.overlap_port_minus_intake), no_overlap);
  put_number(j, "temperature_K", c.temperature);
  put_number(j, "shut_valve_force_N", c.shut_valve_force);
  put_number(j, "seat_load_N", c.seat_load,
             "exhaust_valve.seat_load is not given: whether the valve stays shut is unknown");
  return j;
}

Json arrival_json(const Arrival& a) {
  Json j;
  j["from"] = a.from;
  j["at"] = a.at;
  j["path"] = a.path;
  put_number(j, "deg_after_opening", a.deg_after_opening);
  put_number(j, "steepest_deg_after_opening", a.steepest_deg_after_opening);
  put_number(j, "deg", a.deg);
  put_number(j, "rise_bar", a.rise / bar);
  return j;
}

Json overlap_json(const PulseOverlap& o) {
  Json j{{"first", o.first}, {"second", o.second}, {"at", o.at}};
  put_number(j, "percent", o.percent);
  return j;
}

Json compressor_json(const CompressorFigures& c) {
  Json j{{"name", c.name}};
  put_number(j, "pressure_ratio", c.pressure_ratio);
  put_number(j, c.mapped ? "corrected_flow_kg_s" : "flow_kg_s", c.flow);
  put_number(j, "efficiency", c.efficiency);
  put_number(j, "tip_speed_m_s", c.tip_speed);
  const auto flag = [&](const char* key, bool raised) {
    if (c.mapped)
      j[key] = raised;
    else
      put_missing(j, key, "no compressor map is given, or there is no boost");
  };
  flag("surge", c.surge);
  flag("choke", c.choke);
  flag("overspeed", c.overspeed);
  flag("below_slowest_line", c.too_slow);
  return j;
}

/// What acts on the gate's valve, and what that does.
void put_gate_forces(Json& j, const GateFigures& g) {
  put_number(j, "drive_pressure_mean_bar", g.before / bar);
  put_number(j, "behind_mean_bar", g.behind / bar);
  const char* reason = "the gate's spring or diaphragm is not given";
  put_number(j, "pushed_open", g.pushed_open, reason);
  put_number(j, "cracks_at_boost_gauge_bar", g.cracks_at ? std::optional(*g.cracks_at / bar) : std::nullopt, reason);
}

constexpr std::string_view holds_already = "the target is held, or not reached";

Json gate_json(const GateFigures& g, const BoostFigures& boost) {
  using State = BoostFigures::State;
  Json j{{"name", g.name}};
  put_number(j, "bore_mm", 1e3 * g.bore);
  put_number(j, "share_of_flow", g.share_of_flow);
  put_number(j, "opening", g.opening);
  put_number(j, "flow_kg_s", g.flow);
  put_gate_forces(j, g);
  if (boost.state == State::given)
    put_missing(j, "holds", "boost is given: whether the gate holds it is not computed");
  else if (!g.holds_target)
    put_missing(j, "holds", "this gate does not look after the boost");
  else
    j["holds"] = boost.state != State::cannot_hold;
  const auto bore = g.bore_that_would_hold;
  put_number(j, "bore_that_would_hold_mm", bore ? std::optional(1e3 * *bore) : bore,
             boost.why_no_bore.empty() ? holds_already : std::string_view(boost.why_no_bore));
  return j;
}

void put_boost(Json& j, const SpeedResult& s) {
  using State = BoostFigures::State;
  const BoostFigures& b = s.boost;
  j["boost_state"] = boost_word(b.state);
  put_number(j, "boost_target_gauge_bar", b.target / bar);
  if (b.state == State::given)
    put_missing(j, "cannot_hold", "boost is given: whether the gates hold it is not computed");
  else
    j["cannot_hold"] = b.state == State::cannot_hold;
  j["boost_beyond_search"] = b.beyond;
  const auto bore = bore_that_would_hold(s);
  put_number(j, "bore_that_would_hold_mm", bore ? std::optional(1e3 * *bore) : bore,
             b.state != State::cannot_hold ? holds_already
             : b.why_no_bore.empty()       ? std::string_view("the gates differ: see each of them")
                                           : std::string_view(b.why_no_bore));
  put_number(j, "time_to_boost_s", b.time_to_boost,
             b.why_no_time.empty() ? std::string_view("no load step was run") : std::string_view(b.why_no_time));
  if (b.step_time.empty()) return;
  j["step"]["time_s"] = b.step_time;
  for (double boost : b.step_boost) j["step"]["boost_gauge_bar"].push_back(boost / bar);
}

void put_threshold(Json& j, const Threshold& t) {
  const auto end = [&t](double rpm) { return t.rpm ? std::optional(rpm) : std::nullopt; };
  put_number(j, "threshold_rpm", t.rpm, t.reason);
  put_number(j, "threshold_rpm_low", end(t.low), t.reason);
  put_number(j, "threshold_rpm_high", end(t.high), t.reason);
}

template <class List, class Make>
Json array_of(const List& list, Make make) {
  Json array = Json::array();
  for (const auto& item : list) array.push_back(make(item));
  return array;
}

void put_balance(Json& j, const SpeedResult& s) {
  put_number(j, "rpm", s.rpm);
  j["settled"] = s.settled;
  if (!s.settled) j["unsettled_figure"] = s.unsettled_figure;
  j["cycles"] = s.cycles;
  put_number(j, "mass_error", s.mass_error);
  put_number(j, "energy_error", s.energy_error);
  put_number(j, "unsettled_mass", s.unsettled_mass);
  put_number(j, "unsettled_energy", s.unsettled_energy);
}

void put_engine(Json& j, const SpeedResult& s) {
  constexpr std::string_view no_boost = "boost is below 0.2 bar: a ratio to it says nothing";
  put_number(j, "boost_gauge_bar", s.boost_gauge / bar);
  put_number(j, "intake_pressure_bar", s.intake_pressure / bar);
  put_number(j, "intake_temperature_K", s.intake_temperature);
  put_number(j, "drive_to_boost_gauge", s.drive_to_boost_gauge, no_boost);
  put_number(j, "drive_to_boost_absolute", s.drive_to_boost_absolute, no_boost);
  put_number(j, "torque_Nm", s.torque);
  put_number(j, "power_kW", s.power / kilowatt);
  put_number(j, "air_flow_kg_s", s.air_flow);
  put_number(j, "fuel_flow_kg_s", s.fuel_flow);
  put_number(j, "exhaust_flow_kg_s", s.exhaust_flow);
  put_number(j, "turbine_tip_speed_m_s", s.turbine_wheel_speed);
  put_number(j, "compressor_power_kW", s.compressor_power / kilowatt);
  put_number(j, "turbine_surplus_kW", s.turbine_surplus / kilowatt);
}

/// Shares of the fuel's heating value beside the figures, since a share is what is remembered.
Json energy_json(const EnergyAccount& a) {
  Json j;
  const auto put = [&](const std::string& name, double joules) {
    put_number(j, name + "_J", joules);
    put_number(j, name + "_share", joules / a.fuel);
  };
  put("fuel", a.fuel);
  put("brake_work", a.brake_work());
  put("friction_work", a.friction_work);
  put("indicated_work", a.indicated_work());
  put("gross_work", a.gross_work);
  put("pumping_work", a.pumping_work);
  put("cylinder_wall_heat", a.cylinder_wall_heat);
  put("duct_wall_heat", a.duct_wall_heat);
  put("turbine_work", a.turbine_work);
  put("exhaust_heat", a.exhaust_heat);
  put("unburned", a.unburned);
  put("rest", a.rest());
  return j;
}

Json speed_json(const SpeedResult& s, double ambient) {
  Json j;
  put_balance(j, s);
  j["turbine"] = array_of(s.turbine, [ambient](const EntryFigures& e) { return entry_json(e, ambient); });
  j["shafts"] = array_of(s.shafts, shaft_json);
  put_engine(j, s);
  j["energy"] = energy_json(s.energy);
  put_boost(j, s);
  j["compressors"] = array_of(s.compressors, compressor_json);
  j["gates"] = array_of(s.gates, [&s](const GateFigures& g) { return gate_json(g, s.boost); });
  j["cylinders"] = array_of(s.cylinders, cylinder_json);
  j["arrivals"] = array_of(s.arrivals, arrival_json);
  j["overlap"] = array_of(s.overlap, overlap_json);
  put_metal(j, s);
  return j;
}

Json content_json(const Content& c) {
  Json j;
  put_number(j, "mass_kg", c.mass);
  put_number(j, "energy_J", c.energy);
  put_number(j, "burned_kg", c.burned);
  return j;
}

Json balance_json(const RigBalance& b) {
  Json j{{"name", b.name},
         {"at_start", content_json(b.at_start)},
         {"at_end", content_json(b.at_end)},
         {"left", content_json(b.left)}};
  put_number(j, "heat_from_walls_J", b.heat);
  return j;
}

}  // namespace

Json case_json(const LoadedCase& loaded, const std::vector<AssumedEntry>& assumed) {
  Json j;
  j["schema"] = schema;
  j["version"] = std::string(program_version());
  j["compiler"] = std::string(compiler_text());
  j["title"] = loaded.title();
  j["file"] = loaded.file;
  j["hash"] = loaded.hash;
  j["assumed"] = Json::array();
  for (const AssumedEntry& a : assumed)
    j["assumed"].push_back({{"key", a.key}, {"value", a.value}, {"range", a.range}, {"why", a.why}});
  return j;
}

Json timing_json(const Timing& t, double fma_peak_gflops) {
  const double ns = 1e9 * t.seconds / t.cell_updates();
  Json j{{"cells", t.cells}, {"steps", t.steps}};
  put_number(j, "cell_updates", t.cell_updates());
  put_number(j, "seconds", t.seconds);
  put_number(j, "ns_per_cell_update", ns);
  put_number(j, "fma_peak_gflops", fma_peak_gflops);
  put_number(j, "peak_flops_per_cell_update", ns * fma_peak_gflops);
  for (const auto& [name, share] : t.shares) put_number(j["shares"], name, share);
  j["step_set_by"] = t.step_setter;
  return j;
}

Json engine_json(const LoadedCase& loaded, const EngineResult& result, std::optional<double> fma_peak_gflops) {
  Json j = case_json(loaded, result.assumed);
  put_number(j, "ambient_pressure_bar", result.ambient_pressure / bar);
  put_number(j, "cell_mm", 1e3 * result.cell);
  put_threshold(j, result.threshold);
  j["speeds"] = array_of(result.speeds, [&](const SpeedResult& s) {
    Json speed = speed_json(s, result.ambient_pressure);
    if (fma_peak_gflops) speed["timing"] = timing_json(s.timing, *fma_peak_gflops);
    return speed;
  });
  return j;
}

Json rig_json(const LoadedCase& loaded, const RigResult& result, std::optional<double> fma_peak_gflops) {
  Json j = case_json(loaded, loaded.rig->assumed);
  put_number(j, "duration_s", result.times.back());
  put_number(j, "mass_error", result.mass_error);
  put_number(j, "energy_error", result.energy_error);
  j["balances"] = array_of(result.balances, balance_json);
  if (fma_peak_gflops) j["timing"] = timing_json(result.timing, *fma_peak_gflops);
  return j;
}

}  // namespace pulsewright
