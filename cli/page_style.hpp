#pragma once
// How the page looks: paper, dark screen, phone, printer.

namespace pulsewright {

extern const char* const page_style;

}  // namespace pulsewright
