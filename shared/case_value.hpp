#pragma once
// A case as a tree of values that know where they were written. Made from TOML by case_toml, merged by case_load,
// read through CaseTable.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace pulsewright {

/// Where something stands: index of the source, line and column from 1. Line 0: the file as a whole.
struct Place {
  std::size_t source = 0, line = 0, column = 0;
};

enum class CaseKind { absent, text, integer, number, boolean, list, table, date };

struct CaseEntry;

struct CaseValue {
  CaseKind kind = CaseKind::table;
  std::string text;                // text; a date as it was written
  std::int64_t integer = 0;        // integer
  double number = 0;               // number and integer
  bool boolean = false;            // boolean
  std::vector<CaseValue> items;    // list
  std::vector<CaseEntry> entries;  // table, in the order of the file
  Place place;

  const CaseEntry* find(std::string_view key) const;
  CaseEntry* find(std::string_view key);
  bool is_list_of_tables() const;
};

struct CaseEntry {
  std::string key;
  Place place;  // of the key
  CaseValue value;
};

/// "the text 'abc'", "the number 4", "a table": what was found, for messages.
std::string described(const CaseValue& value);

/// Lays `over` on `base`: tables key by key, everything else replaced; a list of tables is replaced, never added to.
void lay_over(CaseValue& base, const CaseValue& over);

/// The tree as TOML in one fixed form (keys sorted, numbers as short as they stay exact): equal trees, equal text.
std::string canonical_text(const CaseValue& root);

}  // namespace pulsewright
