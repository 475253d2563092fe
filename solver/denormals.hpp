#pragma once
// Flushes denormal numbers to zero while it lives: a passive fraction that decays toward zero would otherwise slow the
// loops tenfold.

#if defined(__SSE2__)
#include <xmmintrin.h>
#endif

namespace pulsewright {

class DenormalsFlushed {
 public:
#if defined(__SSE2__)
  DenormalsFlushed() : saved_(_mm_getcsr()) { _mm_setcsr(saved_ | 0x8040u); }
  ~DenormalsFlushed() { _mm_setcsr(saved_); }

 private:
  unsigned saved_;
#else
  DenormalsFlushed() = default;
  ~DenormalsFlushed() {}
#endif
 public:
  DenormalsFlushed(const DenormalsFlushed&) = delete;
  DenormalsFlushed& operator=(const DenormalsFlushed&) = delete;
};

}  // namespace pulsewright
