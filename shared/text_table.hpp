#pragma once
// A plain table for the terminal: columns as wide as their widest cell, two blanks between, words left and numbers
// right.

#include <string>
#include <utility>
#include <vector>

namespace pulsewright {

class TextTable {
 public:
  enum class Align { left, right };
  struct Column {
    std::string title;
    Align align = Align::left;
  };

  explicit TextTable(std::vector<Column> columns) : columns_(std::move(columns)) {}

  /// A row may be shorter than the table; a longer one throws Error (internal).
  void add_row(std::vector<std::string> cells);
  void add_gap();  // an empty line

  /// Title line, a rule, the rows; no blanks at line ends.
  std::string text() const;

 private:
  std::vector<Column> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace pulsewright
