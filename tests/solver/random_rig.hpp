#pragma once
// Random rigs for tests: any valid network of ducts, joints and ends, within what the program accepts.

#include "solver/network.hpp"
#include "tests/solver/random_numbers.hpp"

namespace pulsewright {

/// 1 to 8 ducts of random length, bore, taper, losses and gas, their ends closed, open, supplied, throttled, anechoic, driven by a
/// signal or a vessel, or tied together by joints of either law, some with gates.
Network random_rig(RandomNumbers& random, const Gas& gas);

}  // namespace pulsewright
