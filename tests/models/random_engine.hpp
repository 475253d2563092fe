#pragma once
// Engines with manifolds that nobody would build, but that are valid: 1 to 8 cylinders, any firing angles, sizes, cams
// and boost; logs, single merges, merges in groups, divided housings, steps in bore, taps and gates. As the text of a
// case, so that the reader is tried as well. One seed, one engine, on every machine.

#include <cstdint>
#include <string>

namespace pulsewright::test {

std::string random_engine(std::uint64_t seed);

}  // namespace pulsewright::test
