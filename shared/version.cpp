#include "shared/version.hpp"

// The two texts come from CMake, for this file alone.
namespace pulsewright {

std::string_view program_version() { return PULSEWRIGHT_VERSION; }
std::string_view compiler_text() { return PULSEWRIGHT_COMPILER; }

}  // namespace pulsewright
