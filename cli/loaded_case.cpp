#include "cli/loaded_case.hpp"

#include <charconv>

#include "cli/case_words.hpp"
#include "shared/case_file.hpp"
#include "shared/error.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double lowest_rpm = 300, highest_rpm = 30000, shortest_cell = 5e-4, longest_cell = 0.1;

std::string label_of(const std::string& title, const std::vector<std::string>& tries) {
  std::string label = title;
  for (const std::string& change : tries) label += "; " + change_in_words(change);
  return label;
}

}  // namespace

LoadedCase load_case(const std::string& path, const CaseOptions& options) {
  CaseFile file = CaseFile::load(path);
  for (const std::string& change : options.tries) file.set(change);
  LoadedCase loaded{path, {}, file.text(), file.hash(), {}, {}};
  if (is_rig(file)) {
    if (!options.rpm.empty()) throw Error(ErrorKind::usage, "a rig has no speed: leave --rpm out for " + path);
    loaded.rig = read_rig_case(file, options.cell);
  } else {
    loaded.engine = read_engine_case(file, options.cell, options.rpm);
  }
  loaded.label = label_of(loaded.title(), options.tries);
  return loaded;
}

std::vector<double> parse_rpm(const std::string& text) {
  std::vector<double> speeds;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t comma = std::min(text.find(',', at), text.size());
    const std::string_view word = trimmed(std::string_view(text).substr(at, comma - at));
    double rpm = 0;
    const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), rpm);
    if (fault != std::errc{} || end != word.data() + word.size() || !(rpm >= lowest_rpm && rpm <= highest_rpm))
      throw Error(ErrorKind::usage, "'" + std::string(word) + "' is no speed: give rpm between 300 and 30000", "--rpm",
                  "several speeds stand with commas between: --rpm 3000,4500");
    speeds.push_back(rpm);
    at = comma + 1;
  }
  return speeds;
}

double parse_cell(const std::string& text) {
  try {
    const double cell = parse_quantity(text, Dimension::length, "--cell");
    if (cell >= shortest_cell && cell <= longest_cell) return cell;
  } catch (const Error& error) {
    throw Error(ErrorKind::usage, error.message(), "--cell", error.hint());
  }
  throw Error(ErrorKind::usage, "a cell of '" + text + "' is out of bounds: give 0.5 mm to 100 mm", "--cell");
}

}  // namespace pulsewright
