#pragma once
// What the user seldom knows is assumed, and every assumption is one row of one visible table (assumed_table.cpp): its
// default, its range and why. A reader asks an AssumedList for the rows that a case leaves open; what was asked for is
// what the output shows as "assumed", and what the bands move. A value that stands in the case never gets into the
// list.

#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace pulsewright {

/// What the defaults hang on; SI. The reader fills in each fact before it asks for a row that needs it: asking earlier
/// is an internal Error, never a silent zero.
struct EngineFacts {
  static constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

  bool diesel = false;
  double bore = unknown;                  // m
  double stroke = unknown;                // m
  double displacement = unknown;          // of all cylinders, m3
  double redline = unknown;               // revolutions per minute
  double boost_gauge = unknown;           // target, Pa above ambient
  double lambda = unknown;                // air-fuel ratio over the stoichiometric one
  double heat_set_free = unknown;         // share of the heating value that lambda lets burn
  double altitude = 0;                    // m above sea level
  double exhaust_head = unknown;          // exhaust valve head, m
  double intake_head = unknown;           // intake valve head, m
  double primary_bore = unknown;          // of the primary that is asked about, m
  double largest_primary_bore = unknown;  // of those that meet in a joint, m
  double turbine_inducer = unknown;       // m
  double turbine_exducer = unknown;       // m
  double wastegate_bore = unknown;        // m
  double wastegate_spring = unknown;      // Pa gauge
};

enum class AssumedFor { any, petrol, diesel };

/// Range of a row: low * base .. high * base; or default + low .. default + high; or default * low .. default * high;
/// or none where the value is a convention.
struct AssumedRange {
  enum class Kind { none, between, added, times } kind = Kind::none;
  double low = 0, high = 0;
};

/// One row. default = number * base(facts) in SI; `unit` and `si_per_unit` are for display. Where a bare number would
/// say too little (a curve, a rule), `words` is shown instead and number is the factor or exponent that the bands move.
struct AssumedRow {
  std::string_view key;
  double number;
  double (*base)(const EngineFacts&);
  AssumedRange range;
  std::string_view unit;
  double si_per_unit;
  std::string_view why;
  std::string_view words = {};
  std::string_view range_words = {};
  AssumedFor fuel = AssumedFor::any;
};

/// Every row, in the order in which outputs list them.
std::span<const AssumedRow> assumed_table();

/// The row of this key for the fuel. Throws Error (internal) when there is none.
const AssumedRow& assumed_row(std::string_view key, bool diesel = false);

/// Where the key is written in a case file: the valves and the port stand under [engine].
std::string assumed_address(std::string_view key);

/// A row as one case uses it.
struct AssumedEntry {
  std::string key;
  std::string value;  // with its unit, as displayed; names what it belongs to where several differ
  std::string range;  // "0.01 to 0.1 mm"; empty where there is none
  std::string why;
  double si, low, high;  // value and ends of the range, SI (or factor)
};

class AssumedList {
 public:
  explicit AssumedList(EngineFacts facts = {}) : facts_(facts) {}

  EngineFacts& facts() { return facts_; }
  const EngineFacts& facts() const { return facts_; }

  /// The given value, or else the row's default (SI), which then joins the list. `owner` is named in the list where the
  /// value belongs to one thing among several ("merge"). Throws Error (internal): unknown key, or a fact still unknown.
  double given_or(std::optional<double> given, std::string_view key, std::string_view owner = {});
  double take(std::string_view key, std::string_view owner = {}) { return given_or(std::nullopt, key, owner); }

  /// A default that the caller worked out by the row's rule from what is not a fact of the engine (a joint's volume
  /// from its ducts): the row's number multiplies it.
  double take_scaled(std::string_view key, double base, std::string_view owner = {});

  /// Rows used so far, in table order; within a row in the order of asking; alike ones once.
  std::vector<AssumedEntry> entries() const;

 private:
  struct Used {
    std::size_t row;
    AssumedEntry entry;
  };
  double note(const AssumedRow& row, double base, std::string_view owner);

  EngineFacts facts_;
  std::vector<Used> used_;
};

}  // namespace pulsewright
