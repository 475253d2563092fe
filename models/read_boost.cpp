#include "models/read_boost.hpp"

#include <algorithm>
#include <cmath>

#include "models/read_duct.hpp"

namespace pulsewright {
namespace {

bool some_gate_holds(const CaseTable& root) {
  return std::ranges::any_of(root.tables("wastegate"),
                             [](const CaseTable& gate) { return gate.boolean("hold").value_or(false); });
}

/// The exducer of the wheel whose assumed inertia this is: the row's rule turned round.
double exducer_of_inertia(double inertia) { return 0.060 * std::pow(inertia / 3.5e-5, 0.2); }

}  // namespace

BoostMode read_boost_mode(const CaseTable& root) {
  const CaseTable run = root.table("run");
  const std::string otherwise = some_gate_holds(root) ? "hold" : "given";
  const std::string mode = run.choice("boost", {"given", "hold", "balanced", "step"}).value_or(otherwise);
  if (mode == "hold") return BoostMode::hold;
  if (mode == "balanced") return BoostMode::balanced;
  return mode == "step" ? BoostMode::step : BoostMode::given;
}

void read_load_step(const CaseTable& root, EngineCase& engine, AssumedList& assumed) {
  const auto from = root.table("run").number("step_from", between(0.01, 0.8));
  if (engine.run.boost != BoostMode::step) return;
  engine.run.step_from = assumed.given_or(from, "run.step_from");
  const auto tables = root.tables("turbine");
  for (std::size_t i = 0; i < engine.turbines.size(); ++i) {
    TurbineCase& t = engine.turbines[i];
    if (!t.inertia) {
      tables[i].fault_here("boost = \"step\" needs the inertia of the shaft",
                           "give exducer = \"55 mm\" of the turbine wheel, or inertia = \"3.5e-5 kg m^2\"");
      continue;
    }
    if (t.inducer) continue;
    assumed.facts().turbine_exducer = t.exducer.value_or(exducer_of_inertia(*t.inertia));
    t.inducer = assumed.take("turbine.inducer", engine.turbines.size() > 1 ? t.name : "");
  }
}

void choose_holding_gates(const CaseTable& root, EngineCase& engine) {
  const BoostMode mode = engine.run.boost;
  auto& gates = engine.plan.gates;
  for (const CaseTable& gate : root.tables("wastegate"))
    if (gate.boolean("hold").value_or(false) && gate.has("opening"))
      gate.fault("opening", "a gate that holds the boost finds its opening itself", "take out opening, or hold");
  const bool some = std::ranges::any_of(gates, &GatePlan::holds);
  for (GatePlan& gate : gates) {
    gate.holds = !gate.cut_out && mode != BoostMode::given && (gate.holds || !some);
    if (gate.holds) gate.opening = 0;
  }
  if (mode == BoostMode::hold && root.tables("wastegate").empty())
    root.table("run").fault("boost", "boost = \"hold\", and no wastegate is there to hold it",
                            "add a [[wastegate]], or say boost = \"balanced\"");
}

}  // namespace pulsewright
