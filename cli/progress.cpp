#include "cli/progress.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <iostream>

#include "cli/interrupt.hpp"

namespace pulsewright {

ProgressLine::ProgressLine(std::string what)
    : what_(std::move(what)),
      shown_(isatty(STDERR_FILENO) != 0),
      begun_(std::chrono::steady_clock::now()),
      last_(begun_) {}

ProgressLine::~ProgressLine() {
  if (shown_) std::cerr << "\r\033[K" << std::flush;
}

bool ProgressLine::operator()(double share) {
  const auto now = std::chrono::steady_clock::now();
  if (shown_ && now - last_ > std::chrono::milliseconds(100) && share > 0) {
    const double gone = std::chrono::duration<double>(now - begun_).count();
    std::cerr << fmt::format("\r\033[K{} {:3.0f} %, {:.0f} s left", what_, 100 * share, gone * (1 - share) / share)
              << std::flush;
    last_ = now;
  }
  return !interrupt_asked();
}

}  // namespace pulsewright
