#pragma once
// What every verb of the command line is: a row in the table of main.cpp.

#include <functional>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace pulsewright {

/// Exit codes, the contract with scripts.
enum ExitCode { done = 0, internal = 1, usage = 2, bad_case = 3, bad_file = 4, not_physical = 5, interrupted = 130 };

/// Adds the verb's options to its subcommand and returns what runs it, giving an exit code. Errors are thrown.
using VerbSetup = std::function<int()> (*)(CLI::App& subcommand);

struct Verb {
  const char* name;
  const char* help;  // one line
  VerbSetup setup;
};

std::function<int()> set_up_start(CLI::App&);
std::function<int()> set_up_check(CLI::App&);
std::function<int()> set_up_run(CLI::App&);
std::function<int()> set_up_compare(CLI::App&);
std::function<int()> set_up_trace(CLI::App&);
std::function<int()> set_up_verify(CLI::App&);

}  // namespace pulsewright
