#include "models/pulse_parts.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace pulsewright {
namespace {

constexpr double longest_climb_deg = 90;  // of a pulse's front; assumed

std::size_t sample(long i) {
  const long n = static_cast<long>(record_samples);
  return static_cast<std::size_t>(((i % n) + n) % n);
}

}  // namespace

double mean(const Series& s) { return std::accumulate(s.begin(), s.end(), 0.0) / static_cast<double>(s.size()); }

double at_degree(const Series& s, double deg) {
  const double x = deg / record_step_deg, whole = std::floor(x);
  const long i = static_cast<long>(whole);
  return s[sample(i)] + (x - whole) * (s[sample(i + 1)] - s[sample(i)]);
}

// Equation   X = (p/p_m)^G, X+- = (X + 1 +- (g-1)(u - u_m)/(2 c_m))/2, p+- = p_m X+-^(1/G), G = (g-1)/2g
// Source     superposition of finite waves in one gas: F. K. Bannister, G. F. Mucklow, Proc. IMechE 159 (1948) 269 (second
//            hand), taken about the cycle's mean flow
// Symbols    m cycle mean; g = mean of c^2 rho/p; p+ runs along the duct, p- against it
// Valid for  one gas without entropy waves; the means are not one state of the wave, so parts of pulses of 1 bar err by some
//            per cent of the swing
// Tested by  tests/models/pulse_parts_test.cpp
WaveParts wave_parts(const PlaceRecord& at) {
  const double p_m = mean(at.p), u_m = mean(at.u), c_m = mean(at.c);
  double g = 0;
  for (std::size_t i = 0; i < at.p.size(); ++i) g += at.c[i] * at.c[i] * at.rho[i] / at.p[i];
  g /= static_cast<double>(at.p.size());
  const double G = (g - 1) / (2 * g);
  WaveParts parts;
  parts.forward.reserve(at.p.size());
  parts.backward.reserve(at.p.size());
  for (std::size_t i = 0; i < at.p.size(); ++i) {
    const double X = std::pow(at.p[i] / p_m, G), shift = (g - 1) * (at.u[i] - u_m) / (2 * c_m);
    parts.forward.push_back(p_m * std::pow((X + 1 + shift) / 2, 1 / G));
    parts.backward.push_back(p_m * std::pow((X + 1 - shift) / 2, 1 / G));
  }
  return parts;
}

Rise next_rise(const Series& s, double from_deg, double before_deg) {
  const auto [low, high] = std::minmax_element(s.begin(), s.end());
  const double least = 0.1 * (*high - *low);
  const long start = static_cast<long>(std::ceil(from_deg / record_step_deg));
  const long earliest = start - static_cast<long>(before_deg / record_step_deg);
  const long window = static_cast<long>(longest_climb_deg / record_step_deg), n = static_cast<long>(record_samples);
  const auto value = [&](long i) { return s[sample(i)]; };
  const auto lowest_before = [&](long at) {
    long lowest = at;
    for (long j = at; j >= std::max(at - window, earliest); --j)
      if (value(j) < value(lowest)) lowest = j;
    return lowest;
  };
  long peak = start;
  for (long i = start; i < start + n; ++i) {
    if (value(i) > value(peak)) peak = i;
    if (value(i) > value(peak) - least) continue;  // a ripple on the way up is no peak
    if (value(peak) - value(lowest_before(peak)) > least) break;
    peak = i;
  }
  const long foot = lowest_before(peak);
  Rise rise{static_cast<double>(peak) * record_step_deg, 0, value(foot), value(peak)};
  const double threshold = rise.foot + 0.1 * rise.height();
  double steepest = 0;
  rise.steepest_deg = rise.deg;
  for (long i = foot; i < peak; ++i) {
    const double climb = value(i + 1) - value(i);
    if (climb > steepest) steepest = climb, rise.steepest_deg = (static_cast<double>(i) + 0.5) * record_step_deg;
  }
  for (long i = foot; i < peak; ++i)
    if (value(i) <= threshold && value(i + 1) > threshold) {
      const double part = (threshold - value(i)) / (value(i + 1) - value(i));
      rise.deg = (static_cast<double>(i) + part) * record_step_deg;
      break;
    }
  return rise;
}

}  // namespace pulsewright
