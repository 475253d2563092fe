// What `check` says of the compressor.

#include <fmt/format.h>

#include "models/compressor.hpp"
#include "models/describe.hpp"

namespace pulsewright {

std::string compressor_text(const EngineCase& engine) {
  if (!engine.charge.map) return std::string("  ") + no_map_sentence + "\n";
  const CompressorMapTable& table = engine.charge.map->table();
  const auto &slow = table.lines.front(), &fast = table.lines.back();
  return fmt::format(
      "  map of {} speeds, corrected to {:.4g} K and {:.4g} bar: up to {:.3g} kg/s, surge of its fastest line at "
      "{:.3g} kg/s "
      "and ratio {:.3g}, slowest line from ratio {:.3g}\n",
      table.lines.size(), table.reference.temperature, table.reference.pressure / 1e5, fast.points.back().flow,
      fast.points.front().flow, fast.points.front().pressure_ratio, slow.points.front().pressure_ratio);
}

}  // namespace pulsewright
