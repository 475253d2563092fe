#pragma once
// The figures that layouts are compared by: one visible table, in the order in which they are read.

#include <optional>
#include <string>
#include <vector>

#include "models/results.hpp"

namespace pulsewright {

/// How a difference in a figure is said: "B needs 0.06 bar less drive pressure ... (1.08 against 1.14 bar gauge)".
struct FigureWords {
  int rank;                       // what a builder asks first comes first
  std::string name;               // "drive pressure"
  std::string sentence;           // "needs {amount} {way} drive pressure"
  std::string more, less;         // {way}
  std::string unit;               // of the amount
  std::string value_unit;         // behind the two values
  double small;                   // a difference up to this is not spoken of: a round figure of ours, not a test
  bool small_is_percent = false;  // of the larger of the two values
  /// A difference counts only as far as this figure moves with it: a narrow throat makes a gauge read low, and that alone is
  /// no difference in what the pistons push against. none: the figure itself.
  std::optional<double> (*confirm)(const SpeedResult& speed, double ambient_pressure) = nullptr;
  /// Which way a builder would have it; where two layouts change places in such a figure it is said at which speed.
  enum class Better { neither, high, low } better = Better::neither;
};

/// A figure of a speed as people read it; its unit stands in the label.
struct FigureRow {
  std::string label;
  int decimals;
  std::optional<double> (*value)(const SpeedResult& speed, double ambient_pressure);
  bool with_sign = false;                 // + and - are both shown
  std::string missing = {};               // why a speed may have none
  std::optional<FigureWords> words = {};  // none: it says nothing that another row does not say better
};

const std::vector<FigureRow>& figure_rows();

/// "1.14", "+0.02"; "-" for none; never "-0.00".
std::string figure_text(const FigureRow& row, std::optional<double> value);
std::string number_text(double value, int decimals, bool with_sign = false);

}  // namespace pulsewright
