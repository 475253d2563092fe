// The sweep over the cells alone: ten ducts of 64 cells with a shock in each, 640 cells as in a manifold.

#include <string>
#include <utility>

#include "solver/end_closed.hpp"
#include "solver/network.hpp"
#include "tests/bench/bench.hpp"

namespace pulsewright {
namespace {

Network shocked_ducts(const Gas& gas, const NetworkOptions& options) {
  Network net(gas, options);
  const double R = gas_constant(gas, 1);
  for (int k = 0; k < 10; ++k) {
    DuctSpec spec = straight_duct("duct", 0.32, 0.04, 64, {2e5 / (R * 1000), 0, 2e5, 1});
    for (std::size_t i = 32; i < 64; ++i) spec.initial[i] = {1e5 / (R * 900), 0, 1e5, 0.9};
    const int duct = net.add_duct(spec);
    net.attach(std::make_unique<ClosedEnd>(), {{duct, Side::start}});
    net.attach(std::make_unique<ClosedEnd>(), {{duct, Side::finish}});
  }
  net.start();
  net.run_until(1e-4);
  return net;
}

double updates(const benchmark::State& state, const Network& net) {
  return static_cast<double>(net.cells()) * static_cast<double>(state.iterations());
}

/// predict, fluxes, update over the arena; the step is so short that the state stays what it is.
void sweep_alone(benchmark::State& state, const Gas& gas, const Sweep& sweep) {
  const Network net = shocked_ducts(gas, {});
  Arena arena = net.arena();
  const Stopwatch watch;
  for (auto _ : state) {
    sweep.predict(arena, gas, 1e-12);
    sweep.fluxes(arena);
    benchmark::DoNotOptimize(sweep.update(arena, gas, 1e-12));
  }
  count_cell_updates(state, updates(state, net), watch.seconds());
}

void whole_step(benchmark::State& state, const Gas& gas, const NetworkOptions& options) {
  Network net = shocked_ducts(gas, options);
  const Stopwatch watch;
  for (auto _ : state) net.step(net.allowed_step());
  count_cell_updates(state, updates(state, net), watch.seconds());
}

const Gas perfect = perfect_gas(1.33, 287), burned = mixture_gas(*find_fuel("petrol"), 0.85);
const NetworkOptions no_walls, with_walls{.friction = NetworkOptions::Friction::rough_wall, .wall_heat = true};

/// Every build that this machine runs.
const bool all_builds = [] {
  for (const Sweep* sweep : available_sweeps())
    for (const auto& [name, gas] : {std::pair{"perfect_gas", &perfect}, std::pair{"mixture", &burned}})
      benchmark::RegisterBenchmark((std::string("sweep_alone/") + name + "/" + sweep->name).c_str(),
                                   [sweep, gas = gas](benchmark::State& state) { sweep_alone(state, *gas, *sweep); });
  return true;
}();

BENCHMARK_CAPTURE(whole_step, perfect_gas_closed_ends, perfect, no_walls);
BENCHMARK_CAPTURE(whole_step, mixture_walls_closed_ends, burned, with_walls);

}  // namespace
}  // namespace pulsewright
