#include "shared/case_file.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <utility>

#include "shared/case_address.hpp"
#include "shared/case_book.hpp"
#include "shared/case_load.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

void unknown_keys(CaseBook& book, const CaseValue& value, const std::string& path);

void unknown_keys_of_table(CaseBook& book, const CaseValue& table, const std::string& path) {
  const auto asked = book.asked.find(&table);
  if (asked == book.asked.end()) return;  // its own key is unknown, and said so one level up
  for (const CaseEntry& entry : table.entries) {
    const std::vector<std::string>& known = asked->second;
    if (std::find(known.begin(), known.end(), entry.key) != known.end()) {
      unknown_keys(book, entry.value, path.empty() ? entry.key : path + "." + entry.key);
      continue;
    }
    if (book.faults.full()) {  // counted, without the search for what was meant
      book.faults.add(entry.place, {});
      continue;
    }
    const std::string where = path.empty() ? "" : " in [" + path + "]";
    const std::string nearest = nearest_word(entry.key, known);
    std::string hint;
    if (!nearest.empty())
      hint = fmt::format("did you mean `{}`?", nearest);
    else if (!known.empty())
      hint = fmt::format("known here: {}", listed(known, "and"));
    const bool is_whole_table = entry.value.kind == CaseKind::table || entry.value.is_list_of_tables();
    book.faults.add(
        entry.place,
        fmt::format("{} {}{} is not known", is_whole_table ? "the table" : "the key", in_quotes(entry.key), where),
        hint);
  }
}

void unknown_keys(CaseBook& book, const CaseValue& value, const std::string& path) {
  if (value.kind == CaseKind::table) unknown_keys_of_table(book, value, path);
  for (std::size_t i = 0; i < value.items.size(); ++i)
    unknown_keys(book, value.items[i], fmt::format("{} {}", path, i + 1));
}

// Fowler, Noll, Vo: hash ^= byte, hash *= prime; offset basis and prime of the 64-bit form (RFC 9923 gives both).
std::string fnv_1a(const std::string& text) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001b3U;
  }
  return fmt::format("{:016x}", hash);
}

}  // namespace

CaseFile::CaseFile(std::string name) : name_(std::move(name)), book_(std::make_unique<CaseBook>()) {}
CaseFile::CaseFile(CaseFile&&) noexcept = default;
CaseFile& CaseFile::operator=(CaseFile&&) noexcept = default;
CaseFile::~CaseFile() = default;

CaseFile CaseFile::load(const std::filesystem::path& path) { return load(path, CaseFolder()); }

CaseFile CaseFile::load(const std::filesystem::path& path, CaseFolder folder) {
  CaseFile file(path.string());
  file.book_->folder = std::move(folder);
  file.book_->beside = path.parent_path();
  file.book_->root = load_case(path, file.book_->folder, file.book_->faults);
  return file;
}

CaseFile CaseFile::from_text(const std::string& text, const std::string& name) {
  CaseFile file(name);
  file.book_->root = load_case_text(text, name, file.book_->faults);
  return file;
}

void CaseFile::set(std::string_view assignment, const std::string& origin) {
  set_by_address(book_->root, assignment, origin, book_->faults);
}

CaseFaults& CaseFile::faults() { return book_->faults; }

CaseTable CaseFile::root() { return {*book_, &book_->root, {}, book_->root.place}; }

void CaseFile::finish() {
  unknown_keys(*book_, book_->root, {});
  book_->faults.throw_if_any();
}

std::string CaseFile::text() const { return canonical_text(book_->root); }
std::string CaseFile::hash() const { return fnv_1a(text()); }

}  // namespace pulsewright
