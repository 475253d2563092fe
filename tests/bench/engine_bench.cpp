// The demo engine: one step of the whole manifold, a whole speed from the first cycle to the settled figures, and speeds
// side by side.

#include "models/engine_model.hpp"
#include "models/engine_run.hpp"
#include "models/side_by_side.hpp"
#include "shared/case_file.hpp"
#include "tests/bench/bench.hpp"

namespace pulsewright {
namespace {

EngineCase demo() {
  CaseFile file = CaseFile::load(std::string(PULSEWRIGHT_CASES) + "/03_equal_primaries.toml");
  return read_engine_case(file);
}

void one_step(benchmark::State& state) {
  const EngineCase engine = demo();
  EngineModel model(engine, 3000);
  for (int i = 0; i < 3; ++i) model.cycle([] {});
  Network& net = model.network();
  const Stopwatch watch;
  for (auto _ : state) net.step(net.allowed_step());
  count_cell_updates(state, static_cast<double>(net.cells()) * static_cast<double>(state.iterations()),
                     watch.seconds());
}

void one_speed(benchmark::State& state) {
  const EngineCase engine = demo();
  double seconds = 0, updates = 0;
  for (auto _ : state) {
    const SpeedResult s = run_speed(engine, static_cast<double>(state.range(0)));
    seconds += s.timing.seconds, updates += s.timing.cell_updates();
  }
  count_cell_updates(state, updates, seconds);
}

/// Four speeds on so many threads.
void side_by_side(benchmark::State& state) {
  EngineCase engine = demo();
  engine.run.rpm = {3000, 3500, 3000, 3500};
  for (auto _ : state) benchmark::DoNotOptimize(run_engines({&engine}, {.threads = static_cast<int>(state.range(0))}));
}

BENCHMARK(one_step);
BENCHMARK(one_speed)->Arg(3000)->Arg(6000)->Unit(benchmark::kMillisecond);
BENCHMARK(side_by_side)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
}  // namespace pulsewright
