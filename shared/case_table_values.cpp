// The values of a CaseTable: numbers, texts, quantities and lists of them, each checked where it is read.
#include <fmt/format.h>

#include <cmath>
#include <functional>

#include "shared/case_table.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

std::string wanted_quantity(Dimension dimension) {
  return fmt::format("{} with its unit, such as \"{}\"", dimension_name(dimension), dimension_example(dimension));
}

// "above 0 mm and at most 1 m", with each limit in words.
std::string in_words(const Range& range, const std::function<std::string(double)>& limit) {
  std::string low, high;
  if (std::isfinite(range.low)) low = (range.low_itself ? "at least " : "above ") + limit(range.low);
  if (std::isfinite(range.high)) high = (range.high_itself ? "at most " : "below ") + limit(range.high);
  if (low.empty() && high.empty()) return "finite";
  return low.empty() || high.empty() ? low + high : low + " and " + high;
}

}  // namespace

std::optional<double> CaseTable::quantity_of(const CaseValue& value, std::string_view key, Dimension dimension,
                                             const Range& range) const {
  if (value.kind != CaseKind::text) {
    const bool bare = value.kind == CaseKind::integer || value.kind == CaseKind::number;
    fault_at(value.place,
             fmt::format("{} takes {}, but this is {}", named(key), wanted_quantity(dimension), described(value)),
             bare ? "put number and unit between quotes" : "");
    return std::nullopt;
  }
  try {
    const double si = parse_quantity(value.text, dimension, key);
    if (range.holds(si)) return si;
    const std::string limits = in_words(range, [dimension](double x) { return in_words(x, dimension); });
    fault_at(value.place, fmt::format("{} must be {}, but this is {}", named(key), limits, in_quotes(value.text)));
  } catch (const Error& error) {
    if (error.kind() != ErrorKind::case_file) throw;
    fault_at(value.place, error.message(), error.hint());
  }
  return std::nullopt;
}

std::optional<double> CaseTable::number_of(const CaseValue& value, std::string_view key, const Range& range) const {
  if (value.kind != CaseKind::number && value.kind != CaseKind::integer) {
    const bool text = value.kind == CaseKind::text;
    fault_at(value.place, fmt::format("{} takes a plain number, but this is {}", named(key), described(value)),
             text ? "write it without quotes and without a unit" : "");
    return std::nullopt;
  }
  if (range.holds(value.number)) return value.number;
  const std::string limits = in_words(range, [](double x) { return fmt::format("{:.6g}", x); });
  fault_at(value.place, fmt::format("{} must be {}, but this is {}", named(key), limits, described(value)));
  return std::nullopt;
}

std::optional<int> CaseTable::count_of(const CaseValue& value, std::string_view key, int low, int high) const {
  if (value.kind != CaseKind::integer || value.integer < low || value.integer > high) {
    fault_at(value.place, fmt::format("{} takes a whole number from {} to {}, but this is {}", named(key), low, high,
                                      described(value)));
    return std::nullopt;
  }
  return static_cast<int>(value.integer);
}

std::optional<std::string> CaseTable::text_of(const CaseValue& value, std::string_view key) const {
  constexpr std::size_t longest = 300;
  if (value.kind != CaseKind::text) {
    fault_at(value.place, fmt::format("{} takes text between quotes, but this is {}", named(key), described(value)));
    return std::nullopt;
  }
  if (trimmed(value.text).empty() || printable(value.text) != value.text || value.text.size() > longest) {
    fault_at(value.place, fmt::format("{} is {}", named(key), in_quotes(value.text)),
             fmt::format("it takes one line of plain text, up to {} letters", longest));
    return std::nullopt;
  }
  return value.text;
}

std::optional<double> CaseTable::quantity(std::string_view key, Dimension dimension) const {
  return quantity(key, dimension, usual_range(dimension));
}

std::optional<double> CaseTable::quantity(std::string_view key, Dimension dimension, const Range& range) const {
  const CaseValue* value = ask(key);
  return value == nullptr ? std::nullopt : quantity_of(*value, key, dimension, range);
}

std::optional<double> CaseTable::number(std::string_view key, const Range& range) const {
  const CaseValue* value = ask(key);
  return value == nullptr ? std::nullopt : number_of(*value, key, range);
}

std::optional<int> CaseTable::count(std::string_view key, int low, int high) const {
  const CaseValue* value = ask(key);
  return value == nullptr ? std::nullopt : count_of(*value, key, low, high);
}

std::optional<bool> CaseTable::boolean(std::string_view key) const {
  const CaseValue* value = ask(key, CaseKind::boolean, "true or false");
  return value == nullptr ? std::nullopt : std::optional(value->boolean);
}

std::optional<std::string> CaseTable::text(std::string_view key) const {
  const CaseValue* value = ask(key);
  return value == nullptr ? std::nullopt : text_of(*value, key);
}

std::optional<std::string> CaseTable::choice(std::string_view key, const std::vector<std::string>& allowed) const {
  const std::optional<std::string> word = text(key);
  if (!word) return std::nullopt;
  for (const std::string& candidate : allowed)
    if (lower_case(*word) == lower_case(candidate)) return candidate;
  const std::string nearest = nearest_word(*word, allowed);
  fault(key, fmt::format("{} is {}, but it takes {}", named(key), in_quotes(*word), listed(allowed)),
        nearest.empty() ? "" : "did you mean " + in_quotes(nearest) + "?");
  return std::nullopt;
}

std::optional<CamAngle> CaseTable::cam_angle(std::string_view key) const {
  return parsed(key, [key](std::string_view words) { return parse_cam_angle(words, key); });
}

template <class T, class ReadOne>
std::optional<std::vector<T>> CaseTable::list(std::string_view key, std::string_view wanted, ReadOne read_one) const {
  const CaseValue* value = ask(key, CaseKind::list, wanted);
  if (value == nullptr) return std::nullopt;
  constexpr std::size_t most = 10000;
  if (value->items.size() > most) {
    fault(key, fmt::format("{} has {} entries, and at most {} are read", named(key), value->items.size(), most));
    return std::nullopt;
  }
  std::vector<T> result;
  for (const CaseValue& item : value->items)
    if (std::optional<T> one = read_one(item)) result.push_back(*one);
  if (value->items.empty()) fault(key, fmt::format("{} takes {}, but the list is empty", named(key), wanted));
  if (value->items.empty() || result.size() != value->items.size()) return std::nullopt;
  return result;
}

std::optional<std::vector<double>> CaseTable::quantities(std::string_view key, Dimension dimension,
                                                         const Range& range) const {
  return list<double>(key, fmt::format("a list, each {}", wanted_quantity(dimension)),
                      [&](const CaseValue& item) { return quantity_of(item, key, dimension, range); });
}

std::optional<std::vector<double>> CaseTable::numbers(std::string_view key, const Range& range) const {
  return list<double>(key, "a list of plain numbers",
                      [&](const CaseValue& item) { return number_of(item, key, range); });
}

std::optional<std::vector<int>> CaseTable::counts(std::string_view key, int low, int high) const {
  return list<int>(key, "a list of whole numbers",
                   [&](const CaseValue& item) { return count_of(item, key, low, high); });
}

std::optional<std::vector<std::string>> CaseTable::texts(std::string_view key) const {
  return list<std::string>(key, "a list of texts", [&](const CaseValue& item) { return text_of(item, key); });
}

std::optional<std::vector<std::vector<double>>> CaseTable::rows(std::string_view key,
                                                                const std::vector<Dimension>& columns) const {
  const std::string wanted = fmt::format("a list of rows with {} values each", columns.size());
  return list<std::vector<double>>(key, wanted, [&](const CaseValue& row) -> std::optional<std::vector<double>> {
    if (row.kind != CaseKind::list || row.items.size() != columns.size()) {
      fault_at(row.place, fmt::format("{} takes {}, but this row is {}{}", named(key), wanted, described(row),
                                      row.kind == CaseKind::list ? fmt::format(" of {}", row.items.size()) : ""));
      return std::nullopt;
    }
    std::vector<double> values;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const Range usual = usual_range(columns[i]);
      const Range with_zero{usual.low, usual.high, true, true};  // a table may begin at 0
      if (const auto v = quantity_of(row.items[i], key, columns[i], with_zero)) values.push_back(*v);
    }
    if (values.size() != columns.size()) return std::nullopt;
    return values;
  });
}

double CaseTable::need_quantity(std::string_view key, Dimension dimension) const {
  return need_quantity(key, dimension, usual_range(dimension));
}

double CaseTable::need_quantity(std::string_view key, Dimension dimension, const Range& range) const {
  return need(key) ? quantity(key, dimension, range).value_or(range.some_value()) : range.some_value();
}

double CaseTable::need_number(std::string_view key, const Range& range) const {
  return need(key) ? number(key, range).value_or(range.some_value()) : range.some_value();
}

int CaseTable::need_count(std::string_view key, int low, int high) const {
  return need(key) ? count(key, low, high).value_or(low) : low;
}

std::string CaseTable::need_text(std::string_view key) const { return need(key) ? text(key).value_or("?") : "?"; }

}  // namespace pulsewright
