#pragma once
// A case being written: tables with aligned keys and a comment behind each value.

#include <string>
#include <string_view>
#include <vector>

namespace pulsewright {

struct CaseLine {
  std::string key;
  std::string value;    // as TOML: "\"86 mm\"", "7500"
  std::string comment;  // behind it; may be empty
  bool said = true;     // else the line stands behind a #
};

/// One table. `path` and `name` tell which one it is to what is assumed: "engine.exhaust_valve"; "joint", "merge".
struct CaseBlock {
  std::string head;  // "[engine]", "[[joint]]"; empty for the top of the file
  std::string path;
  std::string name;
  std::string comment;  // behind the head
  std::vector<CaseLine> lines;
  std::vector<std::string> remarks;  // comments of their own below the lines
};

/// "\"86 mm\"": a text as TOML writes it. Throws Error (usage) for quotes, backslashes and line ends.
std::string toml_text(std::string_view text);

std::string block_text(const CaseBlock& block);
std::string case_text(const std::vector<CaseBlock>& blocks);

}  // namespace pulsewright
