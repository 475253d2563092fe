#include "shared/units.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

// Conversion factors are exact by definition (inch 25.4 mm, psi from lbf and inch); what remains is rounding.
constexpr double rounding = 1e-12;

void expect_si(const std::string& text, Dimension dimension, double si) {
  EXPECT_NEAR(parse_quantity(text, dimension, "key"), si, rounding * std::abs(si)) << text;
}

// The whole message of a refusal; empty if the text was taken.
std::string refusal(const std::string& text, Dimension dimension, const std::string& key = "bore") {
  try {
    parse_quantity(text, dimension, key);
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::case_file);
    return error.what();
  }
  return {};
}

void expect_said(const std::string& message, const std::string& part) {
  EXPECT_NE(message.find(part), std::string::npos) << "'" << part << "' is not in: " << message;
}

TEST(Units, ReadDecimalsAndTheFractionsOfTheTrade) {
  expect_si("86 mm", Dimension::length, 0.086);
  expect_si("86mm", Dimension::length, 0.086);
  expect_si("  8.6e1 mm ", Dimension::length, 0.086);
  expect_si(".5 in", Dimension::length, 0.0127);
  expect_si("1-1/4 in", Dimension::length, 1.25 * 0.0254);
  expect_si("1 1/2 in", Dimension::length, 1.5 * 0.0254);
  expect_si("3/4 in", Dimension::length, 0.75 * 0.0254);
  expect_si("-1-1/4 in", Dimension::length, -1.25 * 0.0254);
  expect_si("65 thou", Dimension::length, 65 * 25.4e-6);
}

TEST(Units, ConvertEveryDimensionToSi) {
  expect_si("350 mm^2", Dimension::area, 350e-6);
  expect_si("60 cm^3", Dimension::volume, 60e-6);
  expect_si("2.0 l", Dimension::volume, 2e-3);
  expect_si("1.2 bar", Dimension::pressure_absolute, 1.2e5);
  expect_si("18 psi", Dimension::pressure_gauge, 18 * 4.4482216152605 / (0.0254 * 0.0254));
  expect_si("45 degC", Dimension::temperature, 318.15);
  expect_si("45 C", Dimension::temperature, 318.15);
  expect_si("212 F", Dimension::temperature, 373.15);
  expect_si("900 K", Dimension::temperature, 900);
  expect_si("18 F", Dimension::temperature_difference, 10);
  expect_si("15 deg", Dimension::angle, 15 * std::numbers::pi / 180);
  expect_si("12 ms", Dimension::time, 0.012);
  expect_si("0.16 kg/s", Dimension::mass_flow, 0.16);
  expect_si("60 lb/min", Dimension::mass_flow, 0.45359237);
  expect_si("3.5e-5 kg m^2", Dimension::inertia, 3.5e-5);
  expect_si("50 kW/m^2", Dimension::heat_flux, 5e4);
  expect_si("300 Nm", Dimension::torque, 300);
  expect_si("10 lb ft", Dimension::torque, 10 * 4.4482216152605 * 0.3048);
  expect_si("100 PS", Dimension::power, 73549.875);
  expect_si("20 m/s", Dimension::velocity, 20);
  expect_si("7900 kg/m^3", Dimension::density, 7900);
}

TEST(Units, AreTakenInAnyLetterCase) {
  expect_si("86 MM", Dimension::length, 0.086);
  expect_si("86 Mm", Dimension::length, 0.086);
  expect_si("1.5 IN", Dimension::length, 0.0381);
  expect_si("1.5 Inches", Dimension::length, 0.0381);
  expect_si("2 METRES", Dimension::length, 2);
  expect_si("18 PSI", Dimension::pressure_gauge, 18 * 4.4482216152605 / (0.0254 * 0.0254));
  expect_si("1 BAR", Dimension::pressure_absolute, 1e5);
  expect_si("0.1 mpa", Dimension::pressure_absolute, 1e5);
  expect_si("45 DEGC", Dimension::temperature, 318.15);
  expect_si("900 k", Dimension::temperature, 900);
  expect_si("12 MS", Dimension::time, 0.012);
  expect_si("0.16 KG/S", Dimension::mass_flow, 0.16);
  expect_si("300 NM", Dimension::torque, 300);
  expect_si("15 DEG", Dimension::angle, 15 * std::numbers::pi / 180);
  expect_si("60 CC", Dimension::volume, 60e-6);
}

TEST(Units, AWrongDimensionIsRefusedNamingBoth) {
  const std::string kelvin = refusal("450 K", Dimension::length);
  expect_said(kelvin, "'450 K' is a temperature");
  expect_said(kelvin, "`bore` takes a length");
  expect_said(refusal("900 C", Dimension::length), "is a temperature");
  expect_said(refusal("86 mm", Dimension::temperature), "is a length");
  expect_said(refusal("86 mm", Dimension::angle), "is a length");
  expect_said(refusal("1 bar", Dimension::mass), "is a pressure");
  expect_said(refusal("15 percent", Dimension::angle), "is a plain ratio");
  expect_said(refusal("3000 rpm", Dimension::length), "is something else");
  expect_said(refusal("100 Hz", Dimension::time), "is something else");
  expect_said(refusal("15 deg", Dimension::length), "is an angle");
}

TEST(Units, AMissingOrMisspeltUnitIsRefusedWithAnExample) {
  expect_said(refusal("86", Dimension::length), "'86' has no unit");
  expect_said(refusal("86", Dimension::length), "such as \"86 mm\"");
  expect_said(refusal("86 mmm", Dimension::length), "'mmm' is not a unit");
  expect_said(refusal("86 milimetres", Dimension::length), "not a unit");
  expect_said(refusal("mm", Dimension::length), "does not begin with a number");
  expect_said(refusal("", Dimension::length), "does not begin with a number");
}

TEST(Units, ADecimalCommaAndAnInchMarkGetTheirOwnHints) {
  expect_said(refusal("36,6 mm", Dimension::length), "write '36.6 mm'");
  expect_said(refusal("1.5\"", Dimension::length), "\"1.5 in\"");
  expect_said(refusal("1-1/4''", Dimension::length), "inch");
  expect_said(refusal("1.5\xE2\x80\xB3", Dimension::length), "inch");
}

TEST(Units, NumbersThatAreNotFiniteAreRefused) {
  for (const char* text : {"nan mm", "NaN mm", "inf mm", "-inf mm", "infinity mm", "+Inf mm"})
    expect_said(refusal(text, Dimension::length), "not a finite number");
  expect_said(refusal("1e400 mm", Dimension::length), "too large");
  expect_said(refusal("1e-400 mm", Dimension::length), "too small");
  expect_said(refusal("1e308 km", Dimension::length), "too large");
  expect_said(refusal("1/0 in", Dimension::length), "divides by zero");
  expect_said(refusal("1-1/0 in", Dimension::length), "divides by zero");
}

TEST(Units, ASecondNumberIsNeverTakenIntoTheUnit) {
  for (const char* text : {"86 2 mm", "1-1/4-2 in", "86 mm 2", "86 mm.2", "86 mm/3", "86 /m", "1 - 1/4 in",
                           "86 mm since 2000", "86 mm @ 3", "86 --mm", "1/2/3 in", "0x10 mm", "1.5.2 mm", "86 (2 mm)"})
    EXPECT_NE(refusal(text, Dimension::length), "") << text;
}

TEST(Units, GaugeInAnAbsoluteKeyNamesTheRightKey) {
  for (const char* text : {"14 psig", "14 PSIG", "1 barg", "1 bar(g)", "1 bar g", "100 kPa gauge"}) {
    const std::string message = refusal(text, Dimension::pressure_absolute, "pressure");
    expect_said(message, "is gauge, but `pressure` takes an absolute pressure");
    expect_said(message, "_gauge");
  }
  expect_said(refusal("1 barg", Dimension::pressure_absolute, "pressure"), "pressure = \"2.013 bar\"");
}

TEST(Units, AbsoluteInAGaugeKeyNamesTheRightKey) {
  for (const char* text : {"29 psia", "2 bara", "2 bar abs", "200 kPa(a)"})
    expect_said(refusal(text, Dimension::pressure_gauge, "boost_gauge"),
                "is absolute, but `boost_gauge` takes a gauge pressure");
  expect_said(refusal("2.01325 bara", Dimension::pressure_gauge, "boost_gauge"), "boost_gauge = \"1 bar\"");
  expect_said(refusal("2 bara", Dimension::pressure_difference, "drop"), "neither gauge nor absolute");
}

TEST(Units, AMarkThatAgreesWithItsKeyIsTaken) {
  expect_si("1 barg", Dimension::pressure_gauge, 1e5);
  expect_si("2 bara", Dimension::pressure_absolute, 2e5);
  expect_si("100 kPa abs", Dimension::pressure_absolute, 1e5);
}

TEST(Units, TemperaturesBelowAbsoluteZeroAreRefused) {
  expect_said(refusal("-300 degC", Dimension::temperature), "below absolute zero");
  expect_said(refusal("-1 K", Dimension::temperature), "below absolute zero");
}

TEST(Units, AHostileTextGivesACleanMessage) {
  const std::string escape = refusal("86 \x1b[31mmm", Dimension::length);
  EXPECT_EQ(escape.find('\x1b'), std::string::npos);
  EXPECT_LT(refusal(std::string(100000, '9') + " mm", Dimension::length).size(), 300U);
  EXPECT_NE(refusal("1 m" + std::string(190, '('), Dimension::length), "");
  EXPECT_NE(refusal("1 m^99999999999", Dimension::length), "");
}

TEST(Units, AnyTextGivesAFiniteValueOrARefusal) {
  std::mt19937 random(1);
  const std::vector<std::string> parts{"1",   "86",  ".",    ",",    "-",  "/", " ",     "e",        "1e308",
                                       "mm",  "m",   "in",   "deg",  "C",  "K", "^",     "2",        "(",
                                       ")",   "bar", "psig", "abs",  "nm", "x", "@",     "\xC2\xB0", "\"",
                                       "nan", "*",   "%",    "\xff", "kg", "s", "since", "lg(re",    "inf"};
  for (int round = 0; round < 20000; ++round) {
    std::string text;
    for (std::size_t n = 1 + random() % 7; n > 0; --n) text += parts[random() % parts.size()];
    const auto dimension = static_cast<Dimension>(random() % 22);
    try {
      EXPECT_TRUE(std::isfinite(parse_quantity(text, dimension, "key"))) << text;
    } catch (const Error& error) {
      EXPECT_EQ(error.kind(), ErrorKind::case_file) << text;
    }
  }
}

TEST(Units, APairOfValuesMayShareItsUnit) {
  const auto [width, height] = parse_pair("36 mm x 28 mm", Dimension::length, "exit");
  EXPECT_NEAR(width, 0.036, rounding);
  EXPECT_NEAR(height, 0.028, rounding);
  for (const char* text : {"36 x 28 mm", "36x28mm", "36 mm X 28 mm", "36mm x 2.8 cm", "36 \xC3\x97 28 mm"})
    EXPECT_NEAR(parse_pair(text, Dimension::length, "exit").second, 0.028, rounding) << text;
  EXPECT_THROW(parse_pair("36 mm", Dimension::length, "exit"), Error);
  EXPECT_THROW(parse_pair("36 x 28", Dimension::length, "exit"), Error);
}

TEST(Units, MessagesSpeakInWorkshopUnits) {
  EXPECT_EQ(in_words(0.0866, Dimension::length), "86.6 mm");
  EXPECT_EQ(in_words(1.5e5, Dimension::pressure_absolute), "1.5 bar");
  EXPECT_EQ(in_words(std::numbers::pi / 4, Dimension::angle), "45 deg");
}

TEST(Units, EveryDimensionReadsItsOwnExample) {
  for (int i = 0; i <= static_cast<int>(Dimension::heat_transfer); ++i) {
    const auto dimension = static_cast<Dimension>(i);
    EXPECT_GT(parse_quantity(dimension_example(dimension), dimension, "key"), 0) << dimension_example(dimension);
  }
}

}  // namespace
}  // namespace pulsewright
