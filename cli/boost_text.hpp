#pragma once
// What is said about the boost: who sets it, from which rpm it is there, whether the gates hold it.

#include <string>
#include <vector>

#include "cli/layout.hpp"

namespace pulsewright {

/// How the boost of these layouts came about, in one sentence.
std::string boost_sentence(const std::vector<Layout>& layouts);

/// Gates that cannot hold, targets that are imposed and not reached, speeds without any boost: what a builder must not
/// miss. A line each.
std::vector<std::string> boost_warnings(const std::vector<Layout>& layouts);

/// From which rpm the boost is there, how long it takes after a load step; for several layouts how far they are apart.
std::vector<std::string> boost_lines(const std::vector<Layout>& layouts);

/// The state of a speed in a word or two: "held", "cannot hold".
std::string boost_word(BoostFigures::State state);

/// The bore that would hold, where one figure says it: of the only gate that holds, or of several alike.
std::optional<double> bore_that_would_hold(const SpeedResult& speed);

}  // namespace pulsewright
