#include "shared/words.hpp"

#include <algorithm>
#include <cctype>

namespace pulsewright {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }
bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }

// Cutting must not leave half of a UTF-8 letter behind.
bool is_continuation(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string lower_case(std::string_view text) {
  std::string result(text);
  for (char& c : result)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return result;
}

std::string printable(std::string_view text) {
  std::string result(text);
  for (char& c : result)
    if (is_control(c)) c = c == '\t' ? ' ' : '?';
  return result;
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t longest = 60, kept = 28;
  if (text.size() <= longest) return "'" + printable(text) + "'";
  std::size_t head = kept, tail = text.size() - kept;
  while (head > 0 && is_continuation(text[head])) --head;
  while (tail < text.size() && is_continuation(text[tail])) ++tail;
  return "'" + printable(text.substr(0, head)) + " ... " + printable(text.substr(tail)) + "'";
}

std::size_t edit_distance(std::string_view a_text, std::string_view b_text) {
  const std::string a = lower_case(a_text), b = lower_case(b_text);
  std::vector<std::size_t> before(b.size() + 1), previous(b.size() + 1), current(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) previous[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    current[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = previous[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U);
      current[j] = std::min({previous[j] + 1, current[j - 1] + 1, changed});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) current[j] = std::min(current[j], before[j - 2] + 1);
    }
    before.swap(previous);
    previous.swap(current);
  }
  return previous[b.size()];
}

std::string nearest_word(std::string_view word, const std::vector<std::string>& allowed) {
  constexpr std::size_t longest = 100;  // nobody misspells a key to more than this
  if (word.size() > longest) return {};
  std::string best;
  std::size_t best_distance = 0;
  for (const std::string& candidate : allowed) {
    const std::size_t distance = edit_distance(word, candidate);
    const bool near = 3 * distance <= std::max(word.size(), candidate.size()) + 1;
    const bool part = word.size() >= 4 && (candidate.find(word) != std::string::npos);
    if (!near && !part) continue;
    if (best.empty() || distance < best_distance) {
      best = candidate;
      best_distance = distance;
    }
  }
  return best;
}

std::string listed(const std::vector<std::string>& words, std::string_view last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 < words.size() ? ", " : " " + std::string(last) + " ";
    text += words[i];
  }
  return text;
}

}  // namespace pulsewright
