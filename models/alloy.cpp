#include "models/alloy.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "shared/error.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr double room = 293.15, zero_celsius = 273.15;  // K

constexpr LineInTemperature line(double C1, double value1, double C2, double value2) {
  return {C1 + zero_celsius, value1, C2 + zero_celsius, value2};
}

// Source: conductivity at 100 and 500 degC, density and expansion of 304, 321, N06625 and R50400 from public data sheets of
// the grades, which differ among themselves by 1 % in density, 10 % in conductivity and 5 % in expansion; heat capacity
// of the austenitic steels and all of the mild steel from the formulas of EN 1993-1-2:2005, section 3.4 and annex C,
// from memory; 309, the heat capacities of nickel and titanium, and cast iron from memory. Expansion of 304 at 1000 degC
// and of 309 from memory. Hot limits (scaling in air, coming and going) are from memory: guides, not permissions.
constexpr std::array<Alloy, 8> table{{
    {"304", "EN 1.4301, UNS S30400", 8000, line(100, 16.2, 500, 21.5), line(100, 475, 900, 564), 17.3e-6, 18.6e-6,
     19.8e-6, 870 + zero_celsius},
    {"321", "EN 1.4541, UNS S32100", 7920, line(100, 16.1, 500, 22.2), line(100, 475, 900, 564), 16.6e-6, 18.9e-6,
     20.5e-6, 870 + zero_celsius},
    {"347", "EN 1.4550, UNS S34700", 7960, line(100, 16.1, 500, 22.2), line(100, 475, 900, 564), 16.6e-6, 18.9e-6,
     20.5e-6, 870 + zero_celsius},
    {"309", "EN 1.4833, UNS S30908", 7980, line(100, 15.6, 500, 18.7), line(100, 475, 900, 564), 15.0e-6, 17.8e-6,
     19.2e-6, 980 + zero_celsius},
    {"625", "EN 2.4856, UNS N06625", 8440, line(100, 10.9, 500, 15.7), line(100, 430, 900, 620), 12.8e-6, 14.0e-6,
     16.2e-6, 980 + zero_celsius},
    {"titanium grade 2", "EN 3.7035, UNS R50400", 4510, line(100, 16.4, 500, 17.0), line(100, 540, 700, 640), 8.6e-6,
     9.7e-6, 10.1e-6, 430 + zero_celsius},
    {"mild steel", "EN 1.0038, UNS K02502", 7850, line(100, 50.7, 800, 27.3), line(100, 488, 600, 760), 12.3e-6,
     14.4e-6, 14.0e-6, 550 + zero_celsius},
    {"cast iron", "EN-GJS-SiMo", 7000, line(100, 25.0, 500, 27.0), line(100, 500, 800, 700), 11.5e-6, 13.0e-6, 13.8e-6,
     820 + zero_celsius},
}};

/// "EN 1.4301, UNS S30400" holds the word "1.4301".
bool has_word(std::string_view designation, std::string_view word) {
  const auto at = designation.find(word);
  if (at == std::string_view::npos) return false;
  const auto end = at + word.size();
  const bool begins = at == 0 || designation[at - 1] == ' ';
  return begins && (end == designation.size() || designation[end] == ',');
}

std::string_view without(std::string_view text, std::string_view prefix) {
  if (text.starts_with(prefix)) text.remove_prefix(prefix.size());
  return trimmed(text);
}

}  // namespace

std::span<const Alloy> alloys() { return table; }

const Alloy& find_alloy(std::string_view text) {
  const std::string lower = lower_case(text);
  const std::string_view word = without(without(trimmed(lower), "en "), "uns ");
  for (const Alloy& alloy : table)
    if (!word.empty() && (alloy.name == word || has_word(lower_case(alloy.designation), word))) return alloy;
  std::vector<std::string> names;
  for (const Alloy& alloy : table) names.emplace_back(alloy.name);
  const std::string near = nearest_word(word, names);
  throw Error(ErrorKind::case_file, in_quotes(text) + " is no alloy of the table", {},
              near.empty() ? "it has " + listed(names) : "nearest: " + in_quotes(near) + "; it has " + listed(names));
}

// Equation   dL/L = a(T) (T - 293 K), a in straight lines between its values at 100, 600 and 1000 degC, flat outside
// Source     definition of the mean coefficient; values: the table above
// Symbols    dL/L m/m; a mean expansion from 20 degC, 1/K; T K
// Valid for  up to 1000 degC; data sheets differ by 5 %
// Tested by  tests/models/alloy_test.cpp
double growth_per_metre(const Alloy& alloy, double T) {
  const double C = T - zero_celsius, low = std::clamp((C - 100) / 500, 0.0, 1.0),
               high = std::clamp((C - 600) / 400, 0.0, 1.0);
  const double mean = alloy.expansion_100C + low * (alloy.expansion_600C - alloy.expansion_100C) +
                      high * (alloy.expansion_1000C - alloy.expansion_600C);
  return mean * (T - room);
}

}  // namespace pulsewright
