#include "models/map_file.hpp"

#include <algorithm>

#include "shared/error.hpp"
#include "shared/plain_rows.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr std::size_t most_faults = 8;  // of one file: after that the rest is likely the same mistake

std::vector<std::string> fields(std::string_view line) {
  std::vector<std::string> list;
  for (std::size_t from = 0; from <= line.size();) {
    const std::size_t comma = std::min(line.find(',', from), line.size());
    list.emplace_back(trimmed(line.substr(from, comma - from)));
    from = comma + 1;
  }
  return list;
}

class Parser {
 public:
  Parser(const std::string& name, const std::vector<std::string>& known, const MapFault& fault)
      : known_(known), fault_(fault) {
    file_.name = name;
  }

  std::optional<MapFile> parse(std::string_view text) {
    for (std::size_t from = 0; from < text.size() && faults_ < most_faults;) {
      const std::size_t end = std::min(text.find('\n', from), text.size());
      ++line_;
      take(trimmed(text.substr(from, end - from)));
      from = end + 1;
    }
    if (faults_ == 0 && file_.columns.empty()) say("there is no heading line", heading_hint());
    if (faults_ == 0 && file_.rows.size() < 2) say("a map needs two points or more", {});
    return faults_ == 0 ? std::optional(std::move(file_)) : std::nullopt;
  }

 private:
  void say(const std::string& what, const std::string& hint) {
    ++faults_;
    fault_(file_.at(std::max(1, line_)) + ": " + what, hint);
  }

  std::string heading_hint() const { return "columns, by these names: " + listed(known_, "and"); }

  void take(std::string_view line) {
    if (line.empty() || line.front() == '#') return;
    const std::vector<std::string> words = fields(line);
    if (!file_.columns.empty()) return take_row(words);
    if (lower_case(words.front()) == "reference") return take_reference(words);
    take_heading(words);
  }

  void take_reference(const std::vector<std::string>& words) {
    const std::string hint = "reference, 288.15 K, 1.01325 bar";
    if (words.size() != 3) return say("a reference is a temperature and a pressure", hint);
    try {
      file_.reference = MapReference{parse_quantity(words[1], Dimension::temperature, "reference"),
                                     parse_quantity(words[2], Dimension::pressure_absolute, "reference")};
    } catch (const Error& error) {
      return say(error.message(), error.hint().empty() ? hint : error.hint());
    }
    if (!(file_.reference->temperature > 0 && file_.reference->pressure > 0))
      say("a reference lies above 0 K and 0 bar, absolute", hint);
  }

  void take_heading(const std::vector<std::string>& words) {
    for (const std::string& word : words) {
      if (std::ranges::find(known_, word) == known_.end()) {
        const std::string near = nearest_word(word, known_);
        say("no column is called " + in_quotes(word), near.empty() ? heading_hint() : "nearest: " + in_quotes(near));
      }
      if (std::ranges::count(words, word) > 1) return say("the column " + in_quotes(word) + " stands twice", {});
    }
    file_.columns = words;
  }

  void take_row(const std::vector<std::string>& words) {
    if (words.size() != file_.columns.size())
      return say(
          std::to_string(words.size()) + " values stand under " + std::to_string(file_.columns.size()) + " columns",
          {});
    MapRow row{line_, {}};
    for (const std::string& word : words) {
      const auto value = plain_number(word);
      if (!value)
        return say(in_quotes(word) + " is not a number",
                   "plain numbers with a decimal point; the unit stands in the heading");
      row.values.push_back(*value);
    }
    file_.rows.push_back(std::move(row));
  }

  const std::vector<std::string>& known_;
  const MapFault& fault_;
  MapFile file_;
  int line_ = 0;
  std::size_t faults_ = 0;
};

}  // namespace

int MapFile::column(std::string_view wanted) const {
  const auto found = std::ranges::find(columns, wanted);
  return found == columns.end() ? -1 : static_cast<int>(found - columns.begin());
}

void MapColumns::say(const std::string& what, const std::string& hint) {
  fault_(file_.name + ": " + what, hint);
  good_ = false;
}

int MapColumns::need(std::string_view name) {
  const int column = file_.column(name);
  if (column < 0)
    say("the column " + in_quotes(name) + " is missing", "columns found: " + listed(file_.columns, "and"));
  return column;
}

int MapColumns::one_of(std::string_view a, std::string_view b) {
  if (file_.column(a) >= 0 && file_.column(b) >= 0)
    say(in_quotes(a) + " and " + in_quotes(b) + " say the same", "keep one");
  return std::max(file_.column(a), file_.column(b));
}

int MapColumns::need_one_of(std::string_view a, std::string_view b) {
  const int column = one_of(a, b);
  if (column < 0)
    say("the column " + in_quotes(a) + " or " + in_quotes(b) + " is missing",
        "columns found: " + listed(file_.columns, "and"));
  return column;
}

void MapColumns::need_reference() {
  if (!file_.reference)
    say("corrected figures need the state that they refer to",
        "before the heading a line such as: reference, 288.15 K, 1.01325 bar");
}

std::optional<MapFile> parse_map_file(const std::string& text, const std::string& name,
                                      const std::vector<std::string>& known, const MapFault& fault) {
  return Parser(name, known, fault).parse(text);
}

}  // namespace pulsewright
