#pragma once
// The built program as a user calls it: arguments in, exit code, standard output and standard error out.

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace pulsewright {

struct Outcome {
  int exit_code;  // 128 + signal where a signal ended it
  std::string out, err;
};

/// Runs the program in `folder` with no standard input. meanwhile(pid) is called once it has started.
Outcome run_program(const std::vector<std::string>& arguments, const std::filesystem::path& folder,
                    const std::function<void(int pid)>& meanwhile = {});

/// A folder of its own for one test, with the demo cases in it; removed at the end.
class Workshop {
 public:
  Workshop();
  ~Workshop();
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;

  Outcome run(const std::vector<std::string>& arguments, const std::function<void(int pid)>& meanwhile = {}) const {
    return run_program(arguments, folder_, meanwhile);
  }
  void write(const std::string& name, const std::string& text) const;
  std::string read(const std::string& name) const;
  std::vector<std::string> files() const;  // names, sorted
  const std::filesystem::path& folder() const { return folder_; }

 private:
  std::filesystem::path folder_;
};

}  // namespace pulsewright
