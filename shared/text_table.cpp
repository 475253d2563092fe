#include "shared/text_table.hpp"

#include <algorithm>
#include <utility>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

// Letters, not bytes: continuation bytes of UTF-8 take no place.
std::size_t width(const std::string& cell) {
  return static_cast<std::size_t>(
      std::count_if(cell.begin(), cell.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& cell, std::size_t to, TextTable::Align align) {
  const std::string blanks(to - width(cell), ' ');
  return align == TextTable::Align::left ? cell + blanks : blanks + cell;
}

std::string finished(std::string line) {
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return line + "\n";
}

}  // namespace

void TextTable::add_row(std::vector<std::string> cells) {
  if (cells.size() > columns_.size()) throw Error(ErrorKind::internal, "a table row has more cells than columns");
  cells.resize(columns_.size());
  for (std::string& cell : cells) cell = printable(cell);
  rows_.push_back(std::move(cells));
}

void TextTable::add_gap() { rows_.emplace_back(); }

std::string TextTable::text() const {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    widths.push_back(width(columns_[i].title));
    for (const std::vector<std::string>& row : rows_)
      if (!row.empty()) widths.back() = std::max(widths.back(), width(row[i]));
  }
  std::string titles, rule, body;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    titles += padded(columns_[i].title, widths[i], columns_[i].align) + "  ";
    rule += std::string(widths[i], '-') + "  ";
  }
  for (const std::vector<std::string>& row : rows_) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) line += padded(row[i], widths[i], columns_[i].align) + "  ";
    body += finished(line);
  }
  return finished(titles) + finished(rule) + body;
}

}  // namespace pulsewright
