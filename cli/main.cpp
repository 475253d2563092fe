// The program: picks the verb, runs it, and turns whatever was thrown into a message and an exit code.

#include <CLI/CLI.hpp>
#include <array>
#include <exception>
#include <iostream>

#include "cli/interrupt.hpp"
#include "cli/misspelt.hpp"
#include "cli/verb.hpp"
#include "shared/error.hpp"
#include "shared/version.hpp"

namespace pulsewright {
namespace {

constexpr std::array verbs{
    Verb{"start", "write a commented starter case", set_up_start},
    Verb{"check", "read a case and show what it draws and what is assumed; runs nothing", set_up_check},
    Verb{"run", "run one case", set_up_run},
    Verb{"compare", "run several layouts and put them side by side", set_up_compare},
    Verb{"trace", "print a series or a profile of a result file as CSV", set_up_trace},
    Verb{"verify", "run the published checks: check, source, expected, got", set_up_verify},
};

int exit_code(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::usage:
      return ExitCode::usage;
    case ErrorKind::case_file:
      return ExitCode::bad_case;
    case ErrorKind::file:
      return ExitCode::bad_file;
    case ErrorKind::unphysical:
    case ErrorKind::not_settled:
      return ExitCode::not_physical;
    case ErrorKind::internal:
      break;
  }
  return ExitCode::internal;
}

/// An empty argument is a variable of a script that was not set, never a wish.
void refuse_empty_arguments(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    const std::string_view argument = argv[i];
    if (argument.empty() || (argument.starts_with("--") && argument.ends_with('=')))
      throw Error(ErrorKind::usage, "an argument is empty: number " + std::to_string(i) +
                                        (i > 1 ? ", after " + std::string(argv[i - 1]) : ""));
  }
}

/// The nearest option of the verb, or where to look.
std::string parse_hint(const CLI::App& app, const std::vector<std::string>& words) {
  const auto chosen = app.get_subcommands();
  std::vector<std::string> options;
  for (const CLI::Option* option : (chosen.empty() ? &app : chosen.front())->get_options())
    for (const std::string& name : option->get_lnames()) options.push_back("--" + name);
  const std::string near = misspelt_option(words, options);
  const std::string see =
      chosen.empty() ? "pulsewright --help" : "pulsewright " + chosen.front()->get_name() + " --help";
  return near + (near.empty() ? "" : " ") + "see: " + see;
}

int run_program(int argc, char** argv) {
  refuse_empty_arguments(argc, argv);
  CLI::App app{"pulsewright: see the gas in a turbo manifold before the steel is cut"};
  app.set_version_flag("--version", std::string(program_version()));
  std::vector<std::function<int()>> runs;
  for (const Verb& verb : verbs) runs.push_back(verb.setup(*app.add_subcommand(verb.name, verb.help)));
  if (argc < 2) throw Error(ErrorKind::usage, verb_list(verbs));
  if (const std::string fault = misspelt_verb(argv[1], verbs); !fault.empty()) throw Error(ErrorKind::usage, fault);
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& asked_for_text) {
    return app.exit(asked_for_text);
  } catch (const CLI::ParseError& fault) {
    throw Error(ErrorKind::usage, fault.what(), {}, parse_hint(app, {argv + 1, argv + argc}));
  }
  watch_for_interrupt();
  for (std::size_t i = 0; i < verbs.size(); ++i)
    if (app.got_subcommand(verbs[i].name)) return runs[i]();
  return ExitCode::usage;
}

int say_interrupted() {
  std::cerr << "interrupted; nothing was written\n";
  return ExitCode::interrupted;
}

int guarded(int argc, char** argv) {
  try {
    const int code = run_program(argc, argv);
    if (!std::cout.flush()) throw Error(ErrorKind::file, "cannot be written; is the disk full?", "standard output");
    return code;
  } catch (const Interrupted&) {
    return say_interrupted();
  } catch (const Error& error) {
    if (interrupt_asked()) return say_interrupted();  // the run that was stopped says so by an Error
    std::cerr << "pulsewright: " << error.what() << '\n';
    return exit_code(error.kind());
  } catch (const std::exception& error) {
    std::cerr << "pulsewright: a mistake of ours: " << error.what() << '\n';
    return ExitCode::internal;
  }
}

}  // namespace
}  // namespace pulsewright

int main(int argc, char** argv) { return pulsewright::guarded(argc, argv); }
