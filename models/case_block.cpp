#include "models/case_block.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {

std::string toml_text(std::string_view text) {
  const bool odd = std::ranges::any_of(
      text, [](char c) { return c == '"' || c == '\\' || static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
  if (odd)
    throw Error(ErrorKind::usage, in_quotes(text) + " has quotes, backslashes or control characters in it", {},
                "leave them out");
  return '"' + std::string(text) + '"';
}

std::string block_text(const CaseBlock& block) {
  constexpr std::size_t comments_from = 36;  // column; a longer line pushes its comment out
  std::string text = block.head;
  if (!block.comment.empty())
    text += fmt::format("{:{}}# {}", "", comments_from - std::min(comments_from, text.size()), block.comment);
  if (!text.empty()) text += '\n';
  std::size_t width = 0;
  for (const CaseLine& line : block.lines) width = std::max(width, line.key.size() + (line.said ? 0 : 2));
  for (const CaseLine& line : block.lines) {
    std::string left = fmt::format("{:{}} = {}", (line.said ? "" : "# ") + line.key, width, line.value);
    if (!line.comment.empty()) left = fmt::format("{:{}}  # {}", left, comments_from - 2, line.comment);
    text += left + '\n';
  }
  for (const std::string& remark : block.remarks) text += "# " + remark + '\n';
  return text;
}

std::string case_text(const std::vector<CaseBlock>& blocks) {
  std::string text;
  for (const CaseBlock& block : blocks) text += (text.empty() ? "" : "\n") + block_text(block);
  return text;
}

}  // namespace pulsewright
