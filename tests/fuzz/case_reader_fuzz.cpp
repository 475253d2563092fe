// Whatever stands in a case, its reader gives back a case or throws a fault of the case: no crash, no hang, no other
// error. The input is a folder in memory: the case first, then other files, each behind a line "#file NAME"; a line
// "#try ADDRESS=VALUE" changes the case as the option --try does. Nothing on the disk is touched.

#include <algorithm>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "models/describe.hpp"
#include "models/engine_case.hpp"
#include "models/rig_case.hpp"
#include "shared/error.hpp"

namespace pulsewright {
namespace {

struct FuzzedFolder {
  std::map<std::string, std::string> files;
  std::vector<std::string> tries;
};

FuzzedFolder folder_from(std::string_view text) {
  FuzzedFolder folder;
  std::string name = "case.toml";
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    if (line.starts_with("#file "))
      name = line.substr(6);
    else if (line.starts_with("#try "))
      folder.tries.emplace_back(line.substr(5));
    else
      folder.files[name].append(line) += '\n';
    text.remove_prefix(std::min(text.size(), line.size() + 1));
  }
  folder.files["case.toml"];
  return folder;
}

/// An option that cannot be followed is refused as usage, and the case is read without it.
void follow(CaseFile& file, const std::vector<std::string>& tries) {
  for (const std::string& assignment : tries) {
    try {
      file.set(assignment);
    } catch (const Error& error) {
      if (error.kind() != ErrorKind::usage) throw;
    }
  }
}

void read(const FuzzedFolder& folder) {
  CaseFile file = CaseFile::load("case.toml", CaseFolder(folder.files));
  follow(file, folder.tries);
  file.hash();
  if (is_rig(file))
    describe(read_rig_case(file));
  else
    describe(read_engine_case(file));
}

}  // namespace
}  // namespace pulsewright

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace pulsewright;
  const FuzzedFolder folder = folder_from({reinterpret_cast<const char*>(data), size});
  try {
    read(folder);
  } catch (const Error& error) {
    if (error.kind() != ErrorKind::case_file) throw;  // nobody catches it: a finding
  }
  return 0;
}
