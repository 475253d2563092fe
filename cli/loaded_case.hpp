#pragma once
// A case from the command line, read and ready to run.

#include <optional>
#include <string>
#include <vector>

#include "models/engine_case.hpp"
#include "models/rig_case.hpp"

namespace pulsewright {

/// What the command line says on top of a case.
struct CaseOptions {
  std::vector<double> rpm;         // instead of the case's
  double cell = 0;                 // m; 0: the case's
  std::vector<std::string> tries;  // 'each_primary.tube="NPS 1-1/2 sch 10S"'
};

struct LoadedCase {
  std::string file;   // as named
  std::string label;  // title, or file and what was tried
  std::string text;   // merged, canonical
  std::string hash;
  std::optional<RigCase> rig;
  std::optional<EngineCase> engine;
  std::vector<std::string> idle_tries;  // that the case says already

  const std::string& title() const { return rig ? rig->title : engine->title; }
};

/// One line for each change that changes nothing; for standard error.
std::string idle_tries_text(const LoadedCase& loaded);

/// Throws Error: file or case_file with every fault.
LoadedCase load_case(const std::string& path, const CaseOptions& options);

}  // namespace pulsewright
