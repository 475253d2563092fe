// What a joint does to a weak pulse, against the coefficients of linear acoustics.

#include <algorithm>
#include <cmath>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/joint_rigs.hpp"

namespace pulsewright {
namespace {

constexpr double pulse_height = 50;      // Pa on 1e5: weak enough that its square does not count
constexpr double pulse_length = 1.5e-3;  // s: 0.88 m of duct
constexpr double probe = 0.6;            // m before the joint: the pulse has passed when its echo comes

struct Echo {
  double reflected, transmitted;  // of the incoming pulse's height
};

double strongest(double a, double b) { return std::abs(b) > std::abs(a) ? b : a; }

/// A pulse comes down duct 0; the last duct is watched.
Echo echo_at(const JointSpec& spec, const std::vector<double>& areas) {
  std::vector<StarDuct> ducts;
  for (double area : areas)
    ducts.push_back({0.5, std::sqrt(area / std::numbers::pi * 4), {}, StarDuct::Far::endless, {}});
  ducts[0].length = 1;
  ducts[0].signal = pulse_signal(pulse_height, pulse_length);
  const Star star = make_star(spec, ducts, 0.01);
  const int last = static_cast<int>(areas.size()) - 1;
  const double c = std::sqrt(rig_gamma * rig_R * rig_T), passed = (1 - probe) / c + pulse_length;
  Echo echo{0, 0};
  while (star.net->time() < passed + 2 * probe / c) {
    star.net->step(star.net->allowed_step());
    const auto at = [&](int duct, double before) {
      const auto back = static_cast<std::size_t>(before / star.net->dx(duct));
      return (star.net->cell(duct, star.net->cells(duct) - 1 - back).p - rig_p) / pulse_height;
    };
    if (star.net->time() > passed) echo.reflected = strongest(echo.reflected, at(0, probe));
    echo.transmitted = strongest(echo.transmitted, at(last, 0.1));
  }
  return echo;
}

JointSpec area_step() {
  JointSpec spec{.name = "step", .p = rig_p, .T = rig_T};
  spec.ports = {{{-1, 0, 0}, 0}, {{1, 0, 0}, 0}};
  return spec;
}

std::vector<double> answer(const Echo& echo, double ratio) {
  return {echo.reflected, echo.transmitted, ratio * echo.transmitted * echo.transmitted};
}

constexpr double unit_area = 1.2e-3;

void add_steps(CheckList& list) {
  const CheckList::Table table{{"A2/A1", "area step, reflected", "area step, transmitted", "area step, energy through"},
                               1,
                               {{0.25, 0.6, 1.6, 0.64},
                                {0.5, 0.333333333, 1.33333333, 0.888888889},
                                {0.7, 0.176470588, 1.17647059, 0.968858131},
                                {1, 0, 1, 1},
                                {1.5, -0.2, 0.8, 0.96},
                                {2, -0.333333333, 0.666666667, 0.888888889},
                                {3, -0.5, 0.5, 0.75},
                                {4, -0.6, 0.4, 0.64},
                                {9, -0.8, 0.2, 0.36}}};
  list.table(table, [](std::span<const double> key) {
    return answer(echo_at(area_step(), {unit_area, key[0] * unit_area}), key[0]);
  });
}

void add_junctions(CheckList& list) {
  const CheckList::Table table{
      {"ducts in", "Aout/Ain", "junction, reflected", "junction, transmitted", "junction, energy to the outlet"},
      2,
      {{2, 0.5, -0.2, 0.8, 0.32},
       {2, 1, -0.333333333, 0.666666667, 0.444444444},
       {2, 1.5, -0.428571429, 0.571428571, 0.489795918},
       {2, 2, -0.5, 0.5, 0.5},
       {2, 3, -0.6, 0.4, 0.48},
       {2, 4, -0.666666667, 0.333333333, 0.444444444},
       {3, 0.5, -0.428571429, 0.571428571, 0.163265306},
       {3, 1, -0.5, 0.5, 0.25},
       {3, 1.5, -0.555555556, 0.444444444, 0.296296296},
       {3, 2, -0.6, 0.4, 0.32},
       {3, 3, -0.666666667, 0.333333333, 0.333333333},
       {3, 4, -0.714285714, 0.285714286, 0.326530612},
       {4, 0.5, -0.555555556, 0.444444444, 0.0987654321},
       {4, 1, -0.6, 0.4, 0.16},
       {4, 1.5, -0.636363636, 0.363636364, 0.198347107},
       {4, 2, -0.666666667, 0.333333333, 0.222222222},
       {4, 3, -0.714285714, 0.285714286, 0.244897959},
       {4, 4, -0.75, 0.25, 0.25},
       {5, 0.5, -0.636363636, 0.363636364, 0.0661157025},
       {5, 1, -0.666666667, 0.333333333, 0.111111111},
       {5, 1.5, -0.692307692, 0.307692308, 0.142011834},
       {5, 2, -0.714285714, 0.285714286, 0.163265306},
       {5, 3, -0.75, 0.25, 0.1875},
       {5, 4, -0.777777778, 0.222222222, 0.197530864}}};
  list.table(table, [](std::span<const double> key) {
    std::vector<double> areas(static_cast<std::size_t>(key[0]), unit_area);
    areas.push_back(key[1] * unit_area);
    return answer(echo_at(cone(static_cast<int>(key[0]), 15), areas), key[1]);
  });
}

void add_equal_ducts(CheckList& list) {
  list.absolute(0.003, "the scheme loses 0.1-0.2 % of this pulse on its way");
  for (JointLaw law : {JointLaw::momentum, JointLaw::constant_pressure})
    for (int others : {2, 4}) {
      const std::string name = std::to_string(others + 1) + " equal ducts, " +
                               (law == JointLaw::momentum ? "momentum" : "constant pressure") + ", reflected";
      const std::vector<double> areas(static_cast<std::size_t>(others + 1), unit_area);
      list.value(name, (1.0 - others) / (1.0 + others), echo_at(cone(others, 20, law), areas).reflected);
    }
}

}  // namespace

std::vector<Check> joint_acoustic_checks() {
  CheckList list("joints, weak pulses",
                 "Pierce, Acoustics, 1989, ch. 7; Munjal, Acoustics of Ducts and Mufflers, 1987, ch. 2; R = (A1 - sum "
                 "A)/(A1 + sum A)");
  list.absolute(0.01, "1 % of the incoming pulse: cells of 10 mm against a pulse of 0.88 m");
  add_steps(list);
  add_junctions(list);
  add_equal_ducts(list);
  return list.checks();
}

}  // namespace pulsewright
