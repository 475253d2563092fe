#pragma once
// Colour on a terminal, for what must not be overlooked.

#include <string>

namespace pulsewright {

/// Whether standard output takes colour: a terminal, NO_COLOR not set, TERM not "dumb".
bool colour_on();

/// In red where colour is on; as it is elsewhere, and where there is nothing.
std::string in_red(const std::string& text);

}  // namespace pulsewright
