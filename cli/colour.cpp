#include "cli/colour.hpp"

#include <unistd.h>

#include <cstdlib>
#include <string_view>

namespace pulsewright {

bool colour_on() {
  const char *no = std::getenv("NO_COLOR"), *terminal = std::getenv("TERM");
  if (no && *no != '\0') return false;
  return isatty(STDOUT_FILENO) == 1 && terminal && std::string_view(terminal) != "dumb";
}

std::string in_red(const std::string& text) {
  return text.empty() || !colour_on() ? text : "\033[31m" + text + "\033[0m";
}

}  // namespace pulsewright
