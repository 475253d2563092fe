#pragma once
// What an output says of the program that wrote it.

#include <string_view>

namespace pulsewright {

std::string_view program_version();  // of the file scripts/version
std::string_view compiler_text();    // "g++ 12.2.0, Release"

}  // namespace pulsewright
