#pragma once
// Where a case and the files that it names lie: on disk, or in memory, so that a case can be read without touching a
// disk.

#include <cstddef>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace pulsewright {

class CaseFolder {
 public:
  CaseFolder() = default;  // the disk
  /// Names, such as "case.toml" or "parts/turbo.toml", and their texts.
  explicit CaseFolder(std::map<std::string, std::string> files) : files_(std::move(files)) {}

  /// The whole of a file. Throws Error (file) if it is missing, unreadable or larger than the limit.
  std::string read(const std::filesystem::path& path, std::size_t most_bytes) const;

  /// One form for all ways to write the same path.
  std::filesystem::path identity(const std::filesystem::path& path) const;

 private:
  std::optional<std::map<std::string, std::string>> files_;
};

/// Why a file of that name does not lie beside the one that names it, or below; empty where it does.
std::string why_not_beside(std::string_view name);

}  // namespace pulsewright
