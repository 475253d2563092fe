#include "models/read_network.hpp"

#include "models/read_duct.hpp"
#include "models/signal_file.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

JointSketch read_joint(const CaseTable& t) {
  JointSketch joint;
  joint.name = read_name(t);
  joint.place = t.place();
  joint.outlet = read_address(t, "outlet");
  const auto law = t.choice("law", {"momentum", "constant-pressure"});
  joint.law = law && *law == "constant-pressure" ? JointLaw::constant_pressure : JointLaw::momentum;
  joint.throat = t.quantity("throat", Dimension::length, bore_range());
  joint.taper = t.quantity("taper", Dimension::length, length_range());
  joint.volume = t.quantity("volume", Dimension::volume, between(0, 1));
  joint.angle_factor = t.number("angle_factor", between(0, 2));
  return joint;
}

/// `otherwise`: burned fraction where the end does not say.
GasState read_gas(const CaseTable& t, std::string_view pressure, std::string_view temperature, double otherwise) {
  GasState gas;
  gas.pressure = t.need_quantity(pressure, Dimension::pressure_absolute, pressure_range());
  gas.temperature = t.need_quantity(temperature, Dimension::temperature, gas_temperature_range());
  gas.burned = t.number("burned", between(0, 1)).value_or(otherwise);
  return gas;
}

double read_discharge(const CaseTable& t) { return t.need_number("discharge", above(0, 1)); }

NodeKind read_nozzle(const CaseTable& t, double burned) {
  NozzleNode nozzle{};
  nozzle.bore = t.need_quantity("bore", Dimension::length, bore_range());
  nozzle.discharge = read_discharge(t);
  nozzle.outside.pressure = t.need_quantity("pressure", Dimension::pressure_absolute, pressure_range());
  nozzle.outside.temperature = t.quantity("temperature", Dimension::temperature, gas_temperature_range()).value_or(293);
  nozzle.outside.burned = t.number("burned", between(0, 1)).value_or(burned);
  return nozzle;
}

NodeKind read_vessel(const CaseTable& t, double burned) {
  VesselNode vessel{};
  vessel.volume = t.need_quantity("volume", Dimension::volume, above(0, 1e3));
  vessel.inside = read_gas(t, "pressure", "temperature", burned);
  vessel.bore = t.need_quantity("bore", Dimension::length, bore_range());
  vessel.discharge = read_discharge(t);
  vessel.opens = t.quantity("opens", Dimension::time, between(0, 1e3)).value_or(0);
  return vessel;
}

NodeKind read_signal(const CaseTable& t) {
  constexpr std::size_t most_bytes = 50'000'000;
  SignalNode signal;
  if (!t.need("file")) return signal;
  const auto points = t.parsed(
      "file", [&](std::string_view name) { return parse_signal(t.read_beside(name, most_bytes), printable(name)); });
  signal.file = t.text("file").value_or("?");
  if (points) signal.points = *points;
  return signal;
}

NodeKind read_end_kind(const CaseTable& t, double burned) {
  if (!t.need("kind")) return ClosedNode{};
  const std::string kind =
      t.choice("kind", {"closed", "open", "supply", "nozzle", "anechoic", "signal", "vessel"}).value_or("closed");
  if (kind == "open") return OpenNode{read_gas(t, "pressure", "temperature", burned)};
  if (kind == "supply") return SupplyNode{read_gas(t, "total_pressure", "total_temperature", burned)};
  if (kind == "nozzle") return read_nozzle(t, burned);
  if (kind == "anechoic") return AnechoicNode{};
  if (kind == "signal") return read_signal(t);
  if (kind == "vessel") return read_vessel(t, burned);
  return ClosedNode{};
}

}  // namespace

std::string read_name(const CaseTable& table, const std::string& otherwise) {
  if (!table.has("name") && !otherwise.empty()) return otherwise;
  const std::string name = table.need_text("name");
  if (name.find(':') != std::string::npos)
    table.fault("name", "a name has no colon: " + in_quotes(name), "NAME:DISTANCE is a place along a duct");
  return name == "?" ? table.path() : name;
}

std::vector<JointSketch> read_joints(const CaseTable& root) {
  std::vector<JointSketch> joints;
  for (const CaseTable& t : root.tables("joint")) joints.push_back(read_joint(t));
  return joints;
}

std::vector<EndSketch> read_ends(const CaseTable& root, double burned) {
  std::vector<EndSketch> ends;
  for (const CaseTable& t : root.tables("end")) ends.push_back({read_name(t), t.place(), read_end_kind(t, burned)});
  return ends;
}

}  // namespace pulsewright
