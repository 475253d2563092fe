#include "cli/loaded_case.hpp"

#include "cli/case_words.hpp"
#include "shared/case_file.hpp"
#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

std::string label_of(const std::string& title, const std::vector<std::string>& tries) {
  std::string label = title;
  for (const std::string& change : tries) label += "; " + change_in_words(change);
  return label;
}

}  // namespace

std::string idle_tries_text(const LoadedCase& loaded) {
  std::string text;
  for (const std::string& change : loaded.idle_tries)
    text += "--try " + printable(change) + " changes nothing: the case says that already\n";
  return text;
}

LoadedCase load_case(const std::string& path, const CaseOptions& options) {
  CaseFile file = CaseFile::load(path);
  std::vector<std::string> idle;
  for (const std::string& change : options.tries) {
    const std::string before = file.text();
    file.set(change);
    if (file.text() == before) idle.push_back(change);
  }
  LoadedCase loaded{path, {}, file.text(), file.hash(), {}, {}, std::move(idle)};
  if (is_rig(file)) {
    if (!options.rpm.empty()) throw Error(ErrorKind::usage, "a rig has no speed: leave --rpm out for " + path);
    loaded.rig = read_rig_case(file, options.cell);
  } else {
    loaded.engine = read_engine_case(file, options.cell, options.rpm);
  }
  loaded.label = label_of(loaded.title(), options.tries);
  return loaded;
}

}  // namespace pulsewright
