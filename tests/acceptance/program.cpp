#include "tests/acceptance/program.hpp"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace pulsewright {
namespace {

std::string slurp(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

[[noreturn]] void become_program(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                                 const char* out, const char* err) {
  std::vector<char*> argv{const_cast<char*>(PULSEWRIGHT_PROGRAM)};
  for (const std::string& a : arguments) argv.push_back(const_cast<char*>(a.c_str()));
  argv.push_back(nullptr);
  if (chdir(folder.c_str()) != 0) _exit(120);
  dup2(open("/dev/null", O_RDONLY), 0);
  dup2(open(out, O_WRONLY | O_CREAT | O_TRUNC, 0600), 1);
  dup2(open(err, O_WRONLY | O_CREAT | O_TRUNC, 0600), 2);
  execv(PULSEWRIGHT_PROGRAM, argv.data());
  _exit(121);
}

std::filesystem::path fresh_folder() {
  std::string name = (std::filesystem::temp_directory_path() / "pulsewright-test-XXXXXX").string();
  if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
  return name;
}

}  // namespace

Outcome run_program(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                    const std::function<void(int pid)>& meanwhile) {
  const std::filesystem::path streams = fresh_folder();
  const std::string out = streams / "out", err = streams / "err";
  const pid_t pid = fork();
  if (pid < 0) throw std::runtime_error("fork failed");
  if (pid == 0) become_program(arguments, folder, out.c_str(), err.c_str());
  if (meanwhile) meanwhile(pid);
  int status = 0;
  waitpid(pid, &status, 0);
  const Outcome outcome{WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status), slurp(out), slurp(err)};
  std::filesystem::remove_all(streams);
  return outcome;
}

Workshop::Workshop() : folder_(fresh_folder()) {
  for (const auto& entry : std::filesystem::directory_iterator(PULSEWRIGHT_CASES))
    if (entry.is_regular_file()) std::filesystem::copy(entry.path(), folder_);
}

Workshop::~Workshop() {
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

void Workshop::write(const std::string& name, const std::string& text) const {
  std::ofstream(folder_ / name, std::ios::binary) << text;
}

std::string Workshop::read(const std::string& name) const { return slurp(folder_ / name); }

std::vector<std::string> Workshop::files() const {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder_)) names.push_back(entry.path().filename());
  std::ranges::sort(names);
  return names;
}

}  // namespace pulsewright
