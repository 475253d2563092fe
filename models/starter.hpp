#pragma once
// A first case to edit: what `start` writes from the few things that the fabricator knows, everything else assumed and
// marked.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "models/engine_case.hpp"

namespace pulsewright {

/// What he says, each as he would write it in a case; empty where he does not know.
struct StarterOptions {
  std::string title = "My manifold";
  std::string cylinders;    // "4", or an arrangement: "boxer 4"
  std::string bore;         // "86 mm", "3.386 in"
  std::string stroke;       // "86 mm"
  std::string redline;      // "7000", revolutions per minute
  std::string boost;        // "1.0 bar", "15 psi", above ambient
  std::string fuel;         // "petrol"
  std::string exhaust_cam;  // "54 deg before bdc, 18 deg after tdc": opens, closes
  std::string port;         // "oval 36 mm x 28 mm"
  std::string turbine;      // "0.63 in, 64 mm, 55 mm": A/R, wheel inducer, wheel exducer
  std::string manifold;     // "4-1"
  std::string tube;         // of the primaries, as bought: "NPS 1-1/4 sch 10S"
  std::string length;       // of each primary, head flange to its merge: "350 mm"
};

/// One of the ten things that start asks for; also an option of its command line.
struct StarterQuestion {
  std::string_view option;   // "--bore"
  std::string_view ask;      // "Bore of the cylinders"
  std::string_view assumed;  // what stands for Enter: "86 mm"; in words where a rule of the assumed table decides
  std::string_view example;  // "86 mm"
  std::string_view explain;  // what "?" says
  std::string StarterOptions::*answer;
  /// Throws Error (usage) saying why the answer is no good, beside the answers that stand before it.
  void (*check)(const StarterOptions&);
};
std::span<const StarterQuestion> starter_questions();

/// The layouts that start knows, for --manifold; and those of them that a count of cylinders can have.
const std::vector<std::string>& starter_manifolds();
std::vector<std::string> starter_manifolds(int cylinders);

/// How many cylinders "4" or "boxer 4" means. Throws Error (usage) listing what is known.
int starter_cylinders(std::string_view text);

struct StarterCase {
  std::string text;   // a commented case that reads and runs
  EngineCase engine;  // the same, read
};

/// Throws Error (usage) for values or a layout that cannot be, naming both.
StarterCase make_starter(const StarterOptions& options);

}  // namespace pulsewright
