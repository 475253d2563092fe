#pragma once
// What CaseFile owns and its CaseTables share. Only the case reader's own files include this.

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "shared/case_faults.hpp"
#include "shared/case_folder.hpp"
#include "shared/case_value.hpp"

namespace pulsewright {

struct CaseBook {
  CaseFaults faults;
  CaseValue root;
  CaseFolder folder;                                           // with the case in it
  std::filesystem::path beside;                                // of the case: files that it names lie there
  std::map<const CaseValue*, std::vector<std::string>> asked;  // per table: the keys that its reader knows

  void note(const CaseValue* table, std::string_view key) {
    std::vector<std::string>& keys = asked[table];
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.emplace_back(key);
  }
};

}  // namespace pulsewright
