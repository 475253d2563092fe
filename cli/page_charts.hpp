#pragma once
// The charts of the page: pressure against crank angle at the turbine, in every joint, at every port.

#include <string>
#include <vector>

#include "cli/layout.hpp"

namespace pulsewright {

/// What dash, shade and bar mean; stands once above all charts.
std::string chart_legend(const std::vector<Layout>& layouts);

/// All charts of one speed. The ports share one pressure axis, the turbine and the joints another.
std::string speed_charts(const std::vector<Layout>& layouts, double rpm);

}  // namespace pulsewright
