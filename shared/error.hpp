#pragma once
// The one error type of the program. Libraries throw it; cli/main catches it once and maps the kind to an exit code.

#include <stdexcept>
#include <string>

namespace pulsewright {

enum class ErrorKind {
  usage,        // the command line is wrong (exit 2)
  case_file,    // anything wrong in a case or a file that it uses (exit 3)
  file,         // a file named on the command line cannot be read or written (exit 4)
  unphysical,   // the gas state left what is physical (exit 5)
  not_settled,  // the cycles did not repeat (exit 5)
  internal      // a mistake of ours (exit 1)
};

/// what: the fault with both values, the found and the allowed. where: file:line:column, or duct, cell, distance and time.
/// hint: what to do about it; may be empty.
class Error : public std::runtime_error {
 public:
  Error(ErrorKind kind, std::string what, std::string where = {}, std::string hint = {});

  ErrorKind kind() const { return kind_; }
  const std::string& message() const { return message_; }  // without place and hint
  const std::string& where() const { return where_; }
  const std::string& hint() const { return hint_; }

 private:
  ErrorKind kind_;
  std::string message_, where_, hint_;
};

}  // namespace pulsewright
