#pragma once
// The valves of a cylinder under its chart.

#include <vector>

#include "cli/layout.hpp"
#include "cli/svg_chart.hpp"

namespace pulsewright {

/// A bar for each valve, and the time both are open shaded. Layouts whose cams and firing angles are the same share the bars;
/// where they differ each has its own, with its letter. A layout without that cylinder has none.
void add_valve_bars(Chart& chart, const std::vector<Layout>& layouts, std::size_t cylinder);

}  // namespace pulsewright
