#pragma once
// Layouts on a terminal: what was held equal, one table of figures, arrivals, what every cylinder feels.

#include <string>
#include <vector>

#include "cli/layout.hpp"

namespace pulsewright {

/// For one layout (run) or several (compare).
std::string layouts_text(const std::vector<Layout>& layouts);

/// The speeds that did not settle, one sentence each; empty when all did.
std::vector<std::string> unsettled_text(const std::vector<Layout>& layouts);

}  // namespace pulsewright
