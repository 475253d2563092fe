#include "models/starter_layout.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "models/assumed.hpp"
#include "models/tube_stock.hpp"
#include "shared/error.hpp"

namespace pulsewright {
namespace {

using Blocks = std::vector<CaseBlock>;

std::string mm(double metres) { return fmt::format("\"{:.4g} mm\"", metres * 1e3); }

/// What several primaries run through is a size up: 1.3 times their area or more.
std::string tube_above(const std::string& tube) {
  try {
    return stock_pipe_above(parse_tube(tube).bore() * 1.14).tube().name;
  } catch (const Error&) {
    return tube;
  }
}

bool two_banks(const LayoutOrder& o) { return std::ranges::count(o.arrangement->bank, 1) > 0; }

int cylinders(const LayoutOrder& o) { return static_cast<int>(o.arrangement->firing_order.size()); }

/// Cylinders of a bank, along it.
std::vector<int> of_bank(const LayoutOrder& o, int bank) {
  std::vector<int> numbers;
  for (int c = 0; c < cylinders(o); ++c)
    if (o.arrangement->bank[static_cast<std::size_t>(c)] == bank) numbers.push_back(c + 1);
  return numbers;
}

/// Every second one of the firing order: those of a set fire as far apart as they can.
std::vector<int> of_turn(const LayoutOrder& o, std::size_t turn) {
  std::vector<int> numbers;
  for (std::size_t k = turn; k < o.arrangement->firing_order.size(); k += 2)
    numbers.push_back(o.arrangement->firing_order[k]);
  std::ranges::sort(numbers);
  return numbers;
}

CaseBlock each_primary(const LayoutOrder& o) {
  return {"[each_primary]",
          "each_primary",
          {},
          "what all primaries share; a primary's own key wins",
          {{"tube", toml_text(o.tube), o.tube_why}},
          {}};
}

/// Tubes of one length, meeting the collector's centre line at an angle.
CaseBlock long_primaries(const LayoutOrder& o, const std::string& angle) {
  CaseBlock b = each_primary(o);
  const AssumedRow& row = assumed_row("primary.length");
  if (o.length.empty())
    b.lines.push_back(
        {"length", mm(row.number), "head flange to its merge, on the centre line; assumed, a starting point"});
  else
    b.lines.push_back({"length", toml_text(o.length), "head flange to its merge, on the centre line"});
  b.lines.push_back({"angle", toml_text(angle), "between the primary and its collector's centre line; assumed"});
  return b;
}

CaseBlock primary(int cylinder, const std::string& to) {
  return {
      "[[primary]]", "primary", {}, {}, {{"cylinder", std::to_string(cylinder), {}}, {"to", toml_text(to), {}}}, {}};
}

CaseBlock joint(const std::string& name, const std::string& outlet) {
  return {"[[joint]]", "joint", name, {}, {{"name", toml_text(name), {}}, {"outlet", toml_text(outlet), {}}}, {}};
}

CaseBlock gate(const std::string& name, const std::string& at, const std::string& angle) {
  return {"[[wastegate]]",
          "wastegate",
          name,
          {},
          {{"name", toml_text(name), {}},
           {"at", toml_text(at), {}},
           {"angle", toml_text(angle), "from the way the gas runs on; assumed"},
           {"to", "\"air\"", {}},
           {"opening", "0.0", "share of full lift"}},
          {}};
}

CaseBlock duct(const std::string& name, const std::string& from, const std::string& to, const std::string& to_angle) {
  return {"[[duct]]",
          "duct",
          name,
          {},
          {{"name", toml_text(name), {}},
           {"from", toml_text(from), {}},
           {"to", toml_text(to), {}},
           {"to_angle", toml_text(to_angle), to_angle == "0 deg" ? "straight on" : "assumed"}},
          {}};
}

/// A pipe that several primaries blow through.
CaseBlock pipe(const LayoutOrder& o, CaseBlock b, const std::string& length, const std::string& why) {
  b.lines.push_back({"length", length, why});
  b.lines.push_back(
      {"tube", toml_text(tube_above(o.tube)), "the next stock size of 1.3 times the primary's area; assumed"});
  return b;
}

void add(Blocks& to, Blocks more) { std::ranges::move(more, std::back_inserter(to)); }

void add_primaries(Blocks& blocks, const std::vector<int>& cylinders, const std::string& to) {
  for (const int c : cylinders) blocks.push_back(primary(c, to));
}

/// Where both sides meet, and the turbine behind it.
void add_last_joint(Blocks& blocks, const std::string& gate_angle) {
  blocks.push_back(joint("merge", "turbine"));
  blocks.push_back(gate("gate", "merge", gate_angle));
}

/// A first merge and the pipe from it to the last one.
void add_side_pipe(const LayoutOrder& o, Blocks& blocks, const std::string& side) {
  blocks.push_back(joint(side, side + " pipe"));
  blocks.push_back(pipe(o, duct(side + " pipe", side, "merge", "10 deg"), "\"150 mm\"", "assumed"));
}

/// The pipe from each bank to the joint before the turbine, which stands near the right one.
void add_crossovers(const LayoutOrder& o, Blocks& blocks, const std::string& from_suffix = {}) {
  for (const char* side : {"left", "right"}) {
    const bool far = side == std::string("left");
    blocks.push_back(pipe(o, duct(std::string(side) + " crossover", side + from_suffix, "merge", "30 deg"),
                          far ? "\"500 mm\"" : "\"200 mm\"",
                          far ? "the way across; assumed" : "the turbine stands nearer to this bank; assumed"));
  }
}

constexpr int most_in_one_merge = 7;  // a joint has 8 ducts at most, the outlet among them

/// Halves of a row that is too long for one merge, then both into one.
void add_half_rows(const LayoutOrder& o, Blocks& blocks) {
  for (int c = 1; c <= cylinders(o); ++c) blocks.push_back(primary(c, 2 * c <= cylinders(o) ? "front" : "rear"));
  for (const char* side : {"front", "rear"}) add_side_pipe(o, blocks, side);
}

/// All primaries into one merge; of two banks, one merge each and a crossover each.
Blocks single_merge(const LayoutOrder& o) {
  Blocks blocks{long_primaries(o, "15 deg")};
  if (!two_banks(o) && cylinders(o) > most_in_one_merge) {
    add_half_rows(o, blocks);
  } else if (!two_banks(o)) {
    for (int c = 1; c <= cylinders(o); ++c) blocks.push_back(primary(c, "merge"));
  } else {
    for (const int bank : {0, 1}) add_primaries(blocks, of_bank(o, bank), bank == 0 ? "left" : "right");
    for (const char* side : {"left", "right"}) blocks.push_back(joint(side, std::string(side) + " crossover"));
    add_crossovers(o, blocks);
  }
  add_last_joint(blocks, "30 deg");
  return blocks;
}

/// A pipe along one row of ports; its last joint has the given name and outlet.
Blocks log_of(const LayoutOrder& o, const std::vector<int>& row, const std::string& last, const std::string& outlet) {
  const auto over = [&](std::size_t k) { return k + 1 == row.size() ? last : fmt::format("over port {}", row[k]); };
  Blocks blocks;
  for (std::size_t k = 0; k < row.size(); ++k) blocks.push_back(primary(row[k], over(k)));
  for (std::size_t k = 0; k + 1 < row.size(); ++k) {
    const std::string name = fmt::format("log {}-{}", row[k], row[k + 1]);
    blocks.push_back(joint(over(k), name));
    blocks.push_back(
        pipe(o, duct(name, over(k), over(k + 1), "0 deg"), mm(1.1 * o.bore), "from port to port, 1.1 bores; assumed"));
  }
  blocks.push_back(joint(last, outlet));
  return blocks;
}

/// One stub a cylinder into a pipe along the head, the turbine at its end beyond the last cylinder.
Blocks log(const LayoutOrder& o) {
  CaseBlock stubs = each_primary(o);
  stubs.lines.push_back(
      {"length", o.length.empty() ? "\"60 mm\"" : toml_text(o.length), o.length.empty() ? "stubs; assumed" : "stubs"});
  stubs.lines.push_back({"bends", "\"0 deg\"", {}});
  stubs.lines.push_back({"angle", "\"90 deg\"", "square into the log"});
  Blocks blocks{stubs};
  if (!two_banks(o)) {
    add(blocks, log_of(o, of_bank(o, 0), "merge", "turbine"));
    blocks.push_back(gate("gate", "merge", "90 deg"));
    return blocks;
  }
  for (const int bank : {0, 1}) {
    const std::string side = bank == 0 ? "left" : "right";
    add(blocks, log_of(o, of_bank(o, bank), side + " end", side + " crossover"));
  }
  add_crossovers(o, blocks, " end");
  add_last_joint(blocks, "30 deg");
  return blocks;
}

/// Pairs that fire 360 degrees apart, whatever bank they stand on; then both into one.
Blocks four_two_one(const LayoutOrder& o) {
  Blocks blocks{long_primaries(o, "10 deg")};
  add_primaries(blocks, of_turn(o, 0), "front");
  add_primaries(blocks, of_turn(o, 1), "rear");
  for (const char* side : {"front", "rear"}) add_side_pipe(o, blocks, side);
  add_last_joint(blocks, "30 deg");
  return blocks;
}

/// Each half into a scroll of its own: a bank each, or in line every second one of the firing order.
Blocks divided(const LayoutOrder& o) {
  const bool banks = two_banks(o);
  Blocks blocks{long_primaries(o, "10 deg")};
  const std::string one = banks ? "left" : "front", other = banks ? "right" : "rear";
  add_primaries(blocks, banks ? of_bank(o, 0) : of_turn(o, 0), one);
  add_primaries(blocks, banks ? of_bank(o, 1) : of_turn(o, 1), other);
  for (const auto& [name, entry] : {std::pair{one, "turbine.a"}, {other, "turbine.b"}}) {
    blocks.push_back(joint(name, entry));
    blocks.push_back(gate(name + " gate", name, "30 deg"));
  }
  return blocks;
}

}  // namespace

bool is_divided(std::string_view manifold) { return manifold == "divided" || manifold == "3-3"; }

std::vector<CaseBlock> layout_blocks(const LayoutOrder& o) {
  if (o.manifold == "log") return log(o);
  if (o.manifold == "4-2-1") return four_two_one(o);
  return is_divided(o.manifold) ? divided(o) : single_merge(o);
}

}  // namespace pulsewright
