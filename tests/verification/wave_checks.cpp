// Waves of finite height in closed form: the solver's own wave relations against published pistons and reflections, and the
// simple wave and its breaking, which the marched checks are held to.
#include <fmt/format.h>

#include <cmath>

#include "solver/wave.hpp"
#include "tests/verification/all_checks.hpp"
#include "tests/verification/simple_wave.hpp"

namespace pulsewright {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// Gas of unit density and sound speed, velocity w toward the end.
EndState gas_at(double gamma, double w) { return {1, w, 1 / gamma, 0, 1, gamma, 1}; }

/// p, rho, T over those ahead and the wave's Mach number, at a piston that leaves (w > 0) or enters gas at rest.
std::vector<double> at_piston(double gamma, double w) {
  const EndState rest = gas_at(gamma, 0);
  const EndState s = behind_wave(wave_pressure(w, rest), rest);
  const double front = s.rho == 1 ? none : -s.w * s.rho / (s.rho - 1);  // mass through the shock
  return {s.p * gamma, s.rho, s.p * gamma / s.rho, front};
}

CheckList::Table expansion_table() {
  return {{"gamma", "piston speed / a0", "receding piston p/p0", "receding piston rho/rho0", "receding piston T/T0"},
          2,
          {{1.4, 0.1, 0.868125533, 0.903920797, 0.9604},
           {1.4, 0.25, 0.698337296, 0.773780937, 0.9025},
           {1.4, 0.5, 0.4782969, 0.59049, 0.81},
           {1.4, 1, 0.2097152, 0.32768, 0.64},
           {1.4, 1.5, 0.0823543, 0.16807, 0.49},
           {1.4, 2, 0.0279936, 0.07776, 0.36},
           {1.4, 3, 0.0016384, 0.01024, 0.16},
           {1.33, 0.1, 0.874494327, 0.904082928, 0.96727225},
           {1.33, 0.25, 0.712088957, 0.774682056, 0.919201562},
           {1.33, 0.5, 0.499553821, 0.593430876, 0.84180625},
           {1.33, 1, 0.233746722, 0.335252927, 0.697225},
           {1.33, 1.5, 0.101057274, 0.178465623, 0.56625625},
           {1.33, 2, 0.0396330505, 0.0882892637, 0.4489},
           {1.33, 3, 0.00405834239, 0.015913508, 0.255025}}};
}

CheckList::Table compression_table() {
  return {{"gamma", "piston speed / a0", "advancing piston p/p0", "advancing piston rho/rho0", "advancing piston T/T0",
           "advancing piston shock Mach number"},
          2,
          {{1.4, 0.05, 1.07213149, 1.050997, 1.020109, 1.0304499},
           {1.4, 0.1, 1.14865177, 1.10397189, 1.04047194, 1.06179838},
           {1.4, 0.25, 1.4064156, 1.27436726, 1.10361874, 1.16118742},
           {1.4, 0.5, 1.94082146, 1.59239555, 1.21880613, 1.34403065},
           {1.4, 1, 3.47266653, 2.30515865, 1.50647615, 1.76619038},
           {1.4, 1.5, 5.71526105, 3.01244387, 1.89721744, 2.2453624},
           {1.33, 0.05, 1.06846501, 1.0510439, 1.01657506, 1.02954904},
           {1.33, 0.1, 1.1409727, 1.10417262, 1.03332819, 1.05994509},
           {1.33, 0.25, 1.38442742, 1.2758856, 1.08507175, 1.15617269},
           {1.33, 0.5, 1.88631205, 1.60038419, 1.17866201, 1.33280008},
           {1.33, 1, 3.31391272, 2.35174592, 1.40912872, 1.739784},
           {1.33, 1.5, 5.39238238, 3.13767959, 1.71858924, 2.20169543}}};
}

void add_pistons(CheckList& list) {
  list.source("Liepmann and Roshko, Elements of Gasdynamics, 1957, ch. 3, piston")
      .relative(closed_form, closed_form_reason);
  list.table(expansion_table(), [](std::span<const double> key) {
    const std::vector<double> v = at_piston(key[0], key[1]);
    return std::vector{v[0], v[1], v[2]};
  });
  list.table(compression_table(), [](std::span<const double> key) { return at_piston(key[0], -key[1]); });
  list.absolute(closed_form, "the piston outruns the gas: nothing but rounding may be left");
  for (double gamma : {1.4, 1.33})
    list.value(fmt::format("receding piston p/p0 at the escape speed, gamma {}", gamma), 0,
               gamma * wave_pressure(2 / (gamma - 1), gas_at(gamma, 0)));
}

CheckList::Table reflection_table() {
  return {{"gamma", "M", "incident shock p2/p1", "incident shock T2/T1", "reflected shock p5/p2",
           "reflected shock p5/p1", "reflected shock T5/T1", "reflected shock Mach number"},
          2,
          {{1.4, 1.01, 1.02345, 1.00664499, 1.0233717, 1.04736977, 1.01331199, 1.00996678},
           {1.4, 1.05, 1.11958333, 1.03284313, 1.11757476, 1.25121808, 1.06621567, 1.04917986},
           {1.4, 1.1, 1.245, 1.06493802, 1.23671498, 1.53971014, 1.13190083, 1.09676732},
           {1.4, 1.2, 1.51333333, 1.12799383, 1.47826087, 2.23710145, 1.26345679, 1.18740805},
           {1.4, 1.3, 1.805, 1.19087278, 1.72197309, 3.10816143, 1.39739645, 1.27233411},
           {1.4, 1.5, 2.45833333, 1.32021605, 2.20689655, 5.42528736, 1.67901235, 1.42635296},
           {1.4, 2, 4.5, 1.6875, 3.33333333, 15, 2.5, 1.73205081},
           {1.4, 3, 10.3333333, 2.67901235, 5, 51.6666667, 4.75308642, 2.10441712},
           {1.33, 1.01, 1.02294678, 1.00564541, 1.02288164, 1.04635348, 1.01130672, 1.00997175},
           {1.33, 1.05, 1.11701717, 1.02787582, 1.11534272, 1.24585696, 1.05613395, 1.04930133},
           {1.33, 1.1, 1.23974249, 1.05505415, 1.23281791, 1.52837674, 1.11157047, 1.09723948},
           {1.33, 1.2, 1.5023176, 1.10829057, 1.47285068, 2.21268949, 1.22197486, 1.18919668},
           {1.33, 1.3, 1.78772532, 1.16120198, 1.71759784, 3.07059315, 1.33370603, 1.27615538},
           {1.33, 1.5, 2.42703863, 1.26965254, 2.21239745, 5.36957406, 1.56716523, 1.43596213},
           {1.33, 2, 4.4248927, 1.57624933, 3.40361446, 15.0606288, 2.24276557, 1.76222067},
           {1.33, 3, 10.1330472, 2.40158534, 5.28169014, 53.5196155, 4.08845868, 2.17956487}}};
}

/// A shock of Mach number m runs into gas at rest and meets a closed end, all by the solver's wave relations.
std::vector<double> reflection(double gamma, double m) {
  const EndState rest = gas_at(gamma, 0);
  const double p2 = (1 + 2 * gamma / (gamma + 1) * (m * m - 1)) / gamma;
  EndState moving = behind_wave(p2, rest);  // rest's wave runs away from the element: its gas follows, away from it
  const double T2 = gamma * p2 / moving.rho;
  moving.w = -moving.w;  // now seen from the closed end that it runs to
  const double p5 = wave_pressure(0, moving);
  const EndState still = behind_wave(p5, moving);
  const double front =
      moving.w * moving.rho / (still.rho - moving.rho);  // speed of the reflected shock on the wall's frame
  return {p2 * gamma, T2, p5 / p2, p5 * gamma, gamma * p5 / still.rho, (front + moving.w) / moving.c};
}

void add_reflections(CheckList& list) {
  list.source("Liepmann and Roshko, Elements of Gasdynamics, 1957, ch. 3, shock reflection");
  list.relative(closed_form, closed_form_reason);
  list.table(reflection_table(), [](std::span<const double> key) { return reflection(key[0], key[1]); });
  for (double p21 : {1.245, 4.5, 10.3333333333})
    list.value(fmt::format("reflected shock p5/p2 by the closed formula at p2/p1 {:g}, gamma 1.4", p21),
               reflected_shock_ratio(p21, 1.4), [&] {
                 const double m = std::sqrt(1 + 2.4 / 2.8 * (p21 - 1));
                 return reflection(1.4, m)[2];
               }());
}

void add_breaking(CheckList& list) {
  list.source("Landau and Lifshitz, Fluid Mechanics, sec. 101; Whitham, Linear and Nonlinear Waves, 1974, ch. 6");
  list.relative(closed_form, closed_form_reason);
  list.table({{"gamma", "a0", "U", "breaking time of a sine along x, wavelength 1"},
              3,
              {{1.4, 340, 10, 0.0132629119}, {1.4, 340, 34, 0.00390085645}, {1.33, 600, 80, 0.00170767106}}},
             [](std::span<const double> key) {
               return std::vector{SineWave{key[0], key[2], key[1], 1}.breaking_time()};
             });
  list.table({{"gamma", "a0", "U", "f", "half sine at x = 0: distance to the shock",
               "lasting sine at x = 0: distance to the shock"},
              4,
              {{1.4, 340.292287, 10, 100, 15.3582982, 15.3201484},
               {1.4, 340.292287, 50, 100, 3.07165964, 2.8862775},
               {1.33, 618.902254, 100, 100, 5.23285059, 4.87432856},
               {1.33, 618.902254, 150, 200, 1.74428353, 1.48553992}}},
             [](std::span<const double> key) {
               const SineWave wave{key[0], key[2], key[1], 1};
               return std::vector{breaking_distance_head(wave, key[3]), breaking_distance_continuous(wave, key[3])};
             });
}

void add_profile(CheckList& list) {
  const SineWave wave{1.4, 34, 340, 1};
  list.source("Landau and Lifshitz, Fluid Mechanics, sec. 101, implicit simple wave");
  list.absolute(closed_form * 34, "closed form; a millionth of the amplitude, because u passes through 0");
  list.table({{"x", "simple wave u at half the breaking time"},
              1,
              {{0, 33.96363118},      {0.05, 31.3267303865},  {0.1, 22.6812505399},  {0.15, 5.56620552878},
               {0.2, -14.7356523356}, {0.25, -27.7236688788}, {0.3, -33.155603783},  {0.35, -33.8277197486},
               {0.4, -31.556099887},  {0.45, -27.3864489635}, {0.5, -21.9591424822}, {0.55, -15.7010176132},
               {0.6, -8.92263938757}, {0.65, -1.87154996602}, {0.7, 5.23482508034},  {0.75, 12.184925691},
               {0.8, 18.7504040483},  {0.85, 24.6588204796},  {0.9, 29.5530429158},  {0.95, 32.9212678525},
               {1, 33.96363118}}},
             [&](std::span<const double> key) { return std::vector{wave.velocity(key[0], wave.breaking_time() / 2)}; });
  list.relative(closed_form, closed_form_reason);
  list.table({{"x", "simple wave p/p0 at half the breaking time", "simple wave rho/rho0 at half the breaking time"},
              1,
              {{0, 1.14851703097, 1.10396502341},     {0.05, 1.1363465302, 1.09559631895},
               {0.1, 1.0972157647, 1.06851353493},    {0.15, 1.02314603582, 1.01647875071},
               {0.2, 0.940879016507, 0.957404709122}, {0.25, 0.89127936319, 0.92107630018},
               {0.3, 0.871210228474, 0.906213838226}, {0.35, 0.86875413531, 0.904388263525},
               {0.4, 0.877079195846, 0.910570204978}, {0.45, 0.892538230055, 0.922005364834},
               {0.5, 0.913009438421, 0.93706139881},  {0.55, 0.937112765958, 0.954665711514},
               {0.6, 0.96383319241, 0.974030980102},  {0.65, 0.992319023277, 0.994507548007},
               {0.7, 1.0217553122, 1.01549165822},    {0.75, 1.05126506963, 1.03635545765},
               {0.8, 1.07980974672, 1.05637827095},   {0.85, 1.1060631094, 1.0746606885},
               {0.9, 1.12822248443, 1.08999579328},   {0.95, 1.14369276242, 1.10065079596},
               {1, 1.14851703097, 1.10396502341}}},
             [&](std::span<const double> key) {
               const double u = wave.velocity(key[0], wave.breaking_time() / 2);
               return std::vector{wave.pressure_ratio(u), wave.density_ratio(u)};
             });
}

}  // namespace

std::vector<Check> wave_checks() {
  CheckList list("waves of finite height, exact", "");
  add_pistons(list);
  add_reflections(list);
  add_breaking(list);
  add_profile(list);
  return list.checks();
}

}  // namespace pulsewright
