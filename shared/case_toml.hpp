#pragma once
// The fence round toml++: the only file that sees it is case_toml.cpp.

#include <string>
#include <string_view>

#include "shared/case_value.hpp"

namespace pulsewright {

/// What is wrong with a TOML text, and where.
struct TomlFault {
  std::string message;
  Place place;
};

/// TOML to a tree whose places carry `source`. Throws TomlFault at the first mistake of syntax.
CaseValue parse_toml(std::string_view text, std::size_t source);

}  // namespace pulsewright
