#pragma once
// One value of a case by its address: joint.merge.throat, each_primary.tube, primary.1.length, run.rpm.

#include <string>
#include <string_view>

#include "shared/case_faults.hpp"
#include "shared/case_value.hpp"

namespace pulsewright {

/// Puts a value into the tree. `assignment` is ADDRESS=VALUE, the value in TOML: each_primary.tube="NPS 1-1/2 sch 10S".
/// In a list of tables the next word picks one: by its name, else by its cylinder, else by its number from 1; a list of
/// one needs no word. `origin` ("--try") is shown as the file in later messages. Throws Error (usage).
void set_by_address(CaseValue& root, std::string_view assignment, const std::string& origin, CaseFaults& faults);

}  // namespace pulsewright
