#include "shared/case_faults.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

std::string_view line_in(std::string_view text, std::size_t line) {
  for (; line > 1; --line) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return {};
    text.remove_prefix(end + 1);
  }
  text = text.substr(0, text.find('\n'));
  if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
  return text;
}

// Byte position of a column that counts letters (code points), from 1.
std::size_t byte_of_column(std::string_view line, std::size_t column) {
  std::size_t byte = 0;
  for (std::size_t letter = 1; letter < column && byte < line.size(); ++letter) {
    ++byte;
    while (byte < line.size() && (static_cast<unsigned char>(line[byte]) & 0xC0U) == 0x80U) ++byte;
  }
  return byte;
}

std::size_t letters(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

}  // namespace

std::size_t CaseFaults::add_source(std::string name, std::string text) {
  sources_.push_back({std::move(name), std::move(text)});
  return sources_.size() - 1;
}

void CaseFaults::add(Place place, std::string message, std::string hint) {
  if (full()) {
    ++not_kept_;
    return;
  }
  const auto same = [&](const Fault& f) {
    return f.message == message &&
           std::tie(f.place.source, f.place.line, f.place.column) == std::tie(place.source, place.line, place.column);
  };
  if (std::none_of(faults_.begin(), faults_.end(), same))
    faults_.push_back({place, std::move(message), std::move(hint)});
}

std::string CaseFaults::line_of(Place place) const {
  const std::string name = printable(source(place.source).name);
  return place.line == 0 ? name : fmt::format("{}:{}", name, place.line);
}

// A long line is shown only round the place.
std::string CaseFaults::excerpt(Place place) const {
  constexpr std::size_t widest = 110, before = 60;
  if (place.line == 0) return {};
  std::string_view line = line_in(source(place.source).text, place.line);
  std::size_t mark = byte_of_column(line, place.column);
  if (line.size() > widest && mark > before) {
    std::size_t cut = mark - before;
    while (cut < mark && (static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U) ++cut;
    line.remove_prefix(cut);
    mark -= cut;
  }
  line = line.substr(0, byte_of_column(line, widest + 1));
  const std::string number = fmt::format("{}", place.line);
  return fmt::format("\n  {} | {}\n  {} | {}^", number, printable(line), std::string(number.size(), ' '),
                     std::string(letters(line.substr(0, mark)), ' '));
}

std::string CaseFaults::full_text(const Fault& fault) const {
  std::string text = line_of(fault.place);
  if (fault.place.line > 0) text += fmt::format(":{}", fault.place.column);
  text += ": " + fault.message + excerpt(fault.place);
  if (!fault.hint.empty()) text += "\n  " + fault.hint;
  return text;
}

void CaseFaults::throw_if_any() const {
  constexpr std::size_t most = 40;
  if (faults_.empty()) return;
  std::vector<Fault> ordered = faults_;
  std::stable_sort(ordered.begin(), ordered.end(), [](const Fault& a, const Fault& b) {
    return std::tie(a.place.source, a.place.line, a.place.column) <
           std::tie(b.place.source, b.place.line, b.place.column);
  });
  std::string text;
  for (std::size_t i = 0; i < std::min(most, ordered.size()); ++i) text += (i > 0 ? "\n" : "") + full_text(ordered[i]);
  if (ordered.size() > most) text += fmt::format("\nand {} more", ordered.size() - most + not_kept_);
  throw Error(ErrorKind::case_file, text);
}

}  // namespace pulsewright
