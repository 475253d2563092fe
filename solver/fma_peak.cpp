#include "solver/fma_peak.hpp"

#include <algorithm>
#include <chrono>

namespace pulsewright {
namespace {

constexpr int chains = 12, lanes = 4;
constexpr long turns = 100000;

// One vector of four doubles; the compiler makes it one register where the machine has them.
using Vector [[gnu::vector_size(8 * lanes)]] = double;

#if defined(__x86_64__) && defined(PULSEWRIGHT_X86_64)
[[gnu::target("arch=x86-64-v3")]]
#endif
double
run_chains(double factor) {
  Vector x[chains];
  for (int k = 0; k < chains; ++k) x[k] = Vector{1, 2, 3, 4} + static_cast<double>(k);
  const Vector a = Vector{} + factor, b = Vector{} + 1e-9;
  for (long i = 0; i < turns; ++i)
#pragma GCC unroll 12
    for (int k = 0; k < chains; ++k) x[k] = x[k] * a + b;
  double sum = 0;
  for (const Vector& v : x)
    for (int j = 0; j < lanes; ++j) sum += v[j];
  return sum;
}

}  // namespace

double measure_fma_peak() {
  double best = 0;
  volatile double keep = 0;
  for (int round = 0; round < 20; ++round) {
    const auto begun = std::chrono::steady_clock::now();
    keep = keep + run_chains(0.999999);
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
    best = std::max(best, 2e-9 * chains * lanes * turns / seconds);
  }
  return best;
}

}  // namespace pulsewright
