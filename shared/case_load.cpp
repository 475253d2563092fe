#include "shared/case_load.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "shared/case_toml.hpp"
#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_bytes = 1 << 20;  // a case is written by hand: a megabyte is a mistake
constexpr std::size_t most_files = 64;

bool is_text(const std::string& text) {
  return std::none_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20 && c != '\n' && c != '\r' && c != '\t') || byte == 0x7f;
  });
}

bool is_blank(const std::string& text) { return text.find_first_not_of(" \t\r\n") == std::string::npos; }

class Loader {
 public:
  Loader(const CaseFolder& folder, CaseFaults& faults) : folder_(folder), faults_(faults) {}

  CaseValue file(const fs::path& path) {
    const std::string text = folder_.read(path, most_bytes);
    open_.push_back(folder_.identity(path));
    CaseValue own = parsed(path.string(), text);
    CaseValue result;
    if (const CaseEntry* use = own.find("use")) {
      for (const CaseValue& item : used_names(*use)) lay_over(result, used_file(path.parent_path(), item));
    }
    lay_over(result, own);
    std::erase_if(result.entries, [](const CaseEntry& e) { return e.key == "use"; });
    open_.pop_back();
    return result;
  }

  CaseValue text(const std::string& name, const std::string& text) {
    CaseValue own = parsed(name, text);
    if (const CaseEntry* use = own.find("use"))
      faults_.add(use->place, "`use` needs a case that lies in a file: there is no folder to look in");
    return own;
  }

 private:
  CaseValue parsed(const std::string& name, const std::string& text) {
    const std::size_t source = faults_.add_source(name, text);
    CaseValue nothing;
    nothing.place.source = source;
    if (is_blank(text)) {
      faults_.add(nothing.place, "this file is empty", "a case needs at least an engine or a rig");
      return nothing;
    }
    if (!is_text(text)) {
      faults_.add(nothing.place, "this is not a text file: it holds binary data", "a case is a TOML text");
      return nothing;
    }
    try {
      CaseValue root = parse_toml(text, source);
      root.place = nothing.place;
      return root;
    } catch (const TomlFault& fault) {
      faults_.add(fault.place, "not valid TOML: " + printable(fault.message));
      return nothing;
    }
  }

  std::vector<CaseValue> used_names(const CaseEntry& use) {
    if (use.value.kind == CaseKind::text) return {use.value};
    const auto is_name = [](const CaseValue& v) { return v.kind == CaseKind::text; };
    if (use.value.kind == CaseKind::list && std::all_of(use.value.items.begin(), use.value.items.end(), is_name))
      return use.value.items;
    const auto odd = std::find_if_not(use.value.items.begin(), use.value.items.end(), is_name);
    const CaseValue& wrong = use.value.kind == CaseKind::list ? *odd : use.value;
    faults_.add(wrong.place, "`use` takes a list of file names, but this is " + described(wrong),
                "such as use = [\"engine.toml\", \"turbo.toml\"]");
    return {};
  }

  CaseValue used_file(const fs::path& folder, const CaseValue& item) {
    const fs::path name(item.text);
    const auto refuse = [&](const std::string& what, const std::string& hint = {}) {
      faults_.add(item.place, what, hint);
      return CaseValue{};
    };
    if (const std::string why = why_not_beside(item.text); !why.empty())
      return refuse("`use`: " + why, "`use` takes files beside the case or in a folder below it");
    if (faults_.source_count() >= most_files) return refuse("`use` draws in more than 64 files");
    const fs::path path = folder / name;
    if (std::string ring = ring_through(path); !ring.empty()) return refuse("`use` goes round in a circle: " + ring);
    try {
      return file(path);
    } catch (const Error& error) {
      if (error.kind() != ErrorKind::file) throw;
      return refuse("`use` of " + in_quotes(item.text) + ": " + error.message(),
                    "looked for " + in_quotes(path.string()));
    }
  }

  // "a.toml, b.toml, a.toml" if the file is being read already.
  std::string ring_through(const fs::path& path) const {
    const auto it = std::find(open_.begin(), open_.end(), folder_.identity(path));
    if (it == open_.end()) return {};
    std::string text;
    for (auto each = it; each != open_.end(); ++each) text += printable(each->filename().string()) + " uses ";
    return text + printable(it->filename().string());
  }

  const CaseFolder& folder_;
  CaseFaults& faults_;
  std::vector<fs::path> open_;  // the files being read, outermost first
};

}  // namespace

CaseValue load_case(const fs::path& path, const CaseFolder& folder, CaseFaults& faults) {
  CaseValue root = Loader(folder, faults).file(path);
  faults.throw_if_any();
  return root;
}

CaseValue load_case_text(const std::string& text, const std::string& name, CaseFaults& faults) {
  CaseValue root = Loader({}, faults).text(name, text);
  faults.throw_if_any();
  return root;
}

}  // namespace pulsewright
