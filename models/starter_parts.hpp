#pragma once
// What the files of start share among themselves.

#include <string_view>
#include <utility>

#include "models/arrangement.hpp"

namespace pulsewright {

/// "4" -> inline 4, "boxer 4" -> its row; empty -> what is assumed. Throws Error (usage) listing what is known.
const Arrangement& arrangement_meant(std::string_view text);

/// What stands before the first comma and behind it, trimmed; the second is empty without one.
std::pair<std::string_view, std::string_view> two_parts(std::string_view text);

}  // namespace pulsewright
