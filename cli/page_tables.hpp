#pragma once
// The tables of the page. On a phone each row is a block of its own, and every cell carries its heading.

#include <string>
#include <vector>

#include "cli/layout.hpp"

namespace pulsewright {

/// Rows of figures over the speeds, "A / B" in a cell.
std::string overview_table(const std::vector<Layout>& layouts, const std::vector<FigureRow>& rows);

/// At one speed: every figure with the difference, every cylinder, every arrival.
std::string figures_table(const std::vector<Layout>& layouts, double rpm);
std::string cylinders_table(const std::vector<Layout>& layouts, double rpm);
std::string arrivals_table(const std::vector<Layout>& layouts, double rpm);

std::string assumed_table(const Layout& layout);

/// "A / B"
std::string letters_text(const std::vector<Layout>& layouts);

}  // namespace pulsewright
