#include "solver/sweep.hpp"

namespace pulsewright {

namespace plain {
extern const Sweep sweep;
}
#ifdef PULSEWRIGHT_HAS_V3
namespace v3 {
extern const Sweep sweep;
}
#endif

const Sweep& plain_sweep() { return plain::sweep; }

const Sweep& pick_sweep() {
#ifdef PULSEWRIGHT_HAS_V3
  static const bool modern = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
  if (modern) return v3::sweep;
#endif
  return plain::sweep;
}

}  // namespace pulsewright
