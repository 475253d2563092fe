#include "shared/case_table.hpp"

#include <fmt/format.h>

#include <utility>

#include "shared/case_book.hpp"
#include "shared/words.hpp"

namespace pulsewright {

CaseTable::CaseTable(CaseBook& book, const CaseValue* table, std::string path, Place place)
    : book_(&book), table_(table), path_(std::move(path)), place_(place) {
  if (table_ != nullptr) book_->asked[table_];  // a table that somebody looked into
}

const CaseValue* CaseTable::ask(std::string_view key) const {
  if (table_ == nullptr) return nullptr;
  book_->note(table_, key);
  const CaseEntry* entry = table_->find(key);
  return entry == nullptr ? nullptr : &entry->value;
}

const CaseValue* CaseTable::ask(std::string_view key, CaseKind kind, std::string_view wanted) const {
  const CaseValue* value = ask(key);
  if (value == nullptr || value->kind == kind) return value;
  fault(key, fmt::format("{} takes {}, but this is {}", named(key), wanted, described(*value)));
  return nullptr;
}

std::string CaseTable::named(std::string_view key) const {
  return path_.empty() ? fmt::format("`{}`", key) : fmt::format("`{}` of [{}]", key, path_);
}

CaseKind CaseTable::kind(std::string_view key) const {
  const CaseValue* value = ask(key);
  return value == nullptr ? CaseKind::absent : value->kind;
}

Place CaseTable::place(std::string_view key) const {
  const CaseEntry* entry = table_ == nullptr ? nullptr : table_->find(key);
  return entry == nullptr ? place_ : entry->value.place;
}

std::string CaseTable::line_of(std::string_view key) const { return book_->faults.line_of(place(key)); }

std::vector<std::string> CaseTable::keys() const {
  std::vector<std::string> result;
  if (table_ != nullptr)
    for (const CaseEntry& entry : table_->entries) result.push_back(entry.key);
  return result;
}

CaseTable CaseTable::table(std::string_view key) const {
  const CaseValue* value = ask(key, CaseKind::table, "a table");
  std::string below = path_.empty() ? std::string(key) : path_ + "." + std::string(key);
  return {*book_, value, std::move(below), value == nullptr ? place_ : value->place};
}

std::vector<CaseTable> CaseTable::tables(std::string_view key) const {
  const CaseValue* value = ask(key);
  if (value == nullptr) return {};
  if (value->kind == CaseKind::table) return {table(key)};
  std::vector<CaseTable> result;
  const std::string below = path_.empty() ? std::string(key) : path_ + "." + std::string(key);
  if (value->kind == CaseKind::list && value->items.empty()) return {};
  if (!value->is_list_of_tables()) {
    fault(key, fmt::format("{} takes a list of tables, but this is {}", named(key), described(*value)),
          fmt::format("each begins with a line [[{}]]", below));
    return {};
  }
  constexpr std::size_t most = 500;  // the largest engine has fifty; networks are searched name by name
  if (value->items.size() > most) {
    fault(key, fmt::format("{} [[{}]] are more than a case can have, {}", value->items.size(), below, most));
    return {};
  }
  for (const CaseValue& item : value->items)
    result.emplace_back(*book_, &item, fmt::format("{} {}", below, result.size() + 1), item.place);
  return result;
}

std::string CaseTable::read_beside(std::string_view name, std::size_t most_bytes) const {
  if (const std::string why = why_not_beside(name); !why.empty())
    throw Error(ErrorKind::case_file, why, {}, "give the name of a file in the case's folder");
  try {
    return book_->folder.read(book_->beside / std::filesystem::path(name), most_bytes);
  } catch (const Error& error) {
    if (error.kind() != ErrorKind::file) throw;
    throw Error(ErrorKind::case_file, in_quotes(name) + ": " + error.message(), {}, error.hint());
  }
}

void CaseTable::fault(std::string_view key, std::string message, std::string hint) const {
  fault_at(place(key), std::move(message), std::move(hint));
}

void CaseTable::fault_here(std::string message, std::string hint) const {
  fault_at(place_, std::move(message), std::move(hint));
}

void CaseTable::fault_at(Place place, std::string message, std::string hint) const {
  book_->faults.add(place, std::move(message), std::move(hint));
}

bool CaseTable::need(std::string_view key) const {
  if (has(key)) return true;
  const std::string where = path_.empty() ? "" : fmt::format(" in [{}]", path_);
  fault_here(fmt::format("`{}` is missing{}", key, where));
  return false;
}

}  // namespace pulsewright
