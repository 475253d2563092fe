#include "shared/cam_angle.hpp"

#include <array>
#include <cmath>
#include <numbers>
#include <string>

#include "shared/error.hpp"
#include "shared/units.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

struct CardWords {
  std::string_view words;
  double sign;
  DeadCentre dead;
};

// The longer spelling first: "abdc" must not be taken for anything ending in "bdc".
constexpr std::array<CardWords, 8> endings{{{"before bdc", -1, DeadCentre::bottom},
                                            {"before tdc", -1, DeadCentre::top},
                                            {"after bdc", 1, DeadCentre::bottom},
                                            {"after tdc", 1, DeadCentre::top},
                                            {"bbdc", -1, DeadCentre::bottom},
                                            {"btdc", -1, DeadCentre::top},
                                            {"abdc", 1, DeadCentre::bottom},
                                            {"atdc", 1, DeadCentre::top}}};

[[noreturn]] void refuse(std::string_view text, std::string_view key) {
  throw Error(ErrorKind::case_file, in_quotes(text) + " is not a cam timing for `" + std::string(key) + "`", {},
              "write it as on a cam card: \"54 deg before bdc\", \"18 deg after tdc\" or \"centre 108 deg after tdc\"");
}

// Lower case, one blank between words.
std::string tidy(std::string_view text) {
  std::string result;
  for (const char c : lower_case(trimmed(text)))
    if (c != ' ' || result.empty() || result.back() != ' ') result += c;
  return result;
}

bool take_centre(std::string& words) {
  for (const std::string_view word : {"centre ", "center "}) {
    if (!words.starts_with(word)) continue;
    words.erase(0, word.size());
    return true;
  }
  return false;
}

}  // namespace

CamAngle parse_cam_angle(std::string_view text, std::string_view key) {
  constexpr double full_turn = 2 * std::numbers::pi;
  std::string words = tidy(text);
  CamAngle result{0, DeadCentre::top, take_centre(words)};
  for (const CardWords& ending : endings) {
    if (!words.ends_with(ending.words)) continue;
    const std::string angle = words.substr(0, words.size() - ending.words.size());
    if (trimmed(angle).empty()) refuse(text, key);
    result.after = ending.sign * parse_quantity(trimmed(angle), Dimension::angle, key);
    result.dead = ending.dead;
    if (std::abs(result.after) > full_turn) refuse(text, key);
    return result;
  }
  refuse(text, key);
}

}  // namespace pulsewright
