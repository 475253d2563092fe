#pragma once
// A case: the file named by the user with the files that it uses, read through CaseTable (case_table.hpp).
//
//   CaseFile file = CaseFile::load("cases/03_equal.toml");
//   file.set("each_primary.tube=\"NPS 1-1/2 sch 10S\"");     // before reading
//   ... read from file.root() ...
//   file.finish();                                            // throws every fault at once

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

#include "shared/case_faults.hpp"
#include "shared/case_folder.hpp"
#include "shared/case_table.hpp"

namespace pulsewright {

class CaseFile {
 public:
  /// Throws Error: file if the case itself cannot be read, case_file if it or a used file is not good TOML.
  static CaseFile load(const std::filesystem::path& path);
  /// The same from a folder that may be in memory.
  static CaseFile load(const std::filesystem::path& path, CaseFolder folder);
  static CaseFile from_text(const std::string& text, const std::string& name);

  CaseFile(CaseFile&&) noexcept;
  CaseFile& operator=(CaseFile&&) noexcept;
  ~CaseFile();

  /// Changes one value (case_address.hpp); only before anything is read. Throws Error (usage).
  void set(std::string_view assignment, const std::string& origin = "--try");

  /// Tables stay good as long as this file lives.
  CaseTable root();

  /// For faults that show only when the whole is put together.
  CaseFaults& faults();

  /// Throws one Error (case_file) with all that was recorded, and with every key that nobody asked for.
  void finish();

  const std::string& name() const { return name_; }  // as given
  std::string text() const;                          // merged, as canonical TOML
  std::string hash() const;                          // of text(): FNV-1a, 64 bits, as 16 hexadecimal digits

 private:
  explicit CaseFile(std::string name);
  std::string name_;
  std::unique_ptr<CaseBook> book_;
};

}  // namespace pulsewright
