#pragma once
// A case file and the files that it uses, as one tree.

#include <filesystem>
#include <string>

#include "shared/case_faults.hpp"
#include "shared/case_folder.hpp"
#include "shared/case_value.hpp"

namespace pulsewright {

/// Reads the file and lays it over the files of its `use` list (a later one over an earlier one). Used files lie beside
/// the file that names them, or below. Throws Error: file if `path` itself cannot be read; case_file for everything
/// else.
CaseValue load_case(const std::filesystem::path& path, const CaseFolder& folder, CaseFaults& faults);

/// The same from a text in memory; `use` is refused there.
CaseValue load_case_text(const std::string& text, const std::string& name, CaseFaults& faults);

}  // namespace pulsewright
