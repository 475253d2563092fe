#include "shared/files.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <utility>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const fs::path& path, const std::string& what, const std::string& hint = {}) {
  throw Error(ErrorKind::file, what, printable(path.string()), hint);
}

std::string system_words(int code) { return std::strerror(code); }

[[noreturn]] void refuse_existing(const fs::path& path) {
  refuse(path, "this file exists already", "give another name, or --force to write over it");
}

void flush_to_disk(const fs::path& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) refuse(path, "cannot be written: " + system_words(errno));
  const int outcome = ::fsync(file), code = errno;
  ::close(file);
  // some file systems refuse fsync on a folder; a failure of the disk itself is reported
  if (outcome != 0 && code != EINVAL) refuse(path, "cannot be written: " + system_words(code));
}

fs::path folder_of(const fs::path& path) { return path.has_parent_path() ? path.parent_path() : fs::path("."); }

}  // namespace

std::string read_text(const fs::path& path, std::size_t most_bytes) {
  std::error_code fault;
  const fs::file_status status = fs::status(path, fault);
  if (status.type() == fs::file_type::not_found) refuse(path, "this file does not exist");
  if (fault) refuse(path, "cannot be read: " + fault.message());
  if (status.type() == fs::file_type::directory) refuse(path, "this is a folder, not a file");
  if (status.type() != fs::file_type::regular) refuse(path, "this is not a regular file");
  std::ifstream file(path, std::ios::binary);
  if (!file) refuse(path, "cannot be read: " + system_words(errno));
  std::string text(most_bytes + 1, '\0');
  file.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (file.bad()) refuse(path, "cannot be read: " + system_words(errno));
  text.resize(static_cast<std::size_t>(file.gcount()));
  if (text.size() > most_bytes)
    refuse(path, "this file is too large: more than " + std::to_string(most_bytes) + " bytes");
  return text;
}

void check_writable(const fs::path& path, bool force) {
  std::error_code fault;
  const fs::path folder = folder_of(path);
  if (!fs::is_directory(folder, fault)) refuse(path, "its folder does not exist: " + in_quotes(folder.string()));
  const fs::file_status status = fs::symlink_status(path, fault);
  if (status.type() == fs::file_type::directory) refuse(path, "this is a folder, not a file");
  if (fs::exists(status) && !force) refuse_existing(path);
  if (::access(folder.c_str(), W_OK) != 0) refuse(path, "its folder cannot be written to: " + system_words(errno));
}

PendingFile::PendingFile(fs::path target, bool force) : target_(std::move(target)), force_(force) {
  check_writable(target_, force_);
  const std::string name = "." + target_.filename().string() + "." + std::to_string(::getpid()) + ".part";
  temporary_ = folder_of(target_) / name;
}

PendingFile::~PendingFile() {
  std::error_code ignored;
  if (!done_) fs::remove(temporary_, ignored);
}

void PendingFile::commit() {
  flush_to_disk(temporary_);
  if (force_) {
    if (::rename(temporary_.c_str(), target_.c_str()) != 0)
      refuse(target_, "cannot be written: " + system_words(errno));
  } else if (::renameat2(AT_FDCWD, temporary_.c_str(), AT_FDCWD, target_.c_str(), RENAME_NOREPLACE) != 0) {
    if (errno == EEXIST) refuse_existing(target_);
    // file systems that cannot rename with that promise: look, then rename
    if (errno != EINVAL && errno != ENOSYS) refuse(target_, "cannot be written: " + system_words(errno));
    check_writable(target_, force_);
    if (::rename(temporary_.c_str(), target_.c_str()) != 0)
      refuse(target_, "cannot be written: " + system_words(errno));
  }
  done_ = true;
  flush_to_disk(folder_of(target_));
}

void write_text(const fs::path& path, std::string_view text, bool force) {
  PendingFile pending(path, force);
  std::ofstream file(pending.temporary(), std::ios::binary | std::ios::trunc);
  file.write(text.data(), static_cast<std::streamsize>(text.size()));
  file.close();
  if (!file) refuse(path, "cannot be written: " + system_words(errno));
  pending.commit();
}

}  // namespace pulsewright
