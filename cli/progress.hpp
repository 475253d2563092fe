#pragma once
// Progress with time left, on standard error: one line rewritten on a terminal, nothing elsewhere.

#include <chrono>
#include <string>

namespace pulsewright {

class ProgressLine {
 public:
  explicit ProgressLine(std::string what);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  /// Share done, 0..1. Returns false when the user asked to stop.
  bool operator()(double share);

 private:
  std::string what_;
  bool shown_;
  std::chrono::steady_clock::time_point begun_, last_;
};

}  // namespace pulsewright
