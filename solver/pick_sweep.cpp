#include <vector>

#include "solver/sweep.hpp"

namespace pulsewright {

namespace plain {
extern const Sweep sweep;
}
#ifdef PULSEWRIGHT_X86_64
namespace v3 {
extern const Sweep sweep;
}
namespace v4 {
extern const Sweep sweep;
}
#endif

namespace {

std::vector<const Sweep*> find_sweeps() {
  std::vector<const Sweep*> found;
#ifdef PULSEWRIGHT_X86_64
  __builtin_cpu_init();
  const bool has_v3 = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
  const bool has_v4 = has_v3 && __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512vl") &&
                      __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512bw") &&
                      __builtin_cpu_supports("avx512cd");
  if (has_v4) found.push_back(&v4::sweep);
  if (has_v3) found.push_back(&v3::sweep);
#endif
  found.push_back(&plain::sweep);
  return found;
}

}  // namespace

std::span<const Sweep* const> available_sweeps() {
  static const std::vector<const Sweep*> sweeps = find_sweeps();
  return sweeps;
}

const Sweep& pick_sweep() { return *available_sweeps().front(); }

}  // namespace pulsewright
