// Where layouts differ most, in sentences.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/layout.hpp"

namespace pulsewright {
namespace {

/// Lines for one layout against the first; the rest is named in one line. The more layouts, the fewer each.
std::size_t most_lines(std::size_t layouts) { return layouts <= 2 ? 6 : layouts == 3 ? 4 : 3; }

struct Step {  // at one speed
  double rpm, first, second;
  double confirmed;  // how far the figure that confirms moves with it
  double by() const { return second - first; }
  double counted() const { return confirmed * by() > 0 ? std::min(std::abs(by()), std::abs(confirmed)) : 0; }
};

/// A figure of two layouts over the speeds that both were run at.
struct Gap {
  const FigureRow* row;
  std::vector<Step> steps;

  double small(const Step& s) const {
    return row->words->small_is_percent ? 0.01 * row->words->small * std::max(std::abs(s.first), std::abs(s.second))
                                        : row->words->small;
  }
  double weight(const Step& s) const { return s.counted() / std::max(small(s), 1e-12); }
  bool counts(const Step& s) const { return weight(s) > 1; }

  /// The heaviest step of those that go the way asked for (0: either).
  const Step* heaviest(int way) const {
    const Step* best = nullptr;
    for (const Step& s : steps)
      if (counts(s) && s.by() * way >= 0 && (!best || weight(s) > weight(*best))) best = &s;
    return best;
  }
};

std::string filled(std::string sentence, const std::string& mark, const std::string& text) {
  const auto at = sentence.find(mark);
  return at == std::string::npos ? sentence : sentence.replace(at, mark.size(), text);
}

std::string amount(const Gap& gap, const Step& s) {
  return number_text(std::abs(s.by()), gap.row->decimals) + " " + gap.row->words->unit;
}
std::string way(const Gap& gap, const Step& s) { return s.by() > 0 ? gap.row->words->more : gap.row->words->less; }

std::string both_values(const Gap& gap, const Step& s) {
  return figure_text(*gap.row, s.second) + " against " + figure_text(*gap.row, s.first);
}

/// "; also at 2500 and 3500 rpm": the other speeds that go the same way by more than a small amount.
std::string also_at(const Gap& gap, const Step& main) {
  std::vector<std::string> speeds;
  for (const Step& s : gap.steps)
    if (&s != &main && gap.counts(s) && s.by() * main.by() > 0) speeds.push_back(fmt::format("{:.0f}", s.rpm));
  if (speeds.empty()) return {};
  if (speeds.size() + 1 == gap.steps.size() && speeds.size() > 1) return "; the same way at every speed";
  const std::string last = speeds.back();
  speeds.pop_back();
  return fmt::format("; also at {}{}{} rpm", fmt::join(speeds, ", "), speeds.empty() ? "" : " and ", last);
}

std::string in_words(const std::string& letter, const Gap& gap) {
  const FigureWords& words = *gap.row->words;
  const Step& main = *gap.heaviest(0);
  std::string text =
      letter + " " + filled(filled(words.sentence, "{amount}", amount(gap, main)), "{way}", way(gap, main));
  text +=
      fmt::format(" at {:.0f} rpm ({} {}){}", main.rpm, both_values(gap, main), words.value_unit, also_at(gap, main));
  if (const Step* other = gap.heaviest(main.by() > 0 ? -1 : 1))
    text += fmt::format("; but {} {} at {:.0f} rpm ({})", amount(gap, *other), way(gap, *other), other->rpm,
                        both_values(gap, *other));
  return text;
}

double confirmed(const FigureRow& row, const Layout& a, const Layout& b, double rpm, double by) {
  if (!row.words->confirm) return by;
  FigureRow other = row;
  other.value = row.words->confirm;
  const auto x = a.figure(other, rpm), y = b.figure(other, rpm);
  return x && y ? *y - *x : 0;
}

std::vector<Gap> gaps_between(const Layout& a, const Layout& b) {
  std::vector<Gap> gaps;
  for (const FigureRow& row : figure_rows()) {
    if (!row.words) continue;
    Gap gap{&row, {}};
    for (const SpeedResult& s : a.result.speeds)
      if (const auto x = a.figure(row, s.rpm), y = b.figure(row, s.rpm); x && y)
        gap.steps.push_back({s.rpm, *x, *y, confirmed(row, a, b, s.rpm, *y - *x)});
    if (!gap.steps.empty()) gaps.push_back(std::move(gap));
  }
  return gaps;
}

std::string names(const std::vector<Gap>& gaps, std::size_t from) {
  std::vector<std::string> list;
  for (std::size_t k = from; k < gaps.size(); ++k) list.push_back(gaps[k].row->words->name);
  return fmt::format("{}", fmt::join(list, ", "));
}

void add_lines(const Layout& a, const Layout& b, std::size_t most, std::vector<std::string>& lines) {
  std::vector<Gap> apart, alike;
  for (Gap& gap : gaps_between(a, b)) (gap.heaviest(0) ? apart : alike).push_back(std::move(gap));
  std::ranges::stable_sort(apart, {}, [](const Gap& gap) { return gap.row->words->rank; });
  for (std::size_t k = 0; k < std::min(most, apart.size()); ++k) lines.push_back(in_words(b.letter, apart[k]));
  if (apart.size() > most)
    lines.push_back(
        fmt::format("{} and {} also differ in: {} (see the table)", a.letter, b.letter, names(apart, most)));
  if (!alike.empty())
    lines.push_back(fmt::format("{} and {} are alike at every speed in: {}", a.letter, b.letter, names(alike, 0)));
}

std::string small_unit(const FigureWords& words) {
  if (words.small_is_percent) return "%";
  return words.small == 1 && words.unit.ends_with('s') ? words.unit.substr(0, words.unit.size() - 1) : words.unit;
}

/// "Alike means no further apart than: drive pressure 0.03 bar, torque 1 %, ..."
std::string small_amounts() {
  std::vector<std::string> list;
  for (const FigureRow& row : figure_rows())
    if (row.words) list.push_back(fmt::format("{} {:g} {}", row.words->name, row.words->small, small_unit(*row.words)));
  return fmt::format("Alike means no further apart than: {}", fmt::join(list, ", "));
}

}  // namespace

std::vector<std::string> in_short(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (std::size_t k = 1; k < layouts.size(); ++k)
    add_lines(layouts.front(), layouts[k], most_lines(layouts.size()), lines);
  if (!lines.empty()) lines.push_back(small_amounts());
  return lines;
}

}  // namespace pulsewright
