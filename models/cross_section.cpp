#include "models/cross_section.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "shared/error.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

using std::numbers::pi;

[[noreturn]] void refuse(std::string_view text, std::string why) {
  throw Error(ErrorKind::case_file, fmt::format("{} {}", in_quotes(text), why), {},
              "write \"round 32 mm\", \"oval 36 mm x 28 mm\" or \"rectangle 34 mm x 28 mm\"");
}

std::string_view after(std::string_view text, std::string_view word) {
  text.remove_prefix(word.size());
  return text;
}

void need_positive(std::string_view text, double a, double b) {
  if (!(a > 0 && b > 0)) refuse(text, "needs sizes above zero");
}

}  // namespace

CrossSection round_section(double bore) { return {pi / 4 * bore * bore, pi * bore}; }

CrossSection oval_section(double width, double height) {
  const double ends = std::min(width, height), straight = std::max(width, height) - ends;
  return {pi / 4 * ends * ends + straight * ends, pi * ends + 2 * straight};
}

CrossSection rectangle_section(double width, double height) { return {width * height, 2 * (width + height)}; }

double equal_area_bore(double area) { return std::sqrt(4 * area / pi); }

CrossSection parse_cross_section(std::string_view text) {
  if (text.starts_with("round ")) {
    const double bore = parse_quantity(after(text, "round "), Dimension::length, "round");
    need_positive(text, bore, bore);
    return round_section(bore);
  }
  for (std::string_view shape : {"oval ", "rectangle "}) {
    if (!text.starts_with(shape)) continue;
    const auto [width, height] = parse_pair(after(text, shape), Dimension::length, shape.substr(0, shape.size() - 1));
    need_positive(text, width, height);
    return shape == "oval " ? oval_section(width, height) : rectangle_section(width, height);
  }
  refuse(text, "is not a shape");
}

}  // namespace pulsewright
