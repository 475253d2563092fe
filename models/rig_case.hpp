#pragma once
// A rig case: ducts in time, no engine. Read from a case file, checked, and set up for run_rig.

#include <string>
#include <vector>

#include "models/assumed.hpp"
#include "models/rig_run.hpp"
#include "shared/case_file.hpp"

namespace pulsewright {

struct RigCase {
  std::string title;
  RigSetup setup;
  std::vector<AssumedEntry> assumed;
};

/// Whether the case is a rig (it has a table [rig]) or an engine.
bool is_rig(CaseFile& file);

/// `cell` overrules that of the case where it is above 0. Throws Error (case_file) with every fault of the case.
RigCase read_rig_case(CaseFile& file, double cell = 0);

}  // namespace pulsewright
