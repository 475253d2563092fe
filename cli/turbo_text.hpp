#pragma once
// Sentences about gates and compressors: what goes wrong in them, and what the program cannot see.

#include <string>
#include <vector>

#include "cli/layout.hpp"

namespace pulsewright {

/// Gates that drive pressure pushes open early, compressors outside their map, and no map at all. In red where there is
/// colour.
std::vector<std::string> turbo_warnings(const std::vector<Layout>& layouts);

/// What is not computed because the case does not say it; each once.
std::vector<std::string> turbo_unknowns(const std::vector<Layout>& layouts);

}  // namespace pulsewright
