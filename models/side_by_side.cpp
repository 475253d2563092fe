#include "models/side_by_side.hpp"

#include <fmt/format.h>
#include <tbb/parallel_for.h>
#include <tbb/task_arena.h>

#include <algorithm>
#include <mutex>

#include "models/engine_run.hpp"
#include "models/threshold.hpp"
#include "shared/error.hpp"

namespace pulsewright {
namespace {

constexpr double usual_cycles = 10;  // for the share of a run that is not yet done; a guess

struct Job {
  std::size_t engine, speed;
};

/// Adds up the progress of all jobs.
class Together {
 public:
  Together(std::size_t jobs, const ShareProgress& progress) : shares_(jobs, 0), progress_(progress) {}

  bool set(std::size_t job, double share) {
    const std::lock_guard lock(mutex_);
    shares_[job] = share;
    double sum = 0;
    for (double s : shares_) sum += s;
    return !progress_ || progress_(sum / static_cast<double>(shares_.size()));
  }

 private:
  std::mutex mutex_;
  std::vector<double> shares_;
  const ShareProgress& progress_;
};

SpeedResult run_job(const EngineCase& engine, double rpm, bool measure_time, const CycleProgress& progress) {
  try {
    return run_speed(engine, rpm, {measure_time}, progress);
  } catch (const Error& error) {
    const std::string place = error.where().empty() ? "" : ", " + error.where();
    throw Error(error.kind(), error.message(), fmt::format("{}, {:.0f} rpm{}", engine.title, rpm, place), error.hint());
  }
}

}  // namespace

void share_silencer(const EngineCase& first, EngineCase& other) {
  const SilencerCase &a = first.silencer, &b = other.silencer;
  if (a.fitted == b.fitted && a.pressure_drop == b.pressure_drop) other.silencer = first.silencer;
}

std::vector<EngineResult> run_engines(const std::vector<const EngineCase*>& cases, const SideBySideOptions& options,
                                      const ShareProgress& progress) {
  std::vector<EngineResult> results;
  std::vector<Job> jobs;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const EngineCase& engine = *cases[i];
    results.push_back({engine.title, engine.ambient.pressure, engine.run.cell, engine.assumed, {}, {}});
    results.back().speeds.resize(engine.run.rpm.size());
    for (std::size_t k = 0; k < engine.run.rpm.size(); ++k) jobs.push_back({i, k});
  }
  Together together(jobs.size(), progress);
  tbb::task_arena arena(options.threads > 0 ? options.threads : tbb::task_arena::automatic);
  arena.execute([&] {
    tbb::parallel_for(std::size_t{0}, jobs.size(), [&](std::size_t j) {
      const EngineCase& engine = *cases[jobs[j].engine];
      results[jobs[j].engine].speeds[jobs[j].speed] =
          run_job(engine, engine.run.rpm[jobs[j].speed], options.measure_time,
                  [&](double, int cycle) { return together.set(j, std::min(0.95, cycle / usual_cycles)); });
      together.set(j, 1);
    });
  });
  for (std::size_t i = 0; i < cases.size(); ++i) results[i].threshold = boost_threshold(*cases[i], results[i].speeds);
  return results;
}

}  // namespace pulsewright
