#pragma once
// What tubes are made of: conductivity, heat capacity and growth against temperature. One visible table.

#include <span>
#include <string_view>

namespace pulsewright {

/// A property that changes with temperature, as a straight line through two points.
struct LineInTemperature {
  double T1, value1, T2, value2;  // K and the property's unit
  double at(double T) const { return value1 + (value2 - value1) * (T - T1) / (T2 - T1); }
};

struct Alloy {
  std::string_view name;            // as the case writes it: a type number or grade of a standard, or plain words
  std::string_view designation;     // EN or UNS
  double density;                   // at room temperature, kg/m3
  LineInTemperature conductivity;   // W/(m K)
  LineInTemperature heat_capacity;  // J/(kg K)
  /// Mean expansion from 20 degC to 100, 600 and 1000 degC, 1/K.
  double expansion_100C, expansion_600C, expansion_1000C;
  double hot_limit;  // K: above it the skin scales away or the strength goes, for service that comes and goes
};

/// All of them; the first is what is assumed.
std::span<const Alloy> alloys();

/// By name or designation ("304", "1.4301", "S30400", "mild steel"). Throws Error (case_file) with the nearest name.
const Alloy& find_alloy(std::string_view text);

/// How much longer a metre gets from 20 degC to T, m/m.
double growth_per_metre(const Alloy& alloy, double T);

}  // namespace pulsewright
