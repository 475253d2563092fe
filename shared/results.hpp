#pragma once
// Result files: HDF5, opened by its ordinary tools. Datasets of doubles with a `units` attribute and a checksum, texts,
// and attributes, in groups named by paths such as "layout_A/rpm_2500/places/turbine/pressure". Written under a temporary name
// and renamed at commit(); an existing file stays unless force is given. One thread at a time.

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace pulsewright {

/// A name from the case as one word of a path: the slash and what HDF5 takes for a path of its own are spelt out.
std::string path_word(std::string_view name);

class ResultWriter {
 public:
  /// Throws Error (file) if the file exists and force is not given, or its folder cannot be written to.
  ResultWriter(const std::filesystem::path& path, bool force);
  ~ResultWriter();
  ResultWriter(const ResultWriter&) = delete;
  ResultWriter& operator=(const ResultWriter&) = delete;

  /// One or two dimensions, the last running fastest; groups on the way are made. Throws Error: internal if a value is
  /// not finite, the shape does not fit or the name is taken; file if the disk refuses.
  void write(const std::string& path, std::span<const double> values, std::vector<std::size_t> shape,
             std::string_view unit);
  void write(const std::string& path, std::span<const double> values, std::string_view unit) {
    write(path, values, {values.size()}, unit);
  }
  void write_text(const std::string& path, std::string_view text);

  /// An attribute of a group or dataset; a group that does not exist is made. Empty path: the file's root.
  void attribute(const std::string& path, const std::string& name, std::string_view text);
  void attribute(const std::string& path, const std::string& name, double number);

  /// Closes, flushes to disk, renames. Without it nothing is left.
  void commit();

 private:
  struct Open;
  std::unique_ptr<Open> open_;
};

struct ResultData {
  std::vector<double> values;
  std::vector<std::size_t> shape;
  std::string unit;
};

class ResultReader {
 public:
  /// Throws Error (file) if it is missing, no HDF5 file or damaged; so do the others for what is not there.
  explicit ResultReader(const std::filesystem::path& path);
  ~ResultReader();
  ResultReader(const ResultReader&) = delete;
  ResultReader& operator=(const ResultReader&) = delete;

  bool has(const std::string& path) const;
  bool is_group(const std::string& path) const;
  std::vector<std::string> list(const std::string& group) const;  // names, alphabetically; empty path: the root
  ResultData read(const std::string& path) const;
  std::string text(const std::string& path) const;
  bool has_attribute(const std::string& path, const std::string& name) const;
  std::string attribute_text(const std::string& path, const std::string& name) const;
  double attribute_number(const std::string& path, const std::string& name) const;

 private:
  struct Open;
  std::unique_ptr<Open> open_;
};

}  // namespace pulsewright
