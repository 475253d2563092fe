#include "models/restriction.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "solver/throttle.hpp"

namespace pulsewright {
namespace {

struct ButterflyPoint {
  double angle, loss;  // degrees from wide open; velocity heads
};
// Weisbach's measurements; wide open: plate and shaft alone.
constexpr std::array<ButterflyPoint, 16> butterfly = {{{0, 0.20},
                                                       {5, 0.24},
                                                       {10, 0.52},
                                                       {15, 0.90},
                                                       {20, 1.54},
                                                       {25, 2.51},
                                                       {30, 3.91},
                                                       {35, 6.22},
                                                       {40, 10.8},
                                                       {45, 18.7},
                                                       {50, 32.6},
                                                       {55, 58.8},
                                                       {60, 118},
                                                       {65, 256},
                                                       {70, 751},
                                                       {90, 1e12}}};

double jet_share(const ButterflyPoint& p) { return jet_area_of_loss(p.loss, 1); }

}  // namespace

// Equation   jet/hole = 0.63 + 0.37 (hole/pipe)^3
// Source     fit to J. Weisbach's contraction of a sharp edge as pipe-flow handbooks print it (0.632 at 0.2, 0.681 at 0.5,
//            0.892 at 0.9; fit from memory)
// Symbols    areas m2
// Valid for  sharp edges, hole up to the pipe; a wider one leaves the pipe as it is
// Tested by  tests/models/restriction_test.cpp
double jet_of_plate(double hole, double pipe) {
  const double share = std::min(hole / pipe, 1.0);
  return std::min(hole, pipe) * (0.63 + 0.37 * share * share * share);
}

// Equation   linear in the jet's share of the pipe between the measured angles; from 70 to 90 degrees down to nothing
// Source     J. Weisbach, throttle valve in a round pipe, as handbooks print it (5, 10, 20, 40, 60 degrees looked up, the
//            others and the wide-open value from memory)
// Symbols    opening 1 wide open, 0 shut: angle = 90 (1 - opening) degrees
// Valid for  a thin plate that fills the pipe when shut
// Tested by  tests/models/restriction_test.cpp
double jet_of_butterfly(double opening, double pipe) {
  const double angle = 90 * (1 - std::clamp(opening, 0.0, 1.0));
  const auto next = std::ranges::find_if(butterfly, [&](const ButterflyPoint& p) { return p.angle >= angle; });
  if (next == butterfly.begin()) return pipe * jet_share(*next);
  const auto before = next - 1;
  const double share = (angle - before->angle) / (next->angle - before->angle);
  const double wide = jet_share(*before), narrow = next + 1 == butterfly.end() ? 0 : jet_share(*next);
  return pipe * (wide + share * (narrow - wide));
}

double butterfly_loss(double opening) {
  const double jet = jet_of_butterfly(opening, 1);
  return (1 / jet - 1) * (1 / jet - 1);
}

}  // namespace pulsewright
