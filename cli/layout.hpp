#pragma once
// One layout of a comparison: its letter, its case, its figures; and what is said about several of them in sentences.

#include <string>
#include <vector>

#include "cli/figures.hpp"
#include "cli/loaded_case.hpp"
#include "models/results.hpp"

namespace pulsewright {

struct Layout {
  std::string letter;  // "A", "B", ...
  LoadedCase loaded;
  EngineResult result;

  const EngineCase& engine() const { return *loaded.engine; }

  /// nullptr where this layout was not run at that speed.
  const SpeedResult* at_rpm(double rpm) const;
  std::optional<double> figure(const FigureRow& row, double rpm) const;
};

/// The speeds that tables and pages show: those of the first layout.
std::vector<double> speeds_of(const std::vector<Layout>& layouts);

/// What is the same in all layouts, as sentences, one a line.
std::vector<std::string> held_equal(const std::vector<Layout>& layouts);

/// Of the same list, what is not the same, with the value of each layout.
std::vector<std::string> not_equal(const std::vector<Layout>& layouts);

/// What the cases draw or state otherwise: a line for each thing that differs from the first layout ("B: primary 2: 220 mm long, not 450 mm").
std::vector<std::string> differences(const std::vector<Layout>& layouts);

/// Where the layouts differ from the first, in the order in which a builder asks, each where it is largest; then where they do
/// not, and what counts as no difference. Empty for one layout.
std::vector<std::string> in_short(const std::vector<Layout>& layouts);

/// A speed at which the layout that is better in a figure becomes the other one, between two speeds that were run.
struct Crossing {
  const FigureRow* row;
  std::string first, second;  // letters of the two layouts
  double rpm;                 // where a straight line between the two speeds passes zero
  bool second_less_below;     // below that speed the second layout has less of the figure
};

/// Every crossing of another layout with the first, in the figures of which he would have more, or less. Only where the layouts are
/// further apart than a small amount on both sides.
std::vector<Crossing> crossings(const std::vector<Layout>& layouts);

/// "torque: B more below about 4300 rpm, A more above"
std::vector<std::string> crossing_sentences(const std::vector<Layout>& layouts);

/// Where the turbine gives less than the compressor takes, one sentence each.
std::vector<std::string> not_held(const std::vector<Layout>& layouts);

/// Where a turbine ran outside its map, and how several turbines share the air; a sentence for each speed.
std::vector<std::string> turbine_sentences(const std::vector<Layout>& layouts);

/// How hard drive pressure pushes shut exhaust valves open, against their seat load where that is given; a sentence each.
std::vector<std::string> valve_float(const std::vector<Layout>& layouts);

/// Why a figure is missing somewhere, one line for each row with a gap.
std::vector<std::string> missing_reasons(const std::vector<Layout>& layouts);

extern const char* const boost_given_sentence;
extern const char* const no_bands_sentence;
extern const std::vector<std::string> how_to_read;
extern const std::vector<std::string> cautions;

}  // namespace pulsewright
