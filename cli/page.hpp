#pragma once
// The page: one HTML file that opens from disk, offline, with no script: the table, then the pressures against crank angle.

#include <filesystem>
#include <vector>

#include "cli/layout.hpp"

namespace pulsewright {

/// Everything that a case file contains is escaped.
std::string page_html(const std::vector<Layout>& layouts);

void write_page(const std::filesystem::path& path, const std::vector<Layout>& layouts, bool force);

}  // namespace pulsewright
