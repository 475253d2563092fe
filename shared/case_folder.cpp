#include "shared/case_folder.hpp"

#include <algorithm>

#include "shared/error.hpp"
#include "shared/files.hpp"
#include "shared/words.hpp"

namespace pulsewright {

namespace fs = std::filesystem;

std::string CaseFolder::read(const fs::path& path, std::size_t most_bytes) const {
  if (!files_) return read_text(path, most_bytes);
  const auto found = files_->find(identity(path).string());
  if (found == files_->end()) throw Error(ErrorKind::file, "this file does not exist", printable(path.string()));
  if (found->second.size() > most_bytes)
    throw Error(ErrorKind::file, "this file is too large: more than " + std::to_string(most_bytes) + " bytes",
                printable(path.string()));
  return found->second;
}

fs::path CaseFolder::identity(const fs::path& path) const {
  return files_ ? path.lexically_normal() : fs::weakly_canonical(path);
}

std::string why_not_beside(std::string_view name) {
  if (name.empty() || name.find('\0') != std::string_view::npos) return in_quotes(name) + " names no file";
  const fs::path path(name);
  const bool climbs = std::any_of(path.begin(), path.end(), [](const fs::path& part) { return part == ".."; });
  return path.is_absolute() || climbs ? in_quotes(name) + " does not lie beside the case" : "";
}

}  // namespace pulsewright
