#pragma once
// Work on text: what messages and readers of the other files need.

#include <string>
#include <string_view>
#include <vector>

namespace pulsewright {

std::string_view trimmed(std::string_view text);
std::string lower_case(std::string_view text);  // ASCII only

/// The text in single quotes for a message: control characters become '?', a long text is cut in the middle.
std::string in_quotes(std::string_view text);

/// The text with control characters (escape sequences of a terminal among them) replaced by '?', tabs by a blank.
std::string printable(std::string_view text);

/// How many letters must be changed, added, dropped or swapped with their neighbour to turn a into b, in any case.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The nearest of the allowed words, empty if none is near (more than a third of its letters would have to change).
std::string nearest_word(std::string_view word, const std::vector<std::string>& allowed);

/// "a, b or c"
std::string listed(const std::vector<std::string>& words, std::string_view last = "or");

}  // namespace pulsewright
