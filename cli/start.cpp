// The verb start: writes a commented starter case from the few things that the fabricator knows.

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>

#include "cli/option_value.hpp"
#include "cli/verb.hpp"
#include "models/starter.hpp"
#include "shared/error.hpp"
#include "shared/files.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

struct StartOptions {
  std::string title, bore, stroke, boost, tube, manifold = "4-1", out;
  int cylinders = 0;
  double redline = 0;
  bool force = false;
};

/// What must be said, and was not.
std::vector<std::string> missing(const StartOptions& o) {
  std::vector<std::string> names;
  if (o.cylinders == 0) names.emplace_back("--cylinders");
  if (o.bore.empty()) names.emplace_back("--bore");
  if (o.stroke.empty()) names.emplace_back("--stroke");
  if (o.redline == 0) names.emplace_back("--redline");
  if (o.boost.empty()) names.emplace_back("--boost");
  return names;
}

int start(const StartOptions& o) {
  if (const auto names = missing(o); !names.empty())
    throw Error(ErrorKind::usage, "a starter case needs " + listed(names), {},
                "for example: pulsewright start --cylinders 4 --bore \"86 mm\" --stroke \"86 mm\" --redline 7500 "
                "--boost \"1.0 bar\"");
  StarterOptions options;
  if (!o.title.empty()) options.title = o.title;
  options.cylinders = o.cylinders;
  options.bore = option_quantity(o.bore, Dimension::length, "--bore");
  options.stroke = option_quantity(o.stroke, Dimension::length, "--stroke");
  options.redline = o.redline;
  options.boost_gauge = option_quantity(o.boost, Dimension::pressure_gauge, "--boost");
  options.manifold = o.manifold;
  if (!o.tube.empty()) options.tube = o.tube;
  if (!o.out.empty()) check_writable(o.out, o.force);
  const std::string text = starter_case(options);
  if (o.out.empty())
    std::cout << text;
  else
    write_text(o.out, text, o.force);
  return ExitCode::done;
}

}  // namespace

std::function<int()> set_up_start(CLI::App& verb) {
  auto o = std::make_shared<StartOptions>();
  verb.add_option("--cylinders", o->cylinders, "how many");
  verb.add_option("--bore", o->bore, "\"86 mm\"");
  verb.add_option("--stroke", o->stroke, "\"86 mm\"");
  verb.add_option("--redline", o->redline, "rpm");
  verb.add_option("--boost", o->boost, "gauge: \"1.0 bar\", \"15 psi\"");
  verb.add_option("--manifold", o->manifold, "layout: " + listed(starter_manifolds()));
  verb.add_option("--tube", o->tube, "primary tube as bought: \"NPS 1-1/4 sch 10S\"");
  verb.add_option("--title", o->title, "heads every output");
  verb.add_option("--out", o->out, "write to this file, not to standard output");
  verb.add_flag("--force", o->force, "overwrite a file that exists");
  return [o] { return start(*o); };
}

}  // namespace pulsewright
