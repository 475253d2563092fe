#pragma once
// What is said about the metal of layouts, line by line; and its JSON.

#include <string>
#include <vector>

#include "cli/layout.hpp"
#include "shared/json.hpp"

namespace pulsewright {

/// One line for each runner: its hottest metal over the speeds that were run, where, and how much it grows.
std::vector<std::string> metal_lines(const std::vector<Layout>& layouts);

/// Where metal passes 700 degC or what its alloy stands.
std::vector<std::string> metal_cautions(const std::vector<Layout>& layouts);

/// Adds `metal` and, where it was run, `warm_up` to the JSON of a speed.
void put_metal(Json& speed, const SpeedResult& result);

}  // namespace pulsewright
