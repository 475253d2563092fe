#pragma once
// Result files (HDF5). The layout is written down in cli/README.md.

#include <filesystem>

#include "cli/layout.hpp"
#include "models/rig_run.hpp"

namespace pulsewright {

void write_engine_file(const std::filesystem::path& path, const LoadedCase& loaded, const EngineResult& result,
                       bool force);
void write_comparison_file(const std::filesystem::path& path, const std::vector<Layout>& layouts, bool force);
void write_rig_file(const std::filesystem::path& path, const LoadedCase& loaded, const RigResult& result, bool force);

}  // namespace pulsewright
