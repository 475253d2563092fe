#include "models/read_gate_spring.hpp"

#include <cmath>

#include "models/cross_section.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr Range spring_range = above(0.01e5, 10e5);       // Pa gauge
constexpr Range diaphragm_range = above(0.005, 0.5);      // m
constexpr Range diaphragm_area_range = above(1e-5, 0.2);  // m2
constexpr Range valve_range = above(1e-6, 0.1);           // m2
constexpr std::string_view area_units[] = {"mm^2", "cm^2", "in^2", "m^2", "mm2", "cm2", "in2", "m2"};

bool is_area(const CaseTable& t, std::string_view key) {
  const auto words = t.text(key);
  if (!words) return false;
  for (const std::string_view unit : area_units)
    if (words->ends_with(unit)) return true;
  return false;
}

/// "60 mm" across, or "28 cm^2".
std::optional<double> read_diaphragm(const CaseTable& t) {
  if (!t.has("diaphragm")) return std::nullopt;
  if (is_area(t, "diaphragm")) return t.quantity("diaphragm", Dimension::area, diaphragm_area_range);
  const auto across = t.quantity("diaphragm", Dimension::length, diaphragm_range);
  return across ? std::optional(round_section(*across).area) : std::nullopt;
}

}  // namespace

void read_gate_spring(const CaseTable& t, GateSketch& gate, AssumedList& assumed) {
  const auto cracks = t.quantity("spring", Dimension::pressure_gauge, spring_range);
  const auto fully_open = t.quantity("fully_open", Dimension::pressure_gauge, spring_range);
  const auto diaphragm = read_diaphragm(t);
  const auto valve = t.quantity("valve_area", Dimension::area, valve_range);
  const bool controller = t.boolean("controller").value_or(false);
  if (!cracks || !diaphragm) {
    gate.no_spring = cracks ? "diaphragm" : diaphragm ? "spring" : "spring and diaphragm";
    return;
  }
  if (fully_open && !(*fully_open > *cracks))
    t.fault("fully_open",
            "fully_open is " + in_words(*fully_open, Dimension::pressure_gauge) + ", not above the spring's " +
                in_words(*cracks, Dimension::pressure_gauge),
            "spring: pressure at the boost port where the valve just lifts; fully_open: where it stands at full lift");
  assumed.facts().wastegate_spring = *cracks;
  gate.spring = GateSpring{*cracks, assumed.given_or(fully_open, "wastegate.fully_open", gate.name), *diaphragm,
                           valve.value_or(round_section(gate.bore).area), controller};
}

}  // namespace pulsewright
