#pragma once
// From the unit as a fabricator writes it to the unit as UDUNITS-2 knows it: letter case, deg, thou, Nm, C, F, lb ft.

#include <string>
#include <string_view>

namespace pulsewright {

enum class PressureMark { none, gauge, absolute };

struct MarkedUnit {
  std::string unit;  // "psi" of "psig"
  PressureMark mark;
};

/// Splits "psig", "bar(g)", "kPa abs" into unit and mark; any other unit comes back as it is, unmarked.
MarkedUnit split_pressure_mark(std::string_view unit);

/// False if the text cannot be a unit: it begins with a digit, sign or slash, or has a number in it other than an
/// exponent, or characters that no unit has.
bool looks_like_unit(std::string_view unit);

/// Every word of the unit in the spelling of UDUNITS-2. Where nm could be torque or nanometre, `torque` decides.
std::string translated_unit(std::string_view unit, bool torque);

}  // namespace pulsewright
