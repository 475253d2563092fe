#include "models/metal_figures.hpp"

#include <algorithm>
#include <cmath>

#include "models/metal.hpp"

namespace pulsewright {
namespace {

// Equation   h(T_flow, Y_flow) = sum(rho u (h + u^2/2))/sum(rho u), Y_flow = sum(rho u Y)/sum(rho u) over a cycle
// Source     definition: the gas that passes, brought to rest in a bag
// Symbols    rho u of one cell, kg/(m2 s)
// Valid for  net flow over the cycle, either way; where hardly any gas passes, the time mean
// Tested by  tests/models/metal_figures_test.cpp
double flow_mean_temperature(const DuctRecord& duct, double distance, const Gas& gas) {
  const auto cell = std::min(static_cast<std::size_t>(distance / duct.dx), duct.cells - 1);
  double mass = 0, moved = 0, enthalpy_flow = 0, burned = 0, T_sum = 0;
  for (std::size_t k = cell; k < duct.p.size(); k += duct.cells) {
    const double p = static_cast<double>(duct.p[k]), u = static_cast<double>(duct.u[k]),
                 T = static_cast<double>(duct.T[k]), Y = static_cast<double>(duct.Y[k]);
    const double flow = p / (gas_constant(gas, Y) * T) * u;
    mass += flow, moved += std::abs(flow), burned += flow * Y, T_sum += T;
    enthalpy_flow += flow * (enthalpy(gas, T, Y) + 0.5 * u * u);
  }
  constexpr double hardly_any = 1e-3;  // of what moves to and fro
  if (std::abs(mass) <= hardly_any * moved) return T_sum / static_cast<double>(duct.p.size() / duct.cells);
  return temperature_from_enthalpy(gas, enthalpy_flow / mass, std::clamp(burned / mass, 0.0, 1.0));
}

PieceFigures piece_figures(const MetalPiece& piece, const Metal& metal, const CycleRecord& record) {
  const DuctRecord& duct = record.ducts[static_cast<std::size_t>(piece.duct)];
  PieceFigures f{};
  f.name = piece.name;
  f.from = piece.name_from, f.to = piece.name_to;
  f.computed = piece.computed;
  f.wall_temperature = piece.temperature_before;
  f.gas_temperature = flow_mean_temperature(duct, 0.5 * (piece.from + piece.to), metal.gas());
  f.heat_in = piece.gas_side.heat_in(piece.temperature_before);
  if (!piece.computed) return f;
  const WallState wall = wall_with_inside(piece.tube, piece.temperature_before, metal.bay(), metal.gas());
  f.wall_temperature = wall.metal();
  f.skin_temperature = wall.skin;
  f.heat_out = wall.heat;
  f.growth = piece.tube.length * growth_per_metre(*piece.tube.metal.alloy, wall.metal());
  return f;
}

void add_to_runner(std::vector<RunnerFigures>& runners, const PieceFigures& piece, const MetalPiece& of) {
  auto runner = std::ranges::find(runners, piece.name, &RunnerFigures::name);
  if (runner == runners.end()) {
    runners.push_back({piece.name, 0, 0, 0.0, {}, false});
    runner = runners.end() - 1;
  }
  if (piece.wall_temperature > runner->hottest)
    runner->hottest = piece.wall_temperature, runner->hottest_at = 0.5 * (piece.from + piece.to);
  if (piece.growth && runner->growth)
    *runner->growth += *piece.growth;
  else
    runner->growth.reset();
  if (!piece.computed) return;
  runner->alloy = of.tube.metal.alloy->name;
  runner->housing = of.tube.metal.housing;
  runner->too_hot = runner->too_hot || piece.wall_temperature > of.tube.metal.alloy->hot_limit;
}

bool is_port(const std::string& name) { return name.starts_with("port "); }

}  // namespace

MetalFigures metal_figures(const Metal& metal, const CycleRecord& record) {
  MetalFigures all;
  for (const MetalPiece& piece : metal.pieces()) {
    all.pieces.push_back(piece_figures(piece, metal, record));
    const PieceFigures& f = all.pieces.back();
    if (f.heat_out) all.heat_in += f.heat_in, all.heat_out += *f.heat_out;
    if (!is_port(f.name)) add_to_runner(all.runners, f, piece);
  }
  return all;
}

const RunnerFigures* hottest_runner(const MetalFigures& metal) {
  const RunnerFigures* hottest = nullptr;
  for (const RunnerFigures& runner : metal.runners)
    if (!runner.alloy.empty() && !runner.housing && (!hottest || runner.hottest > hottest->hottest)) hottest = &runner;
  return hottest;
}

}  // namespace pulsewright
