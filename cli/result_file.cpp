#include "cli/result_file.hpp"

#include <fmt/format.h>

#include <map>

#include "cli/result_json.hpp"
#include "models/pulse_parts.hpp"
#include "shared/results.hpp"
#include "shared/version.hpp"

namespace pulsewright {
namespace {

constexpr int layout_version = 1;

void write_head(ResultWriter& file, const std::string& at, const LoadedCase& loaded, const ManifoldPlan& plan) {
  file.attribute(at, "kind", loaded.rig ? "rig" : "engine");
  file.attribute(at, "title", loaded.title());
  file.attribute(at, "case_file", loaded.file);
  file.attribute(at, "case_hash", loaded.hash);
  file.write_text(at + "/case", loaded.text);
  for (std::size_t i = 0; i < plan.names.size(); ++i) {
    const NamedStretch& s = plan.names[i];
    const std::string path = fmt::format("{}/names/{:03}", at, i);
    file.attribute(path, "name", s.name);
    file.attribute(path, "from_m", s.name_from);
    file.attribute(path, "to_m", s.name_to);
    file.attribute(path, "duct", static_cast<double>(s.duct));
    file.attribute(path, "duct_at_from_m", s.duct_at_from);
    file.attribute(path, "reversed", s.reversed ? 1.0 : 0.0);
  }
}

void write_root(ResultWriter& file) {
  file.attribute("", "program", "pulsewright " + std::string(program_version()));
  file.attribute("", "compiler", compiler_text());
  file.attribute("", "layout", static_cast<double>(layout_version));
}

std::vector<double> widened(const std::vector<float>& values) { return {values.begin(), values.end()}; }

std::vector<double> angles() {
  std::vector<double> deg(record_samples);
  for (std::size_t i = 0; i < deg.size(); ++i) deg[i] = static_cast<double>(i) * record_step_deg;
  return deg;
}

void write_places(ResultWriter& file, const std::string& at, const CycleRecord& record) {
  for (const PlaceRecord& place : record.places) {
    const std::string path = at + "/places/" + path_word(place.name);
    const WaveParts parts = wave_parts(place);
    file.write(path + "/pressure", place.p, "Pa");
    file.write(path + "/pressure_forward", parts.forward, "Pa");
    file.write(path + "/pressure_backward", parts.backward, "Pa");
    file.write(path + "/velocity", place.u, "m/s");
    file.write(path + "/density", place.rho, "kg/m3");
    file.write(path + "/temperature", place.T, "K");
    file.write(path + "/burned", place.Y, "1");
    file.attribute(path, "duct", static_cast<double>(place.duct));
    file.attribute(path, "distance_m", place.distance);
  }
}

void write_parts(ResultWriter& file, const std::string& at, const CycleRecord& record) {
  for (const JointRecord& joint : record.joints) {
    file.write(at + "/joints/" + path_word(joint.name) + "/pressure", joint.p, "Pa");
    file.write(at + "/joints/" + path_word(joint.name) + "/temperature", joint.T, "K");
  }
  for (const CylinderRecord& c : record.cylinders) {
    const std::string path = fmt::format("{}/cylinders/{}", at, c.cylinder);
    file.write(path + "/pressure", c.p, "Pa");
    file.write(path + "/temperature", c.T, "K");
    file.write(path + "/volume", c.volume, "m3");
    file.write(path + "/exhaust_flow", c.exhaust_flow, "kg/s");
    file.write(path + "/intake_flow", c.intake_flow, "kg/s");
  }
  for (const EntryRecord& e : record.entries) {
    const std::string path = at + "/turbine/" + path_word(e.name);
    file.write(path + "/flow", e.flow, "kg/s");
    file.write(path + "/power_available", e.power_available, "W");
    file.write(path + "/power_shaft", e.power_shaft, "W");
  }
}

void write_ducts(ResultWriter& file, const std::string& at, const CycleRecord& record, const Gas& gas) {
  for (std::size_t d = 0; d < record.ducts.size(); ++d) {
    const DuctRecord& duct = record.ducts[d];
    const std::string path = fmt::format("{}/ducts/{:03}", at, d);
    const std::vector<std::size_t> shape{record_samples, duct.cells};
    const std::vector<double> p = widened(duct.p), T = widened(duct.T), Y = widened(duct.Y);
    std::vector<double> rho(p.size());
    for (std::size_t i = 0; i < p.size(); ++i) rho[i] = p[i] / (gas_constant(gas, Y[i]) * T[i]);
    file.write(path + "/pressure", p, shape, "Pa");
    file.write(path + "/temperature", T, shape, "K");
    file.write(path + "/velocity", widened(duct.u), shape, "m/s");
    file.write(path + "/density", rho, shape, "kg/m3");
    file.write(path + "/burned", Y, shape, "1");
    file.write(path + "/bore", duct.bore, "m");
    file.attribute(path, "name", duct.name);
    file.attribute(path, "dx_m", duct.dx);
  }
}

/// Along every name: metal and gas; and the metal of a cold manifold against time.
void write_metal(ResultWriter& file, const std::string& at, const SpeedResult& speed) {
  std::map<std::string, std::vector<PieceFigures>> runners;
  for (const PieceFigures& p : speed.metal.pieces) runners[p.name].push_back(p);
  for (const auto& [name, pieces] : runners) {
    const std::string path = at + "/metal/" + path_word(name);
    const auto write = [&](const char* what, const char* unit, auto value) {
      std::vector<double> values;
      for (const PieceFigures& p : pieces) values.push_back(value(p));
      file.write(path + what, values, unit);
    };
    write("/from", "m", [](const PieceFigures& p) { return p.from; });
    write("/to", "m", [](const PieceFigures& p) { return p.to; });
    write("/wall_temperature", "K", [](const PieceFigures& p) { return p.wall_temperature; });
    write("/gas_temperature_flow_mean", "K", [](const PieceFigures& p) { return p.gas_temperature; });
    write("/heat_in", "W", [](const PieceFigures& p) { return p.heat_in; });
  }
  if (!speed.warm_up) return;
  file.write(at + "/warm_up/time", speed.warm_up->time, "s");
  for (const WarmUpPiece& p : speed.warm_up->pieces) {
    const std::string path = fmt::format("{}/warm_up/{}/from_{:.0f}_mm", at, path_word(p.name), 1e3 * p.from);
    file.write(path + "/wall_temperature", p.temperature, "K");
  }
}

void write_engine(ResultWriter& file, const std::string& at, const LoadedCase& loaded, const EngineResult& result) {
  const EngineCase& engine = *loaded.engine;
  write_head(file, at, loaded, engine.plan);
  file.write_text(at + "/figures", json_text(engine_json(loaded, result, std::nullopt)));
  const Gas gas = mixture_gas(engine.engine.fuel, engine.engine.lambda);
  for (const SpeedResult& speed : result.speeds) {
    const std::string path = fmt::format("{}/rpm_{:g}", at, speed.rpm);
    file.attribute(path, "rpm", speed.rpm);
    file.attribute(path, "settled", speed.settled ? 1.0 : 0.0);
    file.attribute(path, "boost_gauge_Pa", speed.boost_gauge);
    file.write(path + "/angle", angles(), "deg");
    write_places(file, path, speed.record);
    write_parts(file, path, speed.record);
    write_metal(file, path, speed);
    write_ducts(file, path, speed.record, gas);
  }
}

}  // namespace

void write_engine_file(const std::filesystem::path& path, const LoadedCase& loaded, const EngineResult& result,
                       bool force) {
  ResultWriter file(path, force);
  write_root(file);
  write_engine(file, "layout_A", loaded, result);
  file.commit();
}

void write_comparison_file(const std::filesystem::path& path, const std::vector<Layout>& layouts, bool force) {
  ResultWriter file(path, force);
  write_root(file);
  for (const Layout& layout : layouts) write_engine(file, "layout_" + layout.letter, layout.loaded, layout.result);
  file.commit();
}

void write_rig_file(const std::filesystem::path& path, const LoadedCase& loaded, const RigResult& result, bool force) {
  ResultWriter file(path, force);
  write_root(file);
  const std::string at = "layout_A";
  write_head(file, at, loaded, loaded.rig->setup.plan);
  file.write(at + "/time", result.times, "s");
  for (std::size_t d = 0; d < result.ducts.size(); ++d) {
    const RigDuctRecord& duct = result.ducts[d];
    const std::string to = fmt::format("{}/ducts/{:03}", at, d);
    const std::vector<std::size_t> shape{result.times.size(), duct.cells};
    file.write(to + "/pressure", duct.p, shape, "Pa");
    file.write(to + "/temperature", duct.T, shape, "K");
    file.write(to + "/velocity", duct.u, shape, "m/s");
    file.write(to + "/density", duct.rho, shape, "kg/m3");
    file.write(to + "/burned", duct.Y, shape, "1");
    file.write(to + "/bore", duct.bore, "m");
    file.attribute(to, "name", duct.name);
    file.attribute(to, "dx_m", duct.dx);
  }
  file.commit();
}

}  // namespace pulsewright
