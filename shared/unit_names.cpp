#include "shared/unit_names.hpp"

#include <array>
#include <cctype>
#include <utility>

#include "shared/words.hpp"

namespace pulsewright {
namespace {

struct Spelling {
  std::string_view lower, unit;
};

// Words that mean one thing in a workshop whatever their letter case: "MM" is no mega-anything.
// The metric horsepower is 75 kgf m/s by definition, 735.49875 W.
constexpr std::array<Spelling, 66> spellings{{
    {"mm", "mm"},
    {"cm", "cm"},
    {"m", "m"},
    {"km", "km"},
    {"in", "in"},
    {"inch", "in"},
    {"inches", "in"},
    {"ft", "ft"},
    {"thou", "mil"},
    {"mil", "mil"},
    {"deg", "arc_degree"},
    {"degs", "arc_degree"},
    {"degree", "arc_degree"},
    {"degrees", "arc_degree"},
    {"rad", "rad"},
    {"c", "degC"},
    {"degc", "degC"},
    {"celsius", "degC"},
    {"f", "degF"},
    {"degf", "degF"},
    {"fahrenheit", "degF"},
    {"k", "K"},
    {"kelvin", "K"},
    {"s", "s"},
    {"sec", "s"},
    {"ms", "ms"},
    {"us", "us"},
    {"min", "min"},
    {"h", "h"},
    {"hr", "h"},
    {"pa", "Pa"},
    {"hpa", "hPa"},
    {"kpa", "kPa"},
    {"mpa", "MPa"},
    {"bar", "bar"},
    {"mbar", "mbar"},
    {"psi", "psi"},
    {"atm", "atm"},
    {"g", "g"},
    {"kg", "kg"},
    {"mg", "mg"},
    {"lb", "lb"},
    {"lbs", "lb"},
    {"oz", "avoirdupois_ounce"},
    {"n", "N"},
    {"kn", "kN"},
    {"lbf", "lbf"},
    {"w", "W"},
    {"kw", "kW"},
    {"hp", "hp"},
    {"bhp", "hp"},
    {"ps", "735.49875 W"},
    {"j", "J"},
    {"kj", "kJ"},
    {"l", "l"},
    {"ml", "ml"},
    {"cc", "cm^3"},
    {"ccm", "cm^3"},
    {"nm", "N.m"},
    {"knm", "kN.m"},
    {"kgm", "kg.m"},
    {"mps", "m/s"},
    {"kph", "km/h"},
    {"mmhg", "mmHg"},
    {"inhg", "inHg"},
    {"um", "um"},
}};

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '_'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_other_byte(char c) {
  return (static_cast<unsigned char>(c) & 0x80U) != 0;
}  // of a letter outside ASCII: µ, °, ²

std::string translated_word(std::string_view word, bool torque) {
  const std::string lower = lower_case(word);
  if (word == "mPa") return "mPa";                                         // only this one is thousandths
  if (lower == "nm" && !torque && word != "Nm") return std::string(word);  // nanometre
  for (const Spelling& s : spellings)
    if (s.lower == lower) return std::string(s.unit);
  return std::string(word);
}

// Degrees with their sign or a blank: "deg C", "°C", "° F" are temperatures, "°" alone an angle.
std::string join_degree(std::string text) {
  for (const auto& [from, to] : {std::pair<std::string_view, std::string_view>{"deg c", "degC"},
                                 {"deg f", "degF"},
                                 {"\xC2\xB0 c", "degC"},
                                 {"\xC2\xB0 f", "degF"},
                                 {"\xC2\xB0"
                                  "c",
                                  "degC"},
                                 {"\xC2\xB0"
                                  "f",
                                  "degF"},
                                 {"deg. c", "degC"},
                                 {"deg. f", "degF"}})
    if (lower_case(text) == from) text = to;
  return text;
}

// "lb ft" and its turns are force times length where torque is asked; elsewhere lb stays a mass.
std::string join_pound_foot(std::string text) {
  for (const std::string_view form :
       {"lb ft", "lb-ft", "lb.ft", "lbft", "ft lb", "ft-lb", "ft.lb", "ftlb", "lbf ft", "lbf-ft", "ft lbf", "ft-lbf"})
    if (lower_case(text) == form) return "lbf.ft";
  return text;
}

}  // namespace

MarkedUnit split_pressure_mark(std::string_view unit) {
  static constexpr std::array<std::string_view, 9> bases{"psi", "bar", "mbar", "pa",     "hpa",
                                                         "kpa", "mpa", "atm",  "kgf/cm2"};
  static constexpr std::array<std::pair<std::string_view, PressureMark>, 7> marks{
      {{"g", PressureMark::gauge},
       {"ga", PressureMark::gauge},
       {"gauge", PressureMark::gauge},
       {"gage", PressureMark::gauge},
       {"a", PressureMark::absolute},
       {"abs", PressureMark::absolute},
       {"absolute", PressureMark::absolute}}};
  std::string plain;
  for (const char c : lower_case(unit))
    if (c != ' ' && c != '(' && c != ')' && c != '.' && c != '_') plain += c;
  for (const std::string_view base : bases) {
    if (!plain.starts_with(base)) continue;
    for (const auto& [mark, meaning] : marks)
      if (plain.substr(base.size()) == mark) return {std::string(unit.substr(0, base.size())), meaning};
  }
  return {std::string(unit), PressureMark::none};
}

bool looks_like_unit(std::string_view unit) {
  if (unit.empty() || is_digit(unit[0]) || unit[0] == '+' || unit[0] == '-' || unit[0] == '/') return false;
  for (std::size_t i = 0; i < unit.size(); ++i) {
    const char c = unit[i], before = i > 0 ? unit[i - 1] : ' ';
    if (is_letter(c) || is_other_byte(c)) continue;
    if (is_digit(c)) {
      if (!is_letter(before) && !is_digit(before) && before != '^' && before != '-') return false;
      continue;
    }
    if (std::string_view(" ^*/.()-").find(c) == std::string_view::npos) return false;
  }
  return true;
}

std::string translated_unit(std::string_view text, bool torque) {
  std::string source = join_degree(std::string(trimmed(text)));
  if (torque) source = join_pound_foot(source);
  std::string result, word;
  for (const char c : source + ' ') {  // the blank at the end closes the last word
    if (is_letter(c)) {
      word += c;
      continue;
    }
    if (!word.empty()) result += translated_word(word, torque);
    word.clear();
    result += c;
  }
  result.pop_back();
  return result;
}

}  // namespace pulsewright
