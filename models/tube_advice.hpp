#pragma once
// Two or three stock tubes to try for the primaries, each with its reason. Only what stands in the table of stock pipe
// is ever advised.

#include <string>
#include <vector>

#include "models/engine_case.hpp"
#include "models/tube_stock.hpp"

namespace pulsewright {

/// Mean speed of the gas in a primary while the piston pushes it out at redline, usual on turbo manifolds, m/s. Common
/// practice, no source.
inline constexpr double usual_gas_speed_low = 80, usual_gas_speed_high = 120;

/// Bore that the port's exit amounts to: as given, else of the exhaust valves' throats, m.
double port_bore(const EngineParts& engine);

/// Mean gas speed at redline in a primary of this bore, m/s.
double gas_speed_at_redline(const EngineParts& engine, double bore);

struct TubeChoice {
  Tube tube;
  double gas_speed;  // at redline, m/s
  std::string reason;
};

/// By bore, the smallest first; empty where no stock pipe is near the port.
std::vector<TubeChoice> tubes_to_try(const EngineParts& engine);

/// What `check` and `start` print; the bores that are drawn stand beside the advice.
std::string tube_advice_text(const EngineCase& engine);

}  // namespace pulsewright
