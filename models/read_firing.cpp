// Which cylinder fires when: by the name of an arrangement, by the count of cylinders, by order and angles.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "models/arrangement.hpp"
#include "models/read_engine.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr int most_cylinders = 16;

std::string numbers_in_words(const std::vector<int>& numbers) {
  std::string words;
  for (const int n : numbers) words += (words.empty() ? "" : "-") + std::to_string(n);
  return words;
}

const Arrangement* read_arrangement(const CaseTable& engine) {
  std::vector<std::string> names;
  for (const Arrangement& a : arrangements()) names.emplace_back(a.name);
  const auto name = engine.choice("arrangement", names);
  return name ? find_arrangement(*name) : nullptr;
}

/// Only the name "inline N" can be concluded from a count of cylinders.
const Arrangement* in_line(int cylinders) { return find_arrangement("inline " + std::to_string(cylinders)); }

/// How many cylinders a name that is no row of the table ends in, so that a misspelt word does not turn every primary
/// into a fault: "inlin 6" means six. 0: it does not tell.
int cylinders_named(const CaseTable& engine) {
  if (engine.kind("arrangement") != CaseKind::text) return 0;
  const std::string name = engine.text("arrangement").value_or("");
  const auto digits = name.find_last_not_of("0123456789") + 1;  // npos + 1 is 0: all of it
  const std::string number = name.substr(digits);
  const int count = number.empty() || number.size() > 2 ? 0 : std::stoi(number);
  return count <= most_cylinders ? count : 0;
}

bool names_each_once(std::vector<int> order) {
  std::ranges::sort(order);
  for (std::size_t k = 0; k < order.size(); ++k)
    if (order[k] != static_cast<int>(k) + 1) return false;
  return true;
}

std::vector<int> usual_order(const Arrangement* arrangement, int cylinders) {
  if (arrangement) return arrangement->firing_order;
  std::vector<int> order(static_cast<std::size_t>(cylinders));
  std::iota(order.begin(), order.end(), 1);
  return order;
}

std::vector<int> read_order(const CaseTable& engine, const Arrangement* arrangement, int cylinders) {
  const auto order = engine.counts("firing_order", 1, most_cylinders);
  if (!order) return usual_order(arrangement, cylinders);
  if (static_cast<int>(order->size()) == cylinders && names_each_once(*order)) return *order;
  engine.fault("firing_order", "firing_order is " + numbers_in_words(*order) + ", but it must name each of the " +
                                   std::to_string(cylinders) + " cylinders once");
  return usual_order(arrangement, cylinders);
}

/// Angles of cylinder 1, 2, ... from the list of the case; cylinder 1 stands at 0.
void read_angles(const CaseTable& engine, EngineParts& parts) {
  const double whole = 4 * std::numbers::pi;
  const auto angles = engine.quantities("firing_at", Dimension::angle, between(0, whole));
  if (!angles) return;
  if (angles->size() != parts.firing_at.size())
    return engine.fault("firing_at",
                        "firing_at has " + std::to_string(angles->size()) + " angles for " +
                            std::to_string(parts.firing_at.size()) + " cylinders",
                        "one for each cylinder 1, 2, ... in degrees after cylinder 1 fires");
  for (std::size_t k = 0; k < angles->size(); ++k)
    parts.firing_at[k] = {std::fmod((*angles)[k] - angles->front() + whole, whole)};
  const auto at = [&](int cylinder) { return parts.firing_at[static_cast<std::size_t>(cylinder - 1)].radians; };
  std::vector<int> said = parts.firing_order;
  std::rotate(said.begin(), std::ranges::find(said, 1), said.end());
  std::ranges::sort(parts.firing_order);
  std::ranges::stable_sort(parts.firing_order, {}, at);
  if (engine.has("firing_order") && !std::ranges::is_sorted(said, {}, at))
    engine.fault("firing_at", "the angles of firing_at make the order " + numbers_in_words(parts.firing_order) +
                                  ", but firing_order is " + numbers_in_words(said) + " (" +
                                  engine.line_of("firing_order") + ")");
}

/// bank = [1, 2, 1, 2]: of cylinder 1, 2, ... Only the words of reports hang on it.
std::vector<int> read_banks(const CaseTable& engine, const Arrangement* arrangement, int cylinders) {
  std::vector<int> banks(static_cast<std::size_t>(cylinders), 0);
  if (arrangement) banks = arrangement->bank;
  const auto said = engine.counts("bank", 1, 2);
  if (!said) return banks;
  if (said->size() != banks.size()) {
    engine.fault(
        "bank", "bank has " + std::to_string(said->size()) + " entries for " + std::to_string(cylinders) + " cylinders",
        "1 or 2 for each cylinder 1, 2, ...");
    return banks;
  }
  std::ranges::transform(*said, banks.begin(), [](int bank) { return bank - 1; });
  return banks;
}

}  // namespace

void read_firing(const CaseTable& engine, EngineParts& parts) {
  const auto said = engine.count("cylinders", 1, most_cylinders);
  const Arrangement* arrangement = read_arrangement(engine);
  if (!engine.has("arrangement") && !engine.has("cylinders"))
    engine.fault_here("how many cylinders? give arrangement = \"inline 4\" or cylinders = 4");
  const int named = arrangement ? static_cast<int>(arrangement->firing_order.size()) : cylinders_named(engine);
  const int cylinders = named > 0 ? named : said.value_or(4);
  if (arrangement && said && *said != cylinders)
    engine.fault("cylinders", "cylinders is " + std::to_string(*said) + ", but " + in_quotes(arrangement->name) +
                                  " has " + std::to_string(cylinders) + " (" + engine.line_of("arrangement") + ")");
  if (!arrangement && !engine.has("arrangement")) arrangement = in_line(cylinders);
  if (!arrangement && !engine.has("firing_order") && !engine.has("firing_at") && cylinders > 1 && said)
    engine.fault("cylinders", "no usual firing order is known for " + std::to_string(cylinders) + " cylinders",
                 "give firing_order");
  parts.arrangement = arrangement ? std::string(arrangement->name) : "";
  parts.firing_order = read_order(engine, arrangement, cylinders);
  const std::vector<double> uneven = arrangement ? arrangement->at : std::vector<double>{};
  for (const double degrees : firing_degrees(parts.firing_order, uneven))
    parts.firing_at.push_back(CrankAngle::from_degrees(degrees));
  read_angles(engine, parts);
  parts.bank = read_banks(engine, arrangement, cylinders);
}

}  // namespace pulsewright
