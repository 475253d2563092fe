#include "models/read_boost.hpp"

#include <algorithm>

namespace pulsewright {
namespace {

bool some_gate_holds(const CaseTable& root) {
  return std::ranges::any_of(root.tables("wastegate"),
                             [](const CaseTable& gate) { return gate.boolean("hold").value_or(false); });
}

}  // namespace

BoostMode read_boost_mode(const CaseTable& root) {
  const CaseTable run = root.table("run");
  const std::string otherwise = some_gate_holds(root) ? "hold" : "given";
  const std::string mode = run.choice("boost", {"given", "hold", "balanced", "step"}).value_or(otherwise);
  if (mode == "hold") return BoostMode::hold;
  if (mode == "balanced") return BoostMode::balanced;
  return mode == "step" ? BoostMode::step : BoostMode::given;
}

void choose_holding_gates(const CaseTable& root, EngineCase& engine) {
  const BoostMode mode = engine.run.boost;
  auto& gates = engine.plan.gates;
  for (const CaseTable& gate : root.tables("wastegate"))
    if (gate.boolean("hold").value_or(false) && gate.has("opening"))
      gate.fault("opening", "a gate that holds the boost finds its opening itself", "take out opening, or hold");
  const bool some = std::ranges::any_of(gates, &GatePlan::holds);
  for (GatePlan& gate : gates) {
    gate.holds = mode != BoostMode::given && (gate.holds || !some);
    if (gate.holds) gate.opening = 0;
  }
  if (mode == BoostMode::hold && root.tables("wastegate").empty())
    root.table("run").fault("boost", "boost = \"hold\", and no wastegate is there to hold it",
                            "add a [[wastegate]], or say boost = \"balanced\"");
}

}  // namespace pulsewright
