#pragma once
// Tables of plain numbers as text: comma separated, a heading line, then a row a line; blank lines and lines that begin
// with # are passed over.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace pulsewright {

/// The whole text as one finite number with a decimal point; none where it is anything else.
std::optional<double> plain_number(std::string_view text);

struct PlainRow {
  std::string place;           // "cam.csv:7"
  std::vector<double> values;  // one for each column
};

/// The rows below a heading that must read exactly as `heading`. Throws Error (case_file) with place and `hint`.
std::vector<PlainRow> plain_rows(const std::string& text, const std::string& name, std::string_view heading,
                                 const std::string& hint);

}  // namespace pulsewright
