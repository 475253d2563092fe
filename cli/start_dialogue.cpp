#include "cli/start_dialogue.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <istream>
#include <ostream>
#include <string>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr const char* opening =
    "Enter alone: you don't know, it is assumed and marked. ? explains. Ctrl-D stops, and nothing is written.\n"
    "Sizes with their unit, each in the one you have it in: 86 mm, 3.386 in, 1-1/2 in.\n\n";

/// One question until it has a good answer; false where the input ends.
bool ask(std::istream& in, std::ostream& out, const StarterQuestion& q, StarterOptions& options) {
  const std::string prompt = fmt::format("{} [{}]: ", q.ask, q.assumed);
  for (std::string line; out << prompt << std::flush, std::getline(in, line);) {
    const std::string answer(trimmed(line));
    if (answer.empty()) return true;
    if (answer == "?") {
      out << fmt::format("    {}\n    For example: {}\n", q.explain, q.example);
      continue;
    }
    StarterOptions with = options;
    with.*q.answer = answer;
    try {
      q.check(with);
      options = with;
      return true;
    } catch (const Error& error) {
      out << "    " << printable(error.message()) << '\n';
      out << "    " << (error.hint().empty() ? "For example: " + std::string(q.example) : printable(error.hint()))
          << '\n';
    }
  }
  out << '\n';
  return false;
}

}  // namespace

std::optional<StarterOptions> ask_for_starter(std::istream& in, std::ostream& out, const StarterOptions& known) {
  StarterOptions options = known;
  const auto open = [&](const StarterQuestion& q) { return (known.*q.answer).empty(); };
  const auto count = std::ranges::count_if(starter_questions(), open);
  out << (count == 10 ? "Ten questions.\n" : fmt::format("Questions: {}.\n", count)) << opening;
  int number = 0;
  for (const StarterQuestion& q : starter_questions()) {
    if (!open(q)) continue;
    out << fmt::format("{:2}/{} ", ++number, count);
    if (!ask(in, out, q, options)) return std::nullopt;
  }
  return options;
}

}  // namespace pulsewright
