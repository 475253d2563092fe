// Where two layouts change places: the speed at which a difference changes its sign.

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/layout.hpp"

namespace pulsewright {
namespace {

struct Difference {
  double rpm, first, second;
  double by() const { return second - first; }
};

bool worth_a_word(const FigureWords& words, const Difference& d) {
  const double small =
      words.small_is_percent ? 0.01 * words.small * std::max(std::abs(d.first), std::abs(d.second)) : words.small;
  return std::abs(d.by()) > small;
}

/// Where a row is confirmed by another figure, that one: a gauge in a narrow throat changes places alone.
std::vector<Difference> differences_over_speed(const FigureRow& row, const Layout& a, const Layout& b) {
  const auto value = row.words->confirm ? row.words->confirm : row.value;
  std::vector<Difference> list;
  for (const SpeedResult& s : a.result.speeds) {
    const SpeedResult* other = b.at_rpm(s.rpm);
    if (!other) continue;
    if (const auto x = value(s, a.result.ambient_pressure), y = value(*other, b.result.ambient_pressure); x && y)
      list.push_back({s.rpm, *x, *y});
  }
  std::ranges::sort(list, {}, &Difference::rpm);
  return list;
}

/// Whether from `begin` on, in one direction, a difference worth a word comes before the sign changes again.
template <class It>
bool stands_out(const FigureWords& words, It begin, It end) {
  const double sign = begin->by();
  const auto turned = std::find_if(begin, end, [sign](const Difference& d) { return d.by() * sign <= 0; });
  return std::any_of(begin, turned, [&](const Difference& d) { return worth_a_word(words, d); });
}

void add_crossings(const FigureRow& row, const Layout& a, const Layout& b, std::vector<Crossing>& found) {
  const std::vector<Difference> list = differences_over_speed(row, a, b);
  for (std::size_t k = 0; k + 1 < list.size(); ++k) {
    const Difference &low = list[k], &high = list[k + 1];
    if (!(low.by() * high.by() < 0)) continue;
    const auto here = list.begin() + static_cast<std::ptrdiff_t>(k);
    if (!stands_out(*row.words, std::make_reverse_iterator(here + 1), list.rend()) ||
        !stands_out(*row.words, here + 1, list.end()))
      continue;
    const double share = low.by() / (low.by() - high.by());
    found.push_back({&row, a.letter, b.letter, low.rpm + share * (high.rpm - low.rpm), low.by() < 0});
  }
}

bool asked_for(const FigureRow& row) { return row.words && row.words->better != FigureWords::Better::neither; }

}  // namespace

std::vector<Crossing> crossings(const std::vector<Layout>& layouts) {
  std::vector<Crossing> found;
  for (std::size_t k = 1; k < layouts.size(); ++k)
    for (const FigureRow& row : figure_rows())
      if (asked_for(row)) add_crossings(row, layouts.front(), layouts[k], found);
  std::ranges::stable_sort(found, {}, [](const Crossing& c) { return c.row->words->rank; });
  return found;
}

std::vector<std::string> crossing_sentences(const std::vector<Layout>& layouts) {
  std::vector<std::string> lines;
  for (const Crossing& c : crossings(layouts)) {
    const FigureWords& words = *c.row->words;
    const bool low = words.better == FigureWords::Better::low, second_below = c.second_less_below == low;
    const std::string &below = second_below ? c.second : c.first, &above = second_below ? c.first : c.second;
    const std::string& way = low ? words.less : words.more;
    lines.push_back(fmt::format("{}: {} {} {} up to about {:.0f} rpm, {} above", words.name, below,
                                way == "better" ? "is" : "has", way, 50 * std::round(c.rpm / 50), above));
  }
  return lines;
}

}  // namespace pulsewright
