#include "shared/units.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <numbers>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/udunits.hpp"
#include "shared/unit_names.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

struct DimensionRow {
  Dimension dimension;
  std::string_view name, si_unit, example;
  std::string_view spoken_unit;  // of messages
  double spoken_size;            // one spoken unit in SI
  Range usual;
};

constexpr double degree = std::numbers::pi / 180;

// The visible table: a new dimension is a row here and a word in the enum, in the same order.
constexpr std::array<DimensionRow, 22> rows{{
    {Dimension::length, "a length", "m", "86 mm", "mm", 1e-3, above(0, 1e3)},
    {Dimension::area, "an area", "m^2", "350 mm^2", "mm^2", 1e-6, above(0, 1e2)},
    {Dimension::volume, "a volume", "m^3", "60 cm^3", "cm^3", 1e-6, above(0, 1e4)},
    {Dimension::pressure_absolute, "an absolute pressure", "Pa", "1.2 bar", "bar", 1e5, between(1, 1e9)},
    {Dimension::pressure_gauge, "a gauge pressure", "Pa", "1.0 bar", "bar", 1e5, between(-1e5, 1e9)},
    {Dimension::pressure_difference, "a pressure difference", "Pa", "0.15 bar", "bar", 1e5, between(-1e9, 1e9)},
    {Dimension::temperature, "a temperature", "K", "45 degC", "K", 1, between(1, 1e4)},
    {Dimension::temperature_difference, "a temperature difference", "K", "30 K", "K", 1, between(-1e4, 1e4)},
    {Dimension::angle, "an angle", "radian", "15 deg", "deg", degree, between(-1e3, 1e3)},
    {Dimension::time, "a time", "s", "12 ms", "ms", 1e-3, above(0, 1e5)},
    {Dimension::mass, "a mass", "kg", "350 g", "kg", 1, above(0, 1e5)},
    {Dimension::mass_flow, "a mass flow", "kg/s", "0.16 kg/s", "kg/s", 1, above(0, 1e4)},
    {Dimension::velocity, "a velocity", "m/s", "20 m/s", "m/s", 1, between(-1e4, 1e4)},
    {Dimension::inertia, "an inertia", "kg m^2", "3.5e-5 kg m^2", "kg m^2", 1, above(0, 1e4)},
    {Dimension::heat_flux, "a heat flux", "W/m^2", "50 kW/m^2", "kW/m^2", 1e3, between(-1e9, 1e9)},
    {Dimension::power, "a power", "W", "120 kW", "kW", 1e3, between(-1e9, 1e9)},
    {Dimension::torque, "a torque", "N m", "300 Nm", "Nm", 1, between(-1e6, 1e6)},
    {Dimension::force, "a force", "N", "100 N", "N", 1, between(-1e7, 1e7)},
    {Dimension::density, "a density", "kg/m^3", "7900 kg/m^3", "kg/m^3", 1, above(0, 1e5)},
    {Dimension::stiffness, "a spring rate", "N/m", "12 N/mm", "N/mm", 1e3, above(0, 1e9)},
    {Dimension::conductivity, "a heat conductivity", "W/(m K)", "16 W/(m K)", "W/(m K)", 1, above(0, 1e4)},
    {Dimension::heat_transfer, "a heat transfer coefficient", "W/(m^2 K)", "20 W/(m^2 K)", "W/(m^2 K)", 1,
     between(0, 1e6)},
}};

const DimensionRow& row(Dimension dimension) { return rows.at(static_cast<std::size_t>(dimension)); }

bool is_pressure(Dimension d) {
  return d == Dimension::pressure_absolute || d == Dimension::pressure_gauge || d == Dimension::pressure_difference;
}

// One value on its way from text to SI.
struct Request {
  std::string_view text;  // all of it, for messages
  Dimension dimension;
  std::string_view key;
};

std::string key_of(const Request& r) { return r.key.empty() ? "this value" : "`" + std::string(r.key) + "`"; }

[[noreturn]] void refuse(const std::string& what, const std::string& hint) {
  throw Error(ErrorKind::case_file, what, {}, hint);
}

std::string such_as(Dimension d) { return fmt::format("{}, such as \"{}\"", row(d).name, row(d).example); }

bool has_inch_mark(std::string_view unit) {
  for (const std::string_view mark :
       {"\"", "''", "'", "\xE2\x80\xB3", "\xE2\x80\x9D", "\xE2\x80\x9C", "\xE2\x80\x99\xE2\x80\x99"})
    if (unit.starts_with(mark)) return true;
  return false;
}

// What a unit measures, for "450 K is a temperature".
std::string measured_by(const std::string& unit) {
  for (const DimensionRow& r : rows) {
    if (r.dimension == Dimension::angle && !converted(1, unit, "1").comparable) continue;
    if (!converted(1, unit, std::string(r.si_unit)).comparable) continue;
    if (is_pressure(r.dimension)) return "a pressure";
    if (r.dimension == Dimension::angle && unit.find("rad") == std::string::npos &&
        unit.find("deg") == std::string::npos)
      return "a plain ratio";
    return std::string(r.name);
  }
  return "something else";
}

std::string bar(double pascal) { return fmt::format("{:.4g} bar", pascal / 1e5); }

// Gauge in an absolute key or the other way: names what the key takes and the value to write instead.
[[noreturn]] void refuse_mark(const Request& r, PressureMark mark, double pascal) {
  constexpr double air = 101325;  // the standard atmosphere (ISO 2533), only for the example in the hint
  const std::string found = mark == PressureMark::gauge ? "gauge" : "absolute";
  const std::string what =
      fmt::format("{} is {}, but {} takes {}", in_quotes(r.text), found, key_of(r), row(r.dimension).name);
  if (r.dimension == Dimension::pressure_gauge)
    refuse(what,
           fmt::format("keys that end in _gauge take the pressure above ambient; with 1.01325 bar of air around write "
                       "{} = \"{}\"",
                       r.key, bar(pascal - air)));
  if (r.dimension == Dimension::pressure_absolute)
    refuse(what, fmt::format("only keys that end in _gauge take gauge pressure; with 1.01325 bar of air around write "
                             "{} = \"{}\"",
                             r.key, bar(pascal + air)));
  refuse(what, fmt::format("a difference is neither gauge nor absolute: write \"{}\"", bar(pascal)));
}

bool mark_fits(PressureMark mark, Dimension d) {
  if (mark == PressureMark::none) return true;
  return d == (mark == PressureMark::gauge ? Dimension::pressure_gauge : Dimension::pressure_absolute);
}

// UDUNITS-2 holds angles to be plain ratios; here an angle must say so.
bool is_angle_unit(const std::string& unit) {
  for (const std::string_view word :
       {"arc_degree", "rad", "mrad", "radian", "radians", "\xC2\xB0", "arc_minute", "arc_second"})
    if (unit == word) return true;
  return false;
}

void refuse_bad_form(const Request& r, std::string_view unit) {
  if (unit.empty())
    refuse(fmt::format("{} has no unit; {} takes {}", in_quotes(r.text), key_of(r), such_as(r.dimension)),
           "add the unit");
  if (has_inch_mark(unit))
    refuse(fmt::format("{} has an inch or foot mark for a unit; {} takes {}", in_quotes(r.text), key_of(r),
                       such_as(r.dimension)),
           "write inches as in: \"1.5 in\" or \"1-1/4 in\"");
  if (!looks_like_unit(unit))
    refuse(fmt::format("{} is not a unit in {}; {} takes {}", in_quotes(unit), in_quotes(r.text), key_of(r),
                       such_as(r.dimension)),
           "one number, then its unit");
}

// The unit in the spelling of UDUNITS-2, in lower case if only that is known.
std::string known_unit(const Request& r, std::string_view written) {
  std::string unit = translated_unit(written, r.dimension == Dimension::torque);
  if (converted(1, unit, "1").known) return unit;
  if (converted(1, lower_case(unit), "1").known) return lower_case(unit);
  refuse(fmt::format("{} is not a unit in {}; {} takes {}", in_quotes(written), in_quotes(r.text), key_of(r),
                     such_as(r.dimension)),
         {});
}

double in_si(const Request& r, double number, std::string_view written) {
  const std::string unit = known_unit(r, written);
  const Conversion si = converted(number, unit, std::string(row(r.dimension).si_unit));
  const bool angle_missing = r.dimension == Dimension::angle && !is_angle_unit(unit);
  if (!si.comparable || angle_missing)
    refuse(
        fmt::format("{} is {}, but {} takes {}", in_quotes(r.text), measured_by(unit), key_of(r), such_as(r.dimension)),
        {});
  return r.dimension == Dimension::temperature_difference ? si.difference : si.value;
}

}  // namespace

std::string_view dimension_name(Dimension dimension) { return row(dimension).name; }
std::string_view dimension_example(Dimension dimension) { return row(dimension).example; }

Range usual_range(Dimension dimension) { return row(dimension).usual; }

std::string in_words(double value, Dimension dimension) {
  return fmt::format("{:.6g} {}", value / row(dimension).spoken_size, row(dimension).spoken_unit);
}

double parse_quantity(std::string_view text, Dimension dimension, std::string_view key) {
  constexpr std::size_t longest = 200;
  const Request request{text, dimension, key};
  if (text.size() > longest) refuse(in_quotes(text) + " is too long for a value", "one number, then its unit");
  const LeadingNumber number = leading_number(text);
  refuse_bad_form(request, number.rest);
  const MarkedUnit marked = is_pressure(dimension) ? split_pressure_mark(number.rest)
                                                   : MarkedUnit{std::string(number.rest), PressureMark::none};
  const double value = in_si(request, number.value, marked.unit);
  if (!std::isfinite(value)) refuse(in_quotes(text) + " is too large a number", "a value must be finite");
  if (!mark_fits(marked.mark, dimension)) refuse_mark(request, marked.mark, value);
  if (dimension == Dimension::temperature && value < 0)
    refuse(fmt::format("{} is below absolute zero ({:.6g} K) for {}", in_quotes(text), value, key_of(request)), {});
  return value;
}

std::pair<std::string_view, std::string_view> split_by_x(std::string_view text) {
  const auto joins = [](char c) { return c == ' ' || (c >= '0' && c <= '9'); };
  for (std::size_t i = 1; i + 1 < text.size(); ++i) {
    const std::size_t width = text.substr(i).starts_with("\xC3\x97") ? 2 : 1;  // the multiplication sign in UTF-8
    const bool is_x = width == 2 || text[i] == 'x' || text[i] == 'X' || text[i] == '*';
    if (!is_x || i + width >= text.size()) continue;
    if (!joins(text[i - 1]) && !joins(text[i + width])) continue;
    return {trimmed(text.substr(0, i)), trimmed(text.substr(i + width))};
  }
  return {trimmed(text), {}};
}

std::pair<double, double> parse_pair(std::string_view text, Dimension dimension, std::string_view key) {
  const auto [first, second] = split_by_x(text);
  const std::string wanted = fmt::format("{} x {}", row(dimension).example, row(dimension).example);
  if (second.empty())
    refuse(fmt::format("{} is one value; `{}` takes two", in_quotes(text), key), "such as " + in_quotes(wanted));
  const LeadingNumber one = leading_number(first), two = leading_number(second);
  const std::string lent = one.rest.empty() ? std::string(first) + " " + std::string(two.rest) : std::string(first);
  return {parse_quantity(lent, dimension, key), parse_quantity(second, dimension, key)};
}

}  // namespace pulsewright
