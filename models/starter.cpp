#include "models/starter.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "models/starter_assumed.hpp"
#include "models/starter_layout.hpp"
#include "models/starter_parts.hpp"
#include "models/tube_advice.hpp"
#include "shared/error.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

using Blocks = std::vector<CaseBlock>;

constexpr const char* not_said = "assumed, because you did not say";

/// The options with what he does not know filled in from the questions, where a case must say it.
struct Answers {
  const StarterOptions& said;

  std::string value(std::string StarterOptions::*answer) const {
    if (!(said.*answer).empty()) return std::string(trimmed(said.*answer));
    for (const StarterQuestion& q : starter_questions())
      if (q.answer == answer) return std::string(q.assumed);
    return {};
  }
  CaseLine line(std::string key, std::string StarterOptions::*answer, bool plain = false) const {
    const std::string v = value(answer);
    return {std::move(key), plain ? v : toml_text(v), (said.*answer).empty() ? not_said : ""};
  }
};

void check(const StarterOptions& o) {
  toml_text(o.title);
  for (const StarterQuestion& q : starter_questions()) {
    if ((o.*q.answer).empty()) continue;
    try {
      q.check(o);
    } catch (const Error& error) {
      throw Error(ErrorKind::usage, error.message(), std::string(q.option), error.hint());
    }
  }
  const auto option = [](const char* name, auto read) {
    try {
      read();
    } catch (const Error& error) {
      throw Error(ErrorKind::usage, error.message(), name, error.hint());
    }
  };
  if (!o.tube.empty()) option("--tube", [&] { parse_tube(o.tube); });
  if (o.length.empty()) return;
  option("--length", [&] {
    const double length = parse_quantity(o.length, Dimension::length, "length");
    if (!between(0.02, 5).holds(length))
      throw Error(ErrorKind::usage, "a primary of " + in_quotes(o.length) + ": it must lie between 20 mm and 5 m");
  });
}

CaseBlock top(const StarterOptions& o) { return {{}, {}, {}, {}, {{"title", toml_text(o.title), {}}}, {}}; }

CaseBlock engine(const Answers& a) {
  const Arrangement& row = arrangement_meant(a.said.cylinders);
  std::string order;
  for (const int c : row.firing_order) order += (order.empty() ? "" : "-") + std::to_string(c);
  const std::string fires = "fires " + order + ", by common practice";
  return {
      "[engine]",
      "engine",
      {},
      {},
      {{"arrangement", toml_text(row.name), a.said.cylinders.empty() ? std::string(not_said) + "; " + fires : fires},
       a.line("bore", &StarterOptions::bore),
       a.line("stroke", &StarterOptions::stroke),
       a.line("redline", &StarterOptions::redline, true),
       a.line("fuel", &StarterOptions::fuel)},
      {}};
}

CaseBlock exhaust_valve(const StarterOptions& o) {
  CaseBlock b{"[engine.exhaust_valve]", "engine.exhaust_valve", {}, "from the cam card and the head", {}, {}};
  if (o.exhaust_cam.empty()) return b;
  const auto [opens, closes] = two_parts(o.exhaust_cam);
  b.lines = {{"opens", toml_text(opens), {}}, {"closes", toml_text(closes), {}}};
  return b;
}

CaseBlock exhaust_port(const StarterOptions& o) {
  CaseBlock b{"[engine.exhaust_port]", "engine.exhaust_port", {}, "the hole in the head face", {}, {}};
  if (!o.port.empty()) b.lines = {{"exit", toml_text(trimmed(o.port)), {}}};
  return b;
}

/// A bare A/R stays a bare number, which means inches.
CaseBlock turbine(const StarterOptions& o, const std::string& manifold) {
  CaseBlock b{"[turbine]", "turbine", {}, {}, {}, {}};
  if (is_divided(manifold)) b.lines.push_back({"scrolls", "2", "kept apart up to the wheel"});
  if (o.turbine.empty()) return b;
  const auto [housing, wheel] = two_parts(o.turbine);
  const auto [inducer, exducer] = two_parts(wheel);
  const bool bare = housing.find_first_not_of("0123456789.") == std::string_view::npos;
  b.lines.push_back({"a_over_r", bare ? std::string(housing) : toml_text(housing), bare ? "inches" : ""});
  b.lines.push_back({"inducer", toml_text(inducer), "where gas enters the wheel"});
  b.lines.push_back({"exducer", toml_text(exducer), "where it leaves"});
  return b;
}

CaseBlock run(double redline) {
  std::string speeds;
  for (const double share : {0.35, 0.5, 0.65, 0.8, 0.95})
    speeds +=
        fmt::format("{}{:.0f}", speeds.empty() ? "" : ", ", std::max(300.0, std::round(share * redline / 100) * 100));
  return {"[run]", "run", {}, {}, {{"rpm", "[" + speeds + "]", {}}, {"cell", "\"5 mm\"", {}}}, {}};
}

CaseBlock empty(const std::string& path, const std::string& comment = {}) {
  return {"[" + path + "]", path, {}, comment, {}, {}};
}

/// Everything but the network.
Blocks head_blocks(const Answers& a, const std::string& manifold) {
  CaseBlock charge = empty("charge");
  charge.lines = {a.line("boost_gauge", &StarterOptions::boost)};
  if (charge.lines[0].comment.empty()) charge.lines[0].comment = "the target, above ambient";
  return {top(a.said),
          engine(a),
          exhaust_valve(a.said),
          empty("engine.intake_valve"),
          exhaust_port(a.said),
          empty("engine.burn"),
          charge,
          empty("compressor"),
          empty("cooler"),
          empty("ambient"),
          turbine(a.said, manifold),
          run(std::stod(a.value(&StarterOptions::redline)))};
}

CaseBlock downpipe() {
  CaseBlock b{{}, "downpipe", {}, {}, {}, {}};
  b.remarks = {"[[duct]]                         # without it an assumed restriction stands behind the turbine",
               "name   = \"downpipe\"",
               "from   = \"turbine.out\"",
               "to     = \"air\"",
               "length = \"900 mm\"",
               "bore   = \"63.5 mm\""};
  return b;
}

EngineCase read(const std::string& text) {
  CaseFile file = CaseFile::from_text(text, "the starter case");
  return read_engine_case(file);
}

/// The valves and the port of the case, which decide the tube, read beside any tube at all.
EngineParts read_parts(const Blocks& head, LayoutOrder order) {
  order.tube = "NPS 1-1/4 sch 10S";
  Blocks all = head;
  for (CaseBlock& b : layout_blocks(order)) all.push_back(std::move(b));
  return read(case_text(all)).engine;
}

void choose_tube(const StarterOptions& o, const Blocks& head, LayoutOrder& order) {
  if (!o.tube.empty()) {
    order.tube = parse_tube(o.tube).name;
    return;
  }
  const double port = port_bore(read_parts(head, order));
  order.tube = stock_pipe_above(port).tube().name;
  order.tube_why = fmt::format("stock pipe nearest above the port ({:.1f} mm); assumed", 1e3 * port);
}

constexpr const char* opening =
    R"(# A first case to edit. What stands behind a # is assumed, with the range it may lie in: take the # away to give your own
# value. "pulsewright check" says why each is assumed, who blows into whose overlap, and which stock tubes to try.

)";

}  // namespace

StarterCase make_starter(const StarterOptions& options) {
  check(options);
  const Answers answers{options};
  const std::string manifold = answers.value(&StarterOptions::manifold);
  Blocks blocks = head_blocks(answers, manifold);
  LayoutOrder order{manifold, &arrangement_meant(options.cylinders), 0, {}, {}, std::string(trimmed(options.length))};
  order.bore = parse_quantity(answers.value(&StarterOptions::bore), Dimension::length, "bore");
  choose_tube(options, blocks, order);
  for (CaseBlock& b : layout_blocks(order)) blocks.push_back(std::move(b));
  EngineCase engine = read(case_text(blocks));
  note_assumed(blocks, engine);
  blocks.push_back(downpipe());
  return {opening + case_text(blocks), std::move(engine)};
}

}  // namespace pulsewright
