#pragma once
// Small good cases as text, for tests that change one thing in them.

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <vector>

#include "models/engine_case.hpp"
#include "models/rig_case.hpp"
#include "shared/error.hpp"

namespace pulsewright::test {

inline const std::string engine_text = R"(title = "Four into one"
[engine]
arrangement = "inline 4"
bore = "86 mm"
stroke = "86 mm"
redline = 7500
[engine.exhaust_port]
exit = "oval 36 mm x 28 mm"
[charge]
boost_gauge = "1.0 bar"
[turbine]
[run]
rpm = [3000]
cell = "5 mm"
[each_primary]
tube = "NPS 1-1/4 sch 10S"
angle = "15 deg"
to = "merge"
[[primary]]
cylinder = 1
length = "310 mm"
[[primary]]
cylinder = 2
length = "220 mm"
[[primary]]
cylinder = 3
length = "240 mm"
[[primary]]
cylinder = 4
length = "340 mm"
[[joint]]
name = "merge"
outlet = "turbine"
[[wastegate]]
at = "merge"
[[duct]]
name = "downpipe"
from = "turbine.out"
to = "air"
length = "900 mm"
bore = "63.5 mm"
)";

inline const std::string rig_text = R"(title = "Tee"
[rig]
duration = "1 ms"
gas = { gamma = 1.4, R = 287.0 }
cell = "5 mm"
[[duct]]
name = "run in"
from = "far left"
to = "tee"
to_angle = "0 deg"
length = "300 mm"
bore = "40 mm"
pressure = "1 bar"
temperature = "300 K"
[[duct]]
name = "stub"
from = "blind"
to = "tee"
to_angle = "90 deg"
length = "200 mm"
bore = "30 mm"
pressure = "1 bar"
temperature = "300 K"
[[duct]]
name = "run out"
from = "tee"
to = "far right"
length = "400 mm"
bore = "40 mm"
pressure = "1 bar"
temperature = "300 K"
[[joint]]
name = "tee"
outlet = "run out"
[[end]]
name = "far left"
kind = "anechoic"
[[end]]
name = "blind"
kind = "closed"
[[end]]
name = "far right"
kind = "open"
pressure = "1 bar"
temperature = "300 K"
)";

/// The text with the first `what` replaced; it must be there.
inline std::string with(std::string text, const std::string& what, const std::string& by) {
  const auto at = text.find(what);
  if (at == std::string::npos) throw std::logic_error("not in the text: " + what);
  return text.replace(at, what.size(), by);
}

inline EngineCase read_engine(const std::string& text) {
  CaseFile file = CaseFile::from_text(text, "case.toml");
  return read_engine_case(file);
}

inline RigCase read_rig(const std::string& text) {
  CaseFile file = CaseFile::from_text(text, "case.toml");
  return read_rig_case(file);
}

/// What is said about a bad case; empty for a good one. Anything but a fault of the case comes through.
template <class Read>
std::string fault_in(Read read, const std::string& text) {
  try {
    read(text);
  } catch (const Error& error) {
    if (error.kind() != ErrorKind::case_file) throw;
    return error.what();
  }
  return {};
}
inline std::string engine_fault(const std::string& text) { return fault_in(read_engine, text); }
inline std::string rig_fault(const std::string& text) { return fault_in(read_rig, text); }

/// Whether a fault says all these words.
inline testing::AssertionResult says(const std::string& fault, const std::vector<std::string>& parts) {
  for (const std::string& part : parts)
    if (fault.find(part) == std::string::npos)
      return testing::AssertionFailure() << "'" << part << "' is not in:\n" << fault;
  return testing::AssertionSuccess();
}

}  // namespace pulsewright::test
