// The cylinder against closed forms: crank, burn, wall heat, ideal cycles, motored compression, blowdown.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/burn.hpp"
#include "models/closed_period.hpp"
#include "models/cylinder.hpp"
#include "models/wall_heat.hpp"
#include "tests/verification/all_checks.hpp"
#include "tests/verification/engine_tables.hpp"

namespace pulsewright {
namespace {

constexpr double R = 287;
constexpr CrankAngle bottom = CrankAngle::from_degrees(-180), next_bottom = CrankAngle::from_degrees(180);

Content filled(const Gas& gas, const SliderCrank& crank, double p, double T) {
  const double mass = p * crank.volume(bottom) / (R * T);
  return {mass, mass * internal_energy(gas, T, 0), 0};
}

// Work over heat from bottom to bottom dead centre, no wall heat; the heat comes as `burn` says.
double cycle_efficiency(const Gas& gas, const SliderCrank& crank, double heat, const BurnProgress& burn) {
  const CylinderWalls none{.law = WallHeatLaw::none};
  Charge charge{filled(gas, crank, 1e5, 300)};
  charge.fuel = 1e-6;
  charge.fuel_heat = heat;
  const ClosedPeriod period({gas, crank, none, burn, 300}, charge, bottom, next_bottom);
  return period.at(next_bottom).work / heat;
}

double constant_volume_efficiency(double gamma, double ratio) {
  const SliderCrank crank({0.086, 0.086, 0.145, ratio});
  const double width = 1e-6;  // rad at top dead centre: the volume moves by 1e-12 of itself
  const BurnProgress burn{{0}, {width}, [=](CrankAngle a) { return std::clamp(a.radians / width, 0.0, 1.0); }};
  return cycle_efficiency(perfect_gas(gamma, R), crank, 900, burn);
}

double constant_pressure_efficiency(double gamma, double ratio, double beta) {
  const SliderCrank crank({0.086, 0.086, 0.145, ratio});
  const Gas gas = perfect_gas(gamma, R);
  double low = 0, high = std::numbers::pi;
  for (int i = 0; i < 60; ++i)
    (crank.volume({(low + high) / 2}) < beta * crank.clearance() ? low : high) = (low + high) / 2;
  const auto share = [&](CrankAngle a) {
    if (a.radians <= 0) return 0.0;
    return a.radians >= low ? 1.0 : (crank.volume(a) / crank.clearance() - 1) / (beta - 1);
  };
  const double T_top = 300 * std::pow(ratio, gamma - 1), mass = filled(gas, crank, 1e5, 300).mass;
  return cycle_efficiency(gas, crank, mass * cp(gas, T_top, 0) * T_top * (beta - 1), {{0}, {low}, share});
}

struct Blowdown {
  double T_left, share_left, T_out;
};

// A cylinder whose piston hardly moves, emptied through its exhaust valves into an endless port: the pressure there
// ends at `outside`, and the first law asks for no more.
Blowdown blowdown(double gamma, double p, double T, double outside) {
  const Gas gas = perfect_gas(gamma, R);
  const auto at = [](double degrees) { return CrankAngle::from_degrees(degrees); };
  CylinderSpec spec;
  spec.name = "blowdown";
  spec.crank = {0.086, 1e-7, 0.145, 1 + 1e-6};
  spec.crank_speed = 60;
  spec.firing_at = at(-130);
  spec.exhaust_cam = {at(126), at(378), 1e-4, 0.009, 2};
  spec.intake_cam = {at(400), at(590), 1e-4, 0.009, 2};
  spec.exhaust_valves = spec.intake_valves = {2, 0.029};
  spec.burn = {at(15), at(25)};
  spec.fuel = {14, 43e6, 0.98};
  spec.walls.law = WallHeatLaw::none;
  spec.plenum = {outside, T};
  Cylinder cylinder(spec, gas);
  cylinder.fill(p, T, 1);

  const double start = cylinder.held().mass, dt = 5e-6;
  Port port{{outside / (R * T), 0, outside, 1, T, gamma, std::sqrt(gamma * R * T)}, 2e-3, {}, {}};
  Content out;
  for (int i = 0; i < 12000; ++i) {  // 206 degrees of crank: the valves are still open
    cylinder.advance({&port, 1}, {i * dt, dt, gas});
    out += (-dt * port.area) * Content{port.flux.mass, port.flux.energy, port.flux.burned};
  }
  return {cylinder.now().T, cylinder.held().mass / start, out.energy / (out.mass * cp(gas, T, 1))};
}

void motored_compression(CheckList& list) {
  const Gas gas = perfect_gas(1.35, R);
  const SliderCrank crank({0.086, 0.086, 0.145, 9});
  const CylinderWalls none{.law = WallHeatLaw::none};
  const BurnProgress never{{1}, {2}, [](CrankAngle) { return 0.0; }};
  const ClosedPeriod period({gas, crank, none, never, 300}, {filled(gas, crank, 2e5, 323)}, bottom, next_bottom);
  list.value("motored peak pressure, ratio 9", 2e5 * std::pow(9, 1.35), period.max_pressure());
}

}  // namespace

std::vector<Check> engine_checks() {
  CheckList list("cylinder", "Heywood, Internal Combustion Engine Fundamentals, 1988, eqs 2.4-2.11");
  list.absolute(1e-9, "closed form; ten printed digits");
  list.table(slider_crank_table(), [](std::span<const double> k) {
    const SliderCrank crank({k[0], k[1], k[2], k[3]});
    const CrankAngle at = CrankAngle::from_degrees(k[4]);
    const double V = crank.volume(at), slope = crank.volume_slope(at);
    return std::vector{V, slope, 2 * crank.bore_area() + crank.liner_area(V),
                       slope * std::numbers::pi / (crank.bore_area() * crank.stroke())};
  });
  list.source("Heywood 1988, eq. 9.20").absolute(1e-9, "closed form; ten printed digits");
  list.table(wiebe_table(), [](std::span<const double> k) {
    return std::vector{wiebe(k[0], k[1], k[2]), wiebe_slope(k[0], k[1], k[2])};
  });
  list.source("Woschni, SAE 670931, 1967 (exponent -0.53); Hohenberg, SAE 790825, 1979; both second hand");
  list.relative(1e-5, "closed form; six printed digits");
  list.table(wall_coefficient_table(), [](std::span<const double> k) {
    return std::vector{woschni(k[0], k[1], k[3], k[2]), hohenberg(k[0], k[1], k[4], k[2] / 2.28)};
  });
  list.source("Heywood 1988, section 5.5, constant-volume cycle");
  list.relative(1e-6, "integrated with an error of 1e-9 of the charge's energy in each step");
  list.table(constant_volume_cycle_table(),
             [](std::span<const double> k) { return std::vector{constant_volume_efficiency(k[0], k[1])}; });
  list.source("Heywood 1988, section 5.5, limited-pressure cycle at constant pressure, heated to twice the volume");
  list.table(constant_pressure_cycle_table(),
             [](std::span<const double> k) { return std::vector{constant_pressure_efficiency(k[0], k[1], 2)}; });
  list.source("isentropic relation p V^gamma; Heywood 1988, section 5.3");
  motored_compression(list);
  list.source("first law for a rigid adiabatic cylinder (cf. Heywood 1988, section 5.6)");
  list.relative(1e-3, "marched in time through the valves; the source states 0.1 %");
  list.table(blowdown_table(), [](std::span<const double> k) {
    const Blowdown b = blowdown(k[0], k[1], k[2], k[3]);
    return std::vector{b.T_left, b.share_left, b.T_out};
  });
  return list.checks();
}

}  // namespace pulsewright
