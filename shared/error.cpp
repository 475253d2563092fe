#include "shared/error.hpp"

#include <utility>

namespace pulsewright {
namespace {

std::string full_text(const std::string& what, const std::string& where, const std::string& hint) {
  std::string text = where.empty() ? what : where + ": " + what;
  if (!hint.empty()) text += "\n  " + hint;
  return text;
}

}  // namespace

Error::Error(ErrorKind kind, std::string what, std::string where, std::string hint)
    : std::runtime_error(full_text(what, where, hint)),
      kind_(kind),
      message_(std::move(what)),
      where_(std::move(where)),
      hint_(std::move(hint)) {}

}  // namespace pulsewright
