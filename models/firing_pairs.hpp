#pragma once
// Which cylinders should share a pipe: whose blowdown falls into whose overlap, and for how many degrees. Worked out at
// the valves from the cam card and the firing angles alone; the way through the pipes comes on top of it.
//
// A definition of ours, since the trade has none: blowdown runs from exhaust opening to bottom dead centre, overlap is
// while exhaust and intake of one cylinder are both open (lift above open_lift).

#include <string>
#include <vector>

#include "models/engine_case.hpp"

namespace pulsewright {

struct FiringPair {
  int blows, hears;         // cylinders, from 1
  double fires_after;       // crank angle from `hears` firing to `blows` firing, rad, within a cycle
  double opens_before_end;  // from exhaust opening of `blows` to the end of the overlap of `hears`, rad; < 0: after it
  double into_overlap;      // blowdown that falls into the other's overlap, rad
  bool one_scroll;          // both blow into the same turbine entry
  std::string meet_at;      // joint where their pipes come together; empty where they do not before the wheel
};

/// Every pair of different cylinders, `hears` in firing order, then `blows` by how soon it fires after.
std::vector<FiringPair> firing_pairs(const EngineCase& engine);

/// Cylinders whose pipes meet before the wheel.
struct PipeGroup {
  std::vector<int> cylinders;        // from 1, rising
  std::vector<std::string> entries;  // of turbines, as a case addresses them: "turbine.a"
};
std::vector<PipeGroup> pipe_groups(const EngineCase& engine);

/// One way to part the cylinders over two pipes.
struct Parting {
  std::vector<int> one, other;  // cylinders, from 1; cylinder 1 is in the first
  double apart = 0;             // least crank angle from one firing to the next in a shared pipe, rad
  double worst = 0;             // blowdown into overlap of the worst pair that shares a pipe, rad
  double sum = 0;               // of all pairs that share one, rad
};

/// All ways to part them into halves (odd counts: as near as can be): those first that fire furthest apart in a shared
/// pipe, as the trade parts them, and of these the least sum. At most 10 cylinders; none for fewer than 3.
std::vector<Parting> partings(const EngineCase& engine);

/// "cylinder 3's exhaust opens 72 degrees before cylinder 1's overlap ends: 14 degrees of its blowdown land in it"
std::string in_a_sentence(const FiringPair& pair);

/// What `check` and `start` print: group by group, the worst pair of each, and how else they could be parted.
std::string firing_pairs_text(const EngineCase& engine);

}  // namespace pulsewright
