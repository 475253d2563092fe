// The verb start: writes a commented starter case from the few things that the fabricator knows.

#include <fmt/format.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>
#include <memory>

#include "cli/interrupt.hpp"
#include "cli/start_dialogue.hpp"
#include "cli/verb.hpp"
#include "models/firing_pairs.hpp"
#include "models/starter.hpp"
#include "models/tube_advice.hpp"
#include "shared/error.hpp"
#include "shared/files.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

struct StartOptions {
  StarterOptions known;
  std::string arrangement, out;
  bool ask = false, force = false;
};

/// Whether any of the ten was said as an option.
bool any_said(const StarterOptions& o) {
  return std::ranges::any_of(starter_questions(), [&](const StarterQuestion& q) { return !(o.*q.answer).empty(); });
}

/// What must be said where nobody is asked, and was not.
std::vector<std::string> missing(const StarterOptions& o) {
  constexpr int needed = 5;  // the first five questions
  std::vector<std::string> names;
  for (const StarterQuestion& q : starter_questions().first(needed))
    if ((o.*q.answer).empty()) names.emplace_back(q.option);
  return names;
}

/// --arrangement says more than --cylinders, and must not say otherwise.
void merge_arrangement(StartOptions& o) {
  if (o.arrangement.empty()) return;
  const auto count = starter_cylinders(o.arrangement);
  if (!o.known.cylinders.empty() && starter_cylinders(o.known.cylinders) != count)
    throw Error(ErrorKind::usage,
                fmt::format("{} has {} cylinders, and --cylinders says {}", in_quotes(o.arrangement), count,
                            in_quotes(o.known.cylinders)),
                "--arrangement");
  o.known.cylinders = o.arrangement;
}

/// By questions or by options alone; nothing where the questions were broken off.
std::optional<StarterOptions> gather(const StartOptions& o) {
  if (o.ask || (!any_said(o.known) && isatty(STDIN_FILENO) != 0)) {
    end_at_interrupt();
    return ask_for_starter(std::cin, std::cerr, o.known);
  }
  if (const auto names = missing(o.known); !names.empty())
    throw Error(ErrorKind::usage, "a starter case needs " + listed(names, "and"), {},
                "for example: pulsewright start --cylinders 4 --bore \"86 mm\" --stroke \"86 mm\" --redline 7500 "
                "--boost \"1.0 bar\"\n  --ask asks for what is left open");
  return o.known;
}

/// What the case amounts to, and what to do next.
std::string advice(const StarterCase& starter, const std::string& file) {
  std::string text = "Whose blowdown falls into whose overlap\n" + firing_pairs_text(starter.engine);
  text += "\nStock tube to try for the primaries\n" + tube_advice_text(starter.engine);
  text += fmt::format("\nAssumed: {} values; each stands in the case behind a #, with its range.\n",
                      starter.engine.assumed.size());
  const std::string name = file.empty() ? "FILE" : file;
  text += file.empty() ? "To keep the case: --out FILE. Then:\n" : "Written to " + file + ". Next:\n";
  return text + fmt::format("  pulsewright check {0}\n  pulsewright run {0} --rpm {1:.0f} --quick\n", name,
                            starter.engine.run.rpm[2]);
}

int start(StartOptions o) {
  merge_arrangement(o);
  if (!o.out.empty()) check_writable(o.out, o.force);
  const auto said = gather(o);
  if (!said) {
    std::cerr << "stopped; nothing was written\n";
    return ExitCode::interrupted;
  }
  const StarterCase starter = make_starter(*said);
  if (o.out.empty()) {
    std::cout << starter.text;
    std::cerr << '\n' << advice(starter, {});
  } else {
    write_text(o.out, starter.text, o.force);
    std::cout << advice(starter, o.out);
  }
  return ExitCode::done;
}

std::string option_help(const StarterQuestion& q) {
  std::string ask(q.ask);
  ask.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(ask.front())));
  return ask + ": " + std::string(q.example);
}

}  // namespace

std::function<int()> set_up_start(CLI::App& verb) {
  auto o = std::make_shared<StartOptions>();
  verb.footer("On a terminal, without options, start asks ten questions.");
  for (const StarterQuestion& q : starter_questions())
    verb.add_option(std::string(q.option), o->known.*q.answer, option_help(q));
  verb.add_option("--arrangement", o->arrangement, "the same as --cylinders, by name: \"boxer 4\"");
  verb.add_option("--tube", o->known.tube, "primary tube as bought: \"NPS 1-1/4 sch 10S\"");
  verb.add_option("--length", o->known.length, "each primary, flange to merge: \"350 mm\"");
  verb.add_option("--title", o->known.title, "heads every output");
  verb.add_option("--out", o->out, "write to this file, not to standard output");
  verb.add_flag("--ask", o->ask, "ask for what the options leave open, terminal or not");
  verb.add_flag("--force", o->force, "overwrite a file that exists");
  return [o] { return start(*o); };
}

}  // namespace pulsewright
