#include "cli/interrupt.hpp"

#include <csignal>

namespace pulsewright {
namespace {

volatile std::sig_atomic_t asked = 0;

void note(int signal) {
  asked = 1;
  std::signal(signal, SIG_DFL);
}

}  // namespace

void watch_for_interrupt() {
  std::signal(SIGINT, note);
  std::signal(SIGTERM, note);
}

void end_at_interrupt() {
  std::signal(SIGINT, SIG_DFL);
  std::signal(SIGTERM, SIG_DFL);
}

bool interrupt_asked() { return asked != 0; }

void stop_if_interrupted() {
  if (interrupt_asked()) throw Interrupted{};
}

}  // namespace pulsewright
