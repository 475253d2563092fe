#pragma once
// What a run says about the metal: each piece, and the hottest place and the growth of everything that has a name.

#include <optional>
#include <string>
#include <vector>

#include "models/records.hpp"

namespace pulsewright {

class Metal;

/// One piece of tube over the last cycle. Given: its temperature stands in the case (then nothing is known of its outside).
struct PieceFigures {
  std::string name;
  double from, to;                         // along what has that name, m
  bool computed;                           // else given
  double wall_temperature;                 // of the metal; where given, as given; K
  std::optional<double> skin_temperature;  // of the outermost layer, K
  double gas_temperature;                  // flow mean of the gas brought to rest, in the middle of the piece, K
  double heat_in;                          // from the gas, W
  std::optional<double> heat_out;          // off the skin, W
  std::optional<double> growth;            // from 20 degC, m
};

/// All pieces of one name.
struct RunnerFigures {
  std::string name;
  double hottest;                // metal, K
  double hottest_at;             // middle of that piece, m along the name
  std::optional<double> growth;  // m; none where a temperature is given
  std::string alloy;             // empty where a temperature is given
  bool too_hot = false;          // above the alloy's hot limit
  bool housing = false;          // a turbine's casting
};

struct MetalFigures {
  std::vector<PieceFigures> pieces;
  std::vector<RunnerFigures> runners;  // in the order of the plan; ports, backed by coolant, are no runners
  double heat_in = 0, heat_out = 0;    // of all computed pieces, W
};

struct WarmUpPiece {
  std::string name;
  double from, to;                            // along what has that name, m
  double settled;                             // temperature that it comes to, K
  std::vector<double> temperature;            // at each time, K
  std::optional<double> time_to_90_per_cent;  // of the way from cold to settled, s; none where the time ends before
};

/// The metal of a cold manifold after the engine is loaded.
struct WarmUp {
  std::vector<double> time;         // s; the first is 0
  std::vector<WarmUpPiece> pieces;  // those whose temperature is computed
};

/// From the cycle that the record holds, which must be the metal's last.
MetalFigures metal_figures(const Metal& metal, const CycleRecord& record);

/// The tube whose metal gets hottest, of those that are computed; none where all are given.
const RunnerFigures* hottest_runner(const MetalFigures& metal);

}  // namespace pulsewright
