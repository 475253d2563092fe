#pragma once
// The manifold of a random engine, as tables of a case.

#include <string>

#include "tests/solver/random_numbers.hpp"

namespace pulsewright::test {

struct RandomManifold {
  std::string text;
  int scrolls;
};

/// `tube`: the usual bore of a primary, mm.
RandomManifold random_manifold(RandomNumbers& random, int cylinders, double tube);

}  // namespace pulsewright::test
