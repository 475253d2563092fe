#pragma once
// Files: read whole with a limit; written under a temporary name beside the target, flushed to disk, then renamed, so
// that no reader ever sees half a file; an existing file stays unless force is given.

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace pulsewright {

/// The whole of a regular file. Throws Error (file) if it is missing, no regular file, unreadable or larger than the
/// limit.
std::string read_text(const std::filesystem::path& path, std::size_t most_bytes);

/// Throws Error (file) if `path` cannot be written: it exists and force is not given, or its folder is missing. Ask
/// this before a long computation.
void check_writable(const std::filesystem::path& path, bool force);

/// A file being written. Write to temporary(), then commit(); without commit the temporary file is removed.
class PendingFile {
 public:
  PendingFile(std::filesystem::path target, bool force);
  ~PendingFile();
  PendingFile(const PendingFile&) = delete;
  PendingFile& operator=(const PendingFile&) = delete;

  const std::filesystem::path& temporary() const { return temporary_; }
  void commit();  // flush to disk and rename; throws Error (file)

 private:
  std::filesystem::path target_, temporary_;
  bool force_, done_ = false;
};

/// Writes a text in that way.
void write_text(const std::filesystem::path& path, std::string_view text, bool force);

}  // namespace pulsewright
