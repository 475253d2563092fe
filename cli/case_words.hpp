#pragma once
// Keys and values of a case as a person would say them.

#include <string>
#include <string_view>

namespace pulsewright {

/// A TOML value without its quotes and braces: { flow = "0.16 kg/s", ratio = 2.0 } -> flow 0.16 kg/s, ratio 2.0
std::string plain_value(std::string_view toml);

/// each_primary -> each primary, turbine.capacity -> turbine capacity
std::string spaced_name(std::string_view name);

/// "220 mm long", "tube NPS 1-1/2 sch 10S"
std::string value_in_words(std::string_view key, std::string_view toml_value);

/// each_primary.tube="NPS 1-1/2 sch 10S" -> every primary: tube NPS 1-1/2 sch 10S
std::string change_in_words(std::string_view assignment);

}  // namespace pulsewright
