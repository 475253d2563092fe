#include "models/warm_up.hpp"

#include <algorithm>
#include <cmath>

namespace pulsewright {
namespace {

constexpr int moments = 24;         // at which the gas is asked again
constexpr int cycles_a_moment = 1;  // until the gas has followed the metal: it stays in a manifold for less than one
constexpr double step_of_response = 0.1;  // of the metal's own response time, a step of its march

double heat_capacity(const TubePiece& piece, double T) {
  return piece.metal_mass() * piece.metal.alloy->heat_capacity.at(T);  // J/K
}

/// dT/dt of the metal, K/s.
double rate(const Heating& h, double T) {
  return (h.inside.heat_in(T) - wall_with_inside(h.piece, T, h.bay, h.gas).heat) / heat_capacity(h.piece, T);
}

/// Heat given off per kelvin more, W/K.
double outside_conductance(const Heating& h, double T) {
  constexpr double change = 1;  // K
  return wall_with_inside(h.piece, T + change, h.bay, h.gas).heat - wall_with_inside(h.piece, T, h.bay, h.gas).heat;
}

std::vector<double> temperatures(const Metal& metal) {
  std::vector<double> all;
  for (const MetalPiece& piece : metal.pieces()) all.push_back(piece.temperature);
  return all;
}

/// Where a rising course passes a level, linear between its points.
std::optional<double> time_at(const std::vector<double>& time, const std::vector<double>& course, double level) {
  for (std::size_t i = 1; i < course.size(); ++i)
    if (course[i] >= level && course[i - 1] < level)
      return time[i - 1] + (time[i] - time[i - 1]) * (level - course[i - 1]) / (course[i] - course[i - 1]);
  return std::nullopt;
}

/// Computed pieces, cold.
WarmUp cold_pieces(const Metal& metal, double cold) {
  WarmUp w{{0}, {}};
  for (const MetalPiece& p : metal.pieces())
    if (p.computed) w.pieces.push_back({p.name, p.name_from, p.name_to, p.temperature, {cold}, {}});
  return w;
}

void note(WarmUp& w, const Metal& metal, double time) {
  w.time.push_back(time);
  std::size_t k = 0;
  for (const MetalPiece& p : metal.pieces())
    if (p.computed) w.pieces[k++].temperature.push_back(p.temperature);
}

void march(Metal& metal, double seconds) {
  std::vector<double> next = temperatures(metal);
  for (std::size_t k = 0; k < next.size(); ++k) {
    const MetalPiece& p = metal.pieces()[k];
    if (p.computed) next[k] = warmed({p.tube, p.gas_side, metal.bay(), metal.gas()}, p.temperature, seconds);
  }
  metal.set_temperatures(next);
}

}  // namespace

// Equation   m c(T) dT/dt = drive - conductance T - Q_out(T), by the midpoint rule
// Source     first law of the metal of one piece
// Symbols    m kg, c J/(kg K) of the metal; drive, conductance of the gas side; Q_out W off its skin in a steady state
// Valid for  thin walls (Biot number below 0.1); the heat that a wrap itself takes up is left out: a wrapped tube warms a
//            little later than shown
// Tested by  tests/models/warm_up_test.cpp
double warmed(const Heating& h, double temperature, double seconds) {
  const double response =
      heat_capacity(h.piece, temperature) / (h.inside.conductance + std::max(0.0, outside_conductance(h, temperature)));
  const double steps = std::max(1.0, std::ceil(seconds / (step_of_response * response))), dt = seconds / steps;
  double T = temperature;
  for (double k = 0; k < steps; ++k) T += dt * rate(h, T + 0.5 * dt * rate(h, T));
  return T;
}

WarmUp warm_up(EngineModel& model, double duration, const std::function<void()>& each_step) {
  Metal& metal = model.metal();
  const double cold = model.engine_case().ambient.temperature;
  WarmUp w = cold_pieces(metal, cold);
  metal.hold(true);
  metal.set_temperatures(std::vector<double>(metal.pieces().size(), cold));
  model.cycle(each_step);  // the gas forgets the hot metal
  for (int k = 1; k <= moments; ++k) {
    const double time =
        duration * std::pow(static_cast<double>(k) / moments, 1.5);  // closer at first, where it is quick
    for (int c = 0; c < cycles_a_moment; ++c) model.cycle(each_step);
    march(metal, time - w.time.back());
    note(w, metal, time);
  }
  for (WarmUpPiece& p : w.pieces)
    p.time_to_90_per_cent = time_at(w.time, p.temperature, cold + 0.9 * (p.settled - cold));
  return w;
}

}  // namespace pulsewright
