// What the README tells its reader to type works, in the order in which it stands there.

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

namespace fs = std::filesystem;

std::string readme() {
  std::ifstream in(std::string(PULSEWRIGHT_ROOT) + "/README.md");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// Lines of its ```sh blocks that call the program.
std::vector<std::string> commands() {
  std::vector<std::string> found;
  std::istringstream in(readme());
  bool shell = false;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("```"))
      shell = line == "```sh";
    else if (shell && line.starts_with("./pulsewright"))
      found.push_back(line);
  }
  return found;
}

bool is_verify(const std::string& command) {
  return command.starts_with("./pulsewright verify");
}  // the suite `verification` runs it

/// The exit code of a line as a shell runs it; what it says goes to `said`.
int shell(const std::string& line, const fs::path& folder, std::string& said) {
  const std::string whole = "cd '" + folder.string() + "' && { " + line + "\n} >said 2>&1 </dev/null";
  const int status = std::system(whole.c_str());
  std::ifstream in(folder / "said");
  std::ostringstream text;
  text << in.rdbuf();
  said = text.str();
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128;
}

TEST(Readme, EveryCommandOfTheProgramWorksInTheOrderWritten) {
  const Workshop shop;
  fs::copy(PULSEWRIGHT_CASES, shop.folder() / "cases", fs::copy_options::recursive);
  fs::create_directory(shop.folder() / "out");  // as scripts/demo leaves it
  fs::create_symlink(PULSEWRIGHT_PROGRAM, shop.folder() / "pulsewright");
  ASSERT_GE(commands().size(), 6u) << "each verb but verify is shown";
  for (const std::string& command : commands()) {
    if (is_verify(command)) continue;
    std::string said;
    EXPECT_EQ(shell(command, shop.folder(), said), 0) << command << '\n' << said;
  }
}

TEST(Readme, ShowsEveryVerb) {
  const std::string text = readme();
  for (const char* verb : {"start", "check", "run", "compare", "trace", "verify"})
    EXPECT_NE(text.find("./pulsewright " + std::string(verb)), std::string::npos) << verb;
}

std::set<std::string> paths(const std::string& pattern) {
  std::set<std::string> found;
  const std::string text = readme();
  const std::regex path(pattern);
  for (std::sregex_iterator at(text.begin(), text.end(), path), end; at != end; ++at) found.insert(at->str());
  return found;
}

TEST(Readme, ItsScriptsCanBeRun) {
  const auto scripts = paths("scripts/[a-z_]+");
  EXPECT_TRUE(scripts.contains("scripts/demo") && scripts.contains("scripts/test"));
  for (const std::string& script : scripts)
    EXPECT_EQ(access((std::string(PULSEWRIGHT_ROOT) + "/" + script).c_str(), X_OK), 0) << script;
}

TEST(Readme, ItsFilesAreThere) {
  for (const std::string& file : paths("cases/[a-z0-9_]+\\.toml|DEVELOPERS\\.md|cli/README\\.md"))
    EXPECT_TRUE(fs::exists(std::string(PULSEWRIGHT_ROOT) + "/" + file)) << file;
}

}  // namespace
}  // namespace pulsewright
