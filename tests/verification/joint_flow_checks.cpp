// Losses of a joint in steady flow, and a pulse of 2 bar through a collector.

#include <cmath>

#include "tests/verification/all_checks.hpp"
#include "tests/verification/joint_rigs.hpp"

namespace pulsewright {
namespace {

constexpr double unit_area = 1.2e-3;

/// A straight run, a lateral and the outlet in line with the run.
JointSpec wye(double angle_deg) {
  const double a = angle_deg * std::numbers::pi / 180;
  JointSpec spec{.name = "wye", .p = rig_p, .T = rig_T};
  spec.ports = {{{-1, 0, 0}, 0}, {{-std::cos(a), std::sin(a), 0}, 0}, {{1, 0, 0}, 1}};
  return spec;
}

double total_pressure(const EndState& s) {
  const double g = s.gamma, m = s.w / s.c;
  return s.p * std::pow(1 + (g - 1) / 2 * m * m, g / (g - 1));
}

/// Total pressure that the stream of one inflow loses, over the velocity head of the outlet.
double loss_of(std::size_t inflow, const std::vector<EndState>& faces) {
  const EndState& out = faces.back();
  return (total_pressure(faces[inflow]) - total_pressure(out)) / (0.5 * out.rho * out.w * out.w);
}

void add_equal_wye(CheckList& list) {
  const auto faces = steady_faces(wye(45), {unit_area, unit_area, unit_area}, {30, 30});
  list.source(
      "published measurements of equal wyes (Idelchik, Handbook of Hydraulic Resistance; Bassett et al., Proc IMechE C "
      "215 "
      "(2001) 861; Wang et al., Proc IMechE C 229 (2015) 1600), second hand");
  list.absolute(0, "the spread of the measurements");
  list.band("equal wye 45 deg, equal split, loss of the run", 0.10, 0.16, loss_of(0, faces));
  list.band("equal wye 45 deg, equal split, loss of the lateral", 0.10, 0.16, loss_of(1, faces));
  list.source(
      "momentum over the two streams' area and a contraction to half of it, incompressible, worked out by hand");
  list.absolute(0.001, "outlet at Mach 0.1: compressibility counts its square");
  const double cosines = 0.5 * (1 + std::cos(std::numbers::pi / 4));
  list.value("equal wye 45 deg, equal split, closed form", 0.5 * (1 - cosines) + 0.1 * 0.5, loss_of(1, faces));
}

// Lateral of a wye whose bores add up: 1 + ws^2 - 2 (1 - fs) wst^2 - 2 fs ws^2 cos(angle), speeds over the outlet's,
// with A = 1.
void add_area_sum_wye(CheckList& list) {
  list.source(
      "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 7-1, lateral of a converging wye, A = 1 "
      "(second hand)");
  list.absolute(0.01, "Mach 0.01 to 0.05 in the ducts, the formula is incompressible");
  for (double angle : {30.0, 45.0, 60.0})
    for (double fs : {0.3, 0.5})
      for (double qs : {0.2, 0.5, 0.8}) {
        const double ws = qs / fs, wst = (1 - qs) / (1 - fs), speed = 10;
        const auto faces =
            steady_faces(wye(angle), {unit_area * (1 - fs), unit_area * fs, unit_area}, {wst * speed, ws * speed});
        const double expected =
            1 + ws * ws - 2 * (1 - fs) * wst * wst - 2 * fs * ws * ws * std::cos(angle * std::numbers::pi / 180);
        const auto text = [](double x) { return std::to_string(x).substr(0, 4); };
        list.value("lateral " + text(angle) + " deg, area share " + text(fs) + ", flow share " + text(qs), expected,
                   loss_of(1, faces));
      }
}

// A step in bore inside one duct: smooth mouth and contraction loss 0.5 at the smaller duct, plain at the wider one.
void add_steps_in_bore(CheckList& list) {
  list.absolute(0.005, "outlet at Mach 0.05 or less, the formula is incompressible");
  for (double a : {0.25, 0.5, 0.7}) {
    const std::string at = ", area ratio " + std::to_string(a).substr(0, 4);
    JointSpec spec{.name = "step", .contraction_loss = 0.5, .p = rig_p, .T = rig_T};
    spec.ports = {{{-1, 0, 0}, 0}, {{1, 0, 0}, 1}};
    const auto narrowing = steady_faces(spec, {unit_area, a * unit_area}, {20 * a});
    list.source("sudden contraction 0.5 (1 - a): J. Weisbach's values as handbooks give them (Idelchik, Crane TP-410)");
    list.value("sudden narrowing" + at, 0.5 * (1 - a), loss_of(0, narrowing));
    spec.ports = {{{-1, 0, 0}, 1}, {{1, 0, 0}, 0}};
    const auto widening = steady_faces(spec, {a * unit_area, unit_area}, {20});
    list.source("Borda-Carnot, exact for uniform streams");
    list.value("sudden widening" + at, (1 - a) * (1 - a), loss_of(0, widening) * a * a);
  }
}

struct PulsePeaks {
  double outlet = 0, beside = 0, opposite = 0;  // bar
  double entropy = 0;                           // J/K made in the joint
};

/// Four primaries of 40 mm and 1.5 m into an outlet of 1.5 times their area; a 2-bar pulse of 4 ms runs down primary
/// `from`.
PulsePeaks pulse_through(double angle, JointLaw law, int from = 0) {
  std::vector<StarDuct> ducts(4, {1.5, 0.04, {}, StarDuct::Far::endless, {}});
  ducts[static_cast<std::size_t>(from)].signal = pulse_signal(1e5, 4e-3);
  ducts.push_back({2, 0.04 * std::sqrt(1.5), {}, StarDuct::Far::endless, {}});
  const Star star = make_star(cone(4, angle, law), ducts, 0.01);
  const auto probe = [&](int duct) {  // 0.3 m from the joint, between two cells
    const std::size_t last = star.net->cells(duct) - 1;
    return 0.5e-5 * (star.net->cell(duct, last - 29).p + star.net->cell(duct, last - 30).p);
  };
  PulsePeaks peaks;
  while (star.net->time() < 9e-3) {
    star.net->step(star.net->allowed_step());
    peaks.outlet = std::max(peaks.outlet, probe(4));
    peaks.beside = std::max(peaks.beside, probe((from + 1) % 4));
    peaks.opposite = std::max(peaks.opposite, probe((from + 2) % 4));
  }
  peaks.entropy = star.meter->made;
  return peaks;
}

void add_pulse(CheckList& list) {
  const PulsePeaks momentum = pulse_through(15, JointLaw::momentum),
                   plain = pulse_through(15, JointLaw::constant_pressure);
  list.source("an independent program of the same equations, written before this one");
  list.absolute(0.005, "two programs with cells of 10 mm");
  list.value("2-bar pulse, momentum, outlet peak, bar", 1.619, momentum.outlet);
  list.value("2-bar pulse, momentum, neighbour's peak, bar", 1.150, momentum.beside);
  list.value("2-bar pulse, constant pressure, outlet peak, bar", 1.325, plain.outlet);
  list.value("2-bar pulse, constant pressure, neighbour's peak, bar", 1.325, plain.beside);
  list.source("second law");
  list.at_least("entropy made in the joint over the pulse, momentum, J/K", 0, momentum.entropy);
  list.source("symmetry: the same cone seen from each of its primaries");
  list.absolute(1e-9, "rounding, enlarged by the steep front");
  for (int from : {1, 2, 3})
    list.value("2-bar pulse down primary " + std::to_string(from + 1) + ", outlet peak over that of primary 1", 1,
               pulse_through(15, JointLaw::momentum, from).outlet / momentum.outlet);
}

/// Turning the primaries away from the outlet takes from it and gives to the neighbours, step by step.
void add_angles(CheckList& list) {
  PulsePeaks before = pulse_through(0, JointLaw::momentum);
  double least_fall = 1, least_growth = 1, least_entropy = before.entropy;
  for (double angle : {10.0, 20.0, 30.0, 40.0, 50.0, 60.0}) {
    const PulsePeaks peaks = pulse_through(angle, JointLaw::momentum);
    least_fall = std::min(least_fall, before.outlet - peaks.outlet);
    least_growth = std::min({least_growth, peaks.beside - before.beside, peaks.opposite - before.opposite});
    least_entropy = std::min(least_entropy, peaks.entropy);
    before = peaks;
  }
  list.source("trend common to all published wye measurements: a sharper turn costs more");
  list.absolute(0, "every step of 10 degrees must show the trend");
  list.at_least("0 to 60 deg, least fall of the outlet peak in 10 deg, bar", 0, least_fall);
  list.at_least("0 to 60 deg, least growth of the neighbours' peaks in 10 deg, bar", 0, least_growth);
  list.at_least("0 to 60 deg, least entropy made, J/K", 0, least_entropy);
}

}  // namespace

std::vector<Check> joint_flow_checks() {
  CheckList list("joints, losses and pulses", "");
  add_equal_wye(list);
  add_area_sum_wye(list);
  add_steps_in_bore(list);
  add_pulse(list);
  add_angles(list);
  return list.checks();
}

}  // namespace pulsewright
