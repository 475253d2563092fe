#include "models/assumed.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

bool fits(const AssumedRow& row, bool diesel) {
  return row.fuel == AssumedFor::any || (row.fuel == AssumedFor::diesel) == diesel;
}

double range_end(const AssumedRow& row, double base, double by) {
  switch (row.range.kind) {
    case AssumedRange::Kind::between:
      return by * base;
    case AssumedRange::Kind::added:
      return row.number * base + by;
    case AssumedRange::Kind::times:
      return row.number * base * by;
    case AssumedRange::Kind::none:
      break;
  }
  return row.number * base;
}

std::string shown(const AssumedRow& row, double si) { return fmt::format("{:.4g}", si / row.si_per_unit); }

std::string with_unit(const AssumedRow& row, std::string number) {
  return row.unit.empty() ? number : fmt::format("{} {}", number, row.unit);
}

std::string range_text(const AssumedRow& row, double low, double high) {
  if (!row.range_words.empty()) return std::string(row.range_words);
  if (row.range.kind == AssumedRange::Kind::none) return {};
  return with_unit(row, fmt::format("{} to {}", shown(row, low), shown(row, high)));
}

AssumedEntry make_entry(const AssumedRow& row, double base, std::string_view owner) {
  AssumedEntry e;
  e.si = row.number * base;
  e.low = range_end(row, base, row.range.low);
  e.high = range_end(row, base, row.range.high);
  e.key = row.key;
  e.value = row.words.empty() ? with_unit(row, shown(row, e.si)) : std::string(row.words);
  if (!owner.empty()) e.value += fmt::format(" ({})", owner);
  e.range = range_text(row, e.low, e.high);
  e.why = row.why;
  return e;
}

}  // namespace

const AssumedRow& assumed_row(std::string_view key, bool diesel) {
  const auto table = assumed_table();
  const auto row =
      std::find_if(table.begin(), table.end(), [&](const AssumedRow& r) { return r.key == key && fits(r, diesel); });
  if (row == table.end()) throw Error(ErrorKind::internal, fmt::format("no assumed value is called \"{}\"", key));
  return *row;
}

std::string assumed_address(std::string_view key) {
  for (std::string_view part : {"exhaust_valve.", "intake_valve.", "exhaust_port."})
    if (key.starts_with(part)) return fmt::format("engine.{}", key);
  return std::string(key);
}

double AssumedList::given_or(std::optional<double> given, std::string_view key, std::string_view owner) {
  const AssumedRow& row = assumed_row(key, facts_.diesel);
  if (given) return *given;
  return note(row, row.base(facts_), owner);
}

double AssumedList::take_scaled(std::string_view key, double base, std::string_view owner) {
  return note(assumed_row(key, facts_.diesel), base, owner);
}

double AssumedList::note(const AssumedRow& row, double base, std::string_view owner) {
  if (!std::isfinite(base))
    throw Error(ErrorKind::internal, fmt::format("\"{}\" was asked for before what it hangs on was known", row.key));
  const auto place = static_cast<std::size_t>(&row - assumed_table().data());
  AssumedEntry entry = make_entry(row, base, owner);
  const double value = entry.si;
  const bool known = std::any_of(used_.begin(), used_.end(),
                                 [&](const Used& u) { return u.row == place && u.entry.value == entry.value; });
  if (!known) used_.push_back({place, std::move(entry)});
  return value;
}

std::vector<AssumedEntry> AssumedList::entries() const {
  std::vector<Used> sorted = used_;
  std::stable_sort(sorted.begin(), sorted.end(), [](const Used& a, const Used& b) { return a.row < b.row; });
  std::vector<AssumedEntry> result;
  for (Used& u : sorted) result.push_back(std::move(u.entry));
  return result;
}

}  // namespace pulsewright
