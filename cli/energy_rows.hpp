#pragma once
// Where the fuel's heat goes, layout beside layout, and what of it makes the difference in torque.

#include <string>
#include <vector>

#include "cli/layout.hpp"

namespace pulsewright {

/// Shares of the fuel's heat, per cent; all but the last, which says what of the work gas exchange makes, add up to 100.
const std::vector<FigureRow>& energy_rows();

/// For each layout against the first, at the speed where torque differs most: how much of it is fuel burned, how much the share
/// of its heat that becomes work, and where the rest goes. Nothing where torque is alike.
std::vector<std::string> why_sentences(const std::vector<Layout>& layouts);

}  // namespace pulsewright
