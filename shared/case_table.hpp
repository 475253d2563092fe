#pragma once
// Reading a case. A CaseTable is a handle on one table of it; asking for a key marks the key as known. Nothing here
// throws for what the user wrote: faults are recorded, a harmless value is returned, and CaseFile::finish() throws them
// all at once. So read everything, call finish(), and only then compute.
//
//   CaseTable engine = file.root().table("engine");
//   double bore      = engine.need_quantity("bore", Dimension::length, above(0, 1));     // required
//   auto   rod       = engine.quantity("rod", Dimension::length);                        // absent: nullopt
//   for (CaseTable primary : file.root().tables("primary")) ...           // [[primary]], or one [primary]
//   auto exit = port.parsed("exit", [](std::string_view text) { return parse_shape(text); });   // its Error: a fault
//   auto map  = turbine.parsed("map", [&](std::string_view name) { return parse_map(turbine.read_beside(name, most)); });
//   primary.fault("to", "the end of 'x' is said twice", "first in " + other.line_of("to"));

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "shared/cam_angle.hpp"
#include "shared/case_value.hpp"
#include "shared/error.hpp"
#include "shared/range.hpp"
#include "shared/units.hpp"

namespace pulsewright {

struct CaseBook;  // the tree, its sources, faults and what was asked; lives in CaseFile

class CaseTable {
 public:
  CaseTable(CaseBook& book, const CaseValue* table, std::string path, Place place);

  bool exists() const { return table_ != nullptr; }
  const std::string& path() const { return path_; }  // "engine.exhaust_valve", "primary 2"; empty for the root

  // What stands at a key; asking makes the key known.
  bool has(std::string_view key) const { return kind(key) != CaseKind::absent; }
  CaseKind kind(std::string_view key) const;
  Place place(std::string_view key) const;          // of the value; of this table if it is absent
  Place place() const { return place_; }            // of this table
  std::string line_of(std::string_view key) const;  // "engine.toml:12", for messages that name two lines
  std::vector<std::string> keys() const;            // all that stand here, in file order; does not make them known

  // Values: nullopt if absent or faulty (then the fault is recorded). Without a range a quantity must lie in what is
  // usual for its dimension (lengths, areas, masses ... above zero, nothing astronomical).
  std::optional<double> quantity(std::string_view key, Dimension dimension) const;
  std::optional<double> quantity(std::string_view key, Dimension dimension, const Range& range) const;
  std::optional<double> number(std::string_view key, const Range& range) const;
  std::optional<int> count(std::string_view key, int low, int high) const;
  std::optional<bool> boolean(std::string_view key) const;
  std::optional<std::string> text(std::string_view key) const;
  std::optional<std::string> choice(std::string_view key, const std::vector<std::string>& allowed) const;
  std::optional<CamAngle> cam_angle(std::string_view key) const;

  // Lists of values.
  std::optional<std::vector<double>> quantities(std::string_view key, Dimension dimension, const Range& range) const;
  std::optional<std::vector<double>> numbers(std::string_view key, const Range& range) const;
  std::optional<std::vector<int>> counts(std::string_view key, int low, int high) const;
  std::optional<std::vector<std::string>> texts(std::string_view key) const;
  /// [["0 mm", "50 mm"], ["250 mm", "42 mm"]]: rows of quantities, one dimension per column.
  std::optional<std::vector<std::vector<double>>> rows(std::string_view key,
                                                       const std::vector<Dimension>& columns) const;

  // The same, required: a missing key is a fault. After a fault the returned value is harmless, not right.
  double need_quantity(std::string_view key, Dimension dimension) const;
  double need_quantity(std::string_view key, Dimension dimension, const Range& range) const;
  double need_number(std::string_view key, const Range& range) const;
  int need_count(std::string_view key, int low, int high) const;
  std::string need_text(std::string_view key) const;

  /// The text of a file that the case names, beside it or below, for use inside `parsed`. Throws Error (case_file).
  std::string read_beside(std::string_view name, std::size_t most_bytes) const;

  /// Text that a reader of yours understands; an Error (case_file) that it throws becomes a fault at the value.
  template <class Reader>
  auto parsed(std::string_view key, Reader reader) const -> std::optional<decltype(reader(std::string_view{}))> {
    const std::optional<std::string> words = text(key);
    if (!words) return std::nullopt;
    try {
      return reader(std::string_view(*words));
    } catch (const Error& error) {
      if (error.kind() != ErrorKind::case_file) throw;
      fault(key, error.message(), error.hint());
      return std::nullopt;
    }
  }

  // Tables below. An absent one comes back with exists() false: everything in it is absent.
  CaseTable table(std::string_view key) const;
  std::vector<CaseTable> tables(std::string_view key) const;

  // Faults of your own: at a key (or this table if the key is absent), at this table, anywhere.
  void fault(std::string_view key, std::string message, std::string hint = {}) const;
  void fault_here(std::string message, std::string hint = {}) const;
  void fault_at(Place place, std::string message, std::string hint = {}) const;
  bool need(std::string_view key) const;                // records "missing" if absent; true if present
  void known(std::string_view key) const { ask(key); }  // allowed here, though not read

 private:
  const CaseValue* ask(std::string_view key) const;  // nullptr if absent
  const CaseValue* ask(std::string_view key, CaseKind kind, std::string_view wanted) const;
  std::optional<double> quantity_of(const CaseValue& value, std::string_view key, Dimension dimension,
                                    const Range& range) const;
  std::optional<double> number_of(const CaseValue& value, std::string_view key, const Range& range) const;
  std::optional<int> count_of(const CaseValue& value, std::string_view key, int low, int high) const;
  std::optional<std::string> text_of(const CaseValue& value, std::string_view key) const;
  template <class T, class ReadOne>
  std::optional<std::vector<T>> list(std::string_view key, std::string_view wanted, ReadOne read_one) const;
  std::string named(std::string_view key) const;  // "`engine.bore`"

  CaseBook* book_;
  const CaseValue* table_;
  std::string path_;
  Place place_;
};

}  // namespace pulsewright
