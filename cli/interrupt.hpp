#pragma once
// Ctrl-C: the first one asks the run to stop at the next cycle, so that nothing half-written stays; the second kills.

namespace pulsewright {

void watch_for_interrupt();
void end_at_interrupt();  // the first one kills again: for when nothing is written, and a question is open
bool interrupt_asked();

/// Thrown where a run finds that it was asked to stop.
struct Interrupted {};

/// Throws Interrupted when asked to stop.
void stop_if_interrupted();

}  // namespace pulsewright
