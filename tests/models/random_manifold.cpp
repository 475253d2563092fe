#include "tests/models/random_manifold.hpp"

#include <fmt/format.h>

#include <vector>

namespace pulsewright::test {
namespace {

/// What the layouts write with.
struct Drawing {
  RandomNumbers& random;
  double tube;  // mm
  std::string text;
  std::vector<std::string> gate_places;  // joints and taps

  double bore() { return tube * random.between(0.85, 1.25); }

  void primary(int cylinder, const std::string& to, double angle, double shortest, double longest) {
    text += fmt::format(
        "[[primary]]\ncylinder = {}\nto = \"{}\"\nangle = \"{:.0f} deg\"\nbore = \"{:.1f} mm\"\nlength = \"{:.0f} "
        "mm\"\n"
        "bends = \"{:.0f} deg\"\n",
        cylinder, to, angle, bore(), random.between(shortest, longest), random.between(0, 270));
    if (random.chance(0.2))
      gate_places.push_back(fmt::format("primary {}:{:.0f}mm", cylinder, random.between(0.3, 0.7) * shortest));
  }

  void joint(const std::string& name, const std::string& outlet) {
    text += fmt::format("[[joint]]\nname = \"{}\"\noutlet = \"{}\"\n", name, outlet);
    if (random.chance(0.15)) text += "law = \"constant-pressure\"\n";
    if (random.chance(0.2)) text += fmt::format("volume = \"{:.1f} cm^3\"\n", random.spread(3, 300));
    gate_places.push_back(name);
  }

  /// A duct of one bore or a taper that begins where `from` says.
  void duct(const std::string& name, const std::string& from, const std::string& to, double angle, double length) {
    const double first = 1.2 * bore(), last = random.chance(0.5) ? first : 1.2 * bore();
    text += fmt::format(
        "[[duct]]\nname = \"{}\"\nfrom = \"{}\"\nto = \"{}\"\nto_angle = \"{:.0f} deg\"\nlength = \"{:.0f} mm\"\n"
        "bore_from = \"{:.1f} mm\"\nbore_to = \"{:.1f} mm\"\n",
        name, from, to, angle, length, first, last);
    if (length > 100 && random.chance(0.3)) gate_places.push_back(fmt::format("{}:{:.0f}mm", name, 0.5 * length));
  }
};

/// The cylinders from `first` to `last` into one joint; a single one makes a step in bore.
void merge(Drawing& d, const std::string& name, const std::string& outlet, int first, int last) {
  for (int c = first; c <= last; ++c) d.primary(c, name, d.random.between(0, 60), 80, 900);
  d.joint(name, outlet);
}

/// Stubs along a pipe that leads to the turbine at its end.
void log_to_the_end(Drawing& d, const std::string& outlet, int first, int last) {
  for (int c = first; c <= last; ++c) {
    const std::string name = fmt::format("over port {}", c), next = fmt::format("log {}", c);
    d.primary(c, name, d.random.between(60, 90), 40, 150);
    d.joint(name, c == last ? outlet : next);
    if (c < last) d.duct(next, name, fmt::format("over port {}", c + 1), 0, d.random.between(60, 130));
  }
}

/// Groups of two or three into merges of their own, which meet in a last one.
void merges_in_groups(Drawing& d, const std::string& outlet, int cylinders) {
  const int size = d.random.whole(2, 3);
  for (int first = 1; first <= cylinders; first += size) {
    const std::string name = fmt::format("merge {}", first), run = fmt::format("run {}", first);
    merge(d, name, run, first, std::min(first + size - 1, cylinders));
    d.duct(run, name, "last", d.random.between(5, 40), d.random.between(60, 500));
  }
  d.joint("last", outlet);
}

/// Two halves in either layout, each with a duct or straight into its scroll.
void divided(Drawing& d, int cylinders) {
  const int middle = cylinders / 2;
  const bool with_ducts = d.random.chance(0.5), logs = d.random.chance(0.3);
  for (const int half : {0, 1}) {
    const std::string scroll = half == 0 ? "turbine.a" : "turbine.b", run = half == 0 ? "run a" : "run b";
    const std::string outlet = with_ducts ? run : scroll;
    const int first = half == 0 ? 1 : middle + 1, last = half == 0 ? middle : cylinders;
    if (logs)
      log_to_the_end(d, outlet, first, last);
    else
      merge(d, half == 0 ? "front" : "rear", outlet, first, last);
    if (with_ducts)
      d.duct(run, logs ? fmt::format("over port {}", last) : (half == 0 ? "front" : "rear"), scroll, 0,
             d.random.between(60, 400));
  }
}

bool downpipe(Drawing& d) {
  if (d.random.chance(0.3)) return false;
  const double bore = d.random.between(1.3, 2.2) * d.tube;
  d.text += fmt::format(
      "[[duct]]\nname = \"downpipe\"\nfrom = \"turbine.out\"\nto = \"air\"\nlength = \"{:.0f} mm\"\nbore_from = "
      "\"{:.1f} "
      "mm\"\nbore_to = \"{:.1f} mm\"\n",
      d.random.between(400, 1500), bore, bore * d.random.between(0.9, 1.3));
  return true;
}

void gates(Drawing& d, bool has_downpipe) {
  const int count = d.random.whole(0, 2);
  for (int k = 0; k < count; ++k) {
    const auto place = static_cast<std::size_t>(d.random.whole(0, static_cast<int>(d.gate_places.size()) - 1));
    const bool piped = has_downpipe && d.random.chance(0.5);
    d.text += fmt::format(
        "[[wastegate]]\nname = \"gate {}\"\nat = \"{}\"\nto = \"{}\"\nbore = \"{:.1f} mm\"\nangle = \"{:.0f} "
        "deg\"\nopening "
        "= {:.2f}\n",
        k + 1, d.gate_places[place], piped ? "downpipe:250mm" : "air", d.tube * d.random.between(0.5, 1.2),
        d.random.between(0, 120), d.random.chance(0.3) ? 0.0 : d.random.between(0, 1));
  }
}

}  // namespace

RandomManifold random_manifold(RandomNumbers& random, int cylinders, double tube) {
  Drawing d{random, tube, {}, {}};
  int scrolls = 1;
  const int layout = random.whole(0, 3);
  if (layout == 0 && cylinders > 1) {
    divided(d, cylinders);
    scrolls = 2;
  } else if (layout == 1) {
    log_to_the_end(d, "turbine", 1, cylinders);
  } else if (cylinders > 7 || (layout == 2 && cylinders > 3)) {  // a joint takes eight ducts
    merges_in_groups(d, "turbine", cylinders);
  } else {
    merge(d, "merge", "turbine", 1, cylinders);
  }
  gates(d, downpipe(d));
  return {d.text, scrolls};
}

}  // namespace pulsewright::test
