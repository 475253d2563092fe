#pragma once
// One layout of a comparison: its letter, its case, its figures.

#include <string>
#include <vector>

#include "cli/loaded_case.hpp"
#include "models/results.hpp"

namespace pulsewright {

struct Layout {
  std::string letter;  // "A", "B", ...
  LoadedCase loaded;
  EngineResult result;

  const EngineCase& engine() const { return *loaded.engine; }
};

/// A figure of a speed as people read it. unit is shown once, in the row's label.
struct FigureRow {
  std::string label;
  int decimals;
  std::optional<double> (*value)(const SpeedResult& speed, double ambient_pressure);
};

/// The visible table: the figures that layouts are compared by, in the order in which they are read.
const std::vector<FigureRow>& figure_rows();

/// What is the same in all layouts and what is not, as sentences, one a line.
std::vector<std::string> held_equal(const std::vector<Layout>& layouts);
std::vector<std::string> differences(const std::vector<Layout>& layouts);

/// Where the layouts differ most, figure by figure, in words; empty for one layout.
std::vector<std::string> in_short(const std::vector<Layout>& layouts);

extern const char* const boost_given_sentence;
extern const std::vector<std::string> cautions;

}  // namespace pulsewright
