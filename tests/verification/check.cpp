#include "tests/verification/check.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "shared/error.hpp"

namespace pulsewright {

bool holds(const Check& c) {
  if (c.band) return c.got >= c.low && c.got <= c.high;
  return std::abs(c.got - c.expected) <= c.tolerance * (c.relative ? std::abs(c.expected) : 1);
}

std::string expected_text(const Check& c) {
  if (!c.band) return fmt::format("{:.9g} +- {:.3g}{}", c.expected, c.tolerance, c.relative ? " of it" : "");
  if (std::isinf(c.low)) return fmt::format("at most {:.6g}", c.high);
  if (std::isinf(c.high)) return fmt::format("at least {:.6g}", c.low);
  return fmt::format("{:.6g} .. {:.6g}", c.low, c.high);
}

std::string describe(const Check& c) {
  return fmt::format("{}: {}{}{}: expected {}, got {:.9g} ({}; {})", c.group, c.name, c.at.empty() ? "" : " at ", c.at,
                     expected_text(c), c.got, c.source, c.reason);
}

CheckList::CheckList(std::string group, std::string source) : group_(std::move(group)), source_(std::move(source)) {}

CheckList& CheckList::source(std::string source) {
  source_ = std::move(source);
  return *this;
}

CheckList& CheckList::relative(double tolerance, std::string reason) {
  tolerance_ = tolerance;
  relative_ = true;
  reason_ = std::move(reason);
  return *this;
}

CheckList& CheckList::absolute(double tolerance, std::string reason) {
  relative(tolerance, std::move(reason));
  relative_ = false;
  return *this;
}

Check CheckList::blank(std::string name, double got) const {
  Check c;
  c.group = group_;
  c.name = std::move(name);
  c.source = source_;
  c.reason = reason_;
  c.got = got;
  return c;
}

void CheckList::value(std::string name, double expected, double got) {
  Check c = blank(std::move(name), got);
  c.expected = expected;
  c.tolerance = tolerance_;
  c.relative = relative_;
  checks_.push_back(std::move(c));
}

void CheckList::band(std::string name, double low, double high, double got) {
  Check c = blank(std::move(name), got);
  c.band = true;
  c.low = low;
  c.high = high;
  checks_.push_back(std::move(c));
}

void CheckList::at_most(std::string name, double limit, double got) {
  band(std::move(name), -std::numeric_limits<double>::infinity(), limit, got);
}

void CheckList::at_least(std::string name, double limit, double got) {
  band(std::move(name), limit, std::numeric_limits<double>::infinity(), got);
}

void CheckList::table(const Table& table, const std::function<std::vector<double>(std::span<const double>)>& got) {
  for (const std::vector<double>& row : table.rows) {
    const std::span<const double> keys(row.data(), table.keys);
    const std::vector<double> values = got(keys);
    if (row.size() != table.columns.size() || values.size() + table.keys != row.size())
      throw Error(ErrorKind::internal, fmt::format("check table of {} columns: a row has {}, computed are {}",
                                                   table.columns.size(), row.size(), values.size() + table.keys));
    std::string at;
    for (std::size_t k = 0; k < table.keys; ++k)
      at += fmt::format("{}{} {:g}", k ? ", " : "", table.columns[k], row[k]);
    for (std::size_t i = 0; i < values.size(); ++i) {
      const double expected = row[table.keys + i];
      if (std::isnan(expected)) continue;
      value(table.columns[table.keys + i], expected, values[i]);
      checks_.back().at = at;
    }
  }
}

std::vector<Check> joined(std::vector<std::vector<Check>> lists) {
  std::vector<Check> all;
  for (std::vector<Check>& list : lists)
    for (Check& c : list) all.push_back(std::move(c));
  return all;
}

}  // namespace pulsewright
