// A recorder beside a network that steps: what it writes against what the network really held.

#include "models/cycle_recorder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>

#include "solver/end_closed.hpp"

namespace pulsewright {
namespace {

constexpr double rpm = 6000, seconds_per_sample = record_step_deg / (6 * rpm);  // 13.9 us
constexpr double single = 1.2e-7;  // relative: a field is kept as a float, 2^-23

/// A closed tube of 0.8 m whose gas sways: cells of 100 mm allow steps of 0.2 ms, fourteen samples; of 5 mm, less than one.
struct Tube {
  Network net;

  explicit Tube(int cells, double velocity = 60) : net(perfect_gas(1.4, 287)) {
    DuctSpec spec = straight_duct("tube", 0.8, 0.04, cells, {1.2, velocity, 1e5, 0});
    for (std::size_t j = spec.cells() / 2; j < spec.cells(); ++j) spec.initial[j] = {1.0, -0.5 * velocity, 0.9e5, 1};
    const int tube = net.add_duct(spec);
    net.attach(std::make_unique<ClosedEnd>(), {{tube, Side::start}});
    net.attach(std::make_unique<ClosedEnd>(), {{tube, Side::finish}});
    net.start();
  }
  double longest_step() const { return 0.5 * net.allowed_step(); }  // half: the allowed step shrinks as waves meet
};

/// The network's pressure in one cell at the ends of all steps.
struct Steps {
  std::vector<double> time, p, u;
  void add(const Network& net, std::size_t cell) {
    time.push_back(net.time()), p.push_back(net.cell(0, cell).p), u.push_back(net.cell(0, cell).u);
  }
  static double between(const std::vector<double>& time, const std::vector<double>& value, double t) {
    std::size_t k = 1;
    while (k + 1 < time.size() && time[k] < t) ++k;
    return value[k - 1] + (t - time[k - 1]) / (time[k] - time[k - 1]) * (value[k] - value[k - 1]);
  }
};

void run_a_cycle(Network& net, double dt, const std::function<void()>& after_step) {
  const double end = net.time() + 720 / (6 * rpm);
  while (net.time() < end) net.step(dt), after_step();
}

class StepLength : public testing::TestWithParam<int> {};

TEST_P(StepLength, AGaugeThatIsLinearInTimeIsWrittenExactly) {
  Tube tube(GetParam());
  tube.net.step(tube.longest_step());  // a cycle need not begin at time 0
  const double start = tube.net.time();
  CycleRecorder recorder(tube.net, rpm);
  const std::size_t clock = recorder.add_gauge([&] { return 5 + 2 * tube.net.time(); });
  run_a_cycle(tube.net, tube.longest_step(), [&] { recorder.after_step(); });
  ASSERT_EQ(recorder.gauge(clock).size(), record_samples);
  for (std::size_t k = 0; k < record_samples; ++k)
    ASSERT_NEAR(recorder.gauge(clock)[k], 5 + 2 * (start + static_cast<double>(k) * seconds_per_sample), 1e-13)
        << k;  // rounding of 5
}

TEST_P(StepLength, EveryCellLiesOnTheLineBetweenTheStepsAroundTheSample) {
  Tube tube(GetParam());
  CycleRecorder recorder(tube.net, rpm);
  const std::size_t cell = tube.net.cells(0) / 3;
  Steps steps;
  steps.add(tube.net, cell);
  run_a_cycle(tube.net, tube.longest_step(), [&] { recorder.after_step(), steps.add(tube.net, cell); });
  const DuctRecord& duct = recorder.ducts()[0];
  ASSERT_EQ(duct.cells, tube.net.cells(0));
  double swing = 0;
  for (std::size_t k = 0; k < record_samples; ++k) {
    const double t = static_cast<double>(k) * seconds_per_sample, p = Steps::between(steps.time, steps.p, t);
    swing = std::max(swing, std::abs(p - steps.p[0]));
    ASSERT_NEAR(static_cast<double>(duct.p[k * duct.cells + cell]), p, 2e5 * single) << k;
    ASSERT_NEAR(static_cast<double>(duct.u[k * duct.cells + cell]), Steps::between(steps.time, steps.u, t),
                200 * single)
        << k;
  }
  EXPECT_GT(swing, 1e3);  // the gas did sway
}
// 8 cells: some seven samples in one step of half the allowed length; 160 cells: three steps a sample.
INSTANTIATE_TEST_SUITE_P(CycleRecorder, StepLength, testing::Values(8, 160));

TEST(CycleRecorder, WritesTheStateAtItsBirthFirst) {
  Tube tube(8);
  const CycleRecorder recorder(tube.net, rpm);
  const DuctRecord& duct = recorder.ducts()[0];
  for (std::size_t j = 0; j < duct.cells; ++j) {
    EXPECT_EQ(duct.p[j], static_cast<float>(tube.net.cell(0, j).p));
    EXPECT_EQ(duct.u[j], static_cast<float>(tube.net.cell(0, j).u));
    EXPECT_EQ(duct.Y[j], static_cast<float>(tube.net.cell(0, j).Y));
    EXPECT_NEAR(duct.bore[j], 0.04, 1e-15);
  }
}

TEST(CycleRecorder, StepsBeyondTheCycleChangeNothing) {
  Tube tube(8);
  CycleRecorder recorder(tube.net, rpm);
  const std::size_t clock = recorder.add_gauge([&] { return tube.net.time(); });
  run_a_cycle(tube.net, tube.longest_step(), [&] { recorder.after_step(); });
  const Series before = recorder.gauge(clock);
  for (int i = 0; i < 10; ++i) tube.net.step(tube.longest_step()), recorder.after_step();
  EXPECT_EQ(recorder.gauge(clock), before);
}

/// Two instants' worth is enough: every sample holds the same line along the duct.
DuctRecord line_along_the_duct() {
  DuctRecord r{"tube", 0.1, 4, {}, {}, {}, {}, {}, {}};
  for (std::size_t k = 0; k < record_samples; ++k)
    for (int j = 0; j < 4; ++j) {
      const auto x = static_cast<float>(j);
      r.p.push_back(100000 + 1000 * x), r.u.push_back(10 + x), r.T.push_back(300 + 20 * x), r.Y.push_back(0.25F * x),
          r.c.push_back(350 + x);
    }
  return r;
}

TEST(PlaceRecord, IsLinearBetweenCellCentres) {
  const Gas gas = perfect_gas(1.4, 287);
  const PlaceRecord place =
      place_record("here", {line_along_the_duct()}, {0, 0.175, false}, gas);  // a quarter from centre 1 to centre 2
  EXPECT_EQ(place.name, "here");
  EXPECT_EQ(place.duct, 0);
  ASSERT_EQ(place.p.size(), record_samples);
  EXPECT_NEAR(place.p[3], 101250, 1e-6);  // figures exact as floats; the quarter is not, by rounding
  EXPECT_NEAR(place.u[3], 11.25, 1e-10);
  EXPECT_NEAR(place.T[3], 325, 1e-9);
  EXPECT_NEAR(place.Y[3], 0.3125, 1e-12);
  EXPECT_NEAR(place.rho[3], place.p[3] / (287 * place.T[3]), 1e-15);
}

TEST(PlaceRecord, AtAnEndIsTheEndCell) {
  const Gas gas = perfect_gas(1.4, 287);
  EXPECT_DOUBLE_EQ(place_record("seat", {line_along_the_duct()}, {0, 0, false}, gas).p[0], 100000);
  EXPECT_DOUBLE_EQ(place_record("end", {line_along_the_duct()}, {0, 0.4, false}, gas).p[0], 103000);
}

TEST(PlaceRecord, AgainstTheDuctOnlyTheVelocityTurns) {
  const Gas gas = perfect_gas(1.4, 287);
  const PlaceRecord with = place_record("a", {line_along_the_duct()}, {0, 0.2, false}, gas),
                    against = place_record("a", {line_along_the_duct()}, {0, 0.2, true}, gas);
  EXPECT_DOUBLE_EQ(against.u[0], -with.u[0]);
  EXPECT_EQ(against.p, with.p);
  EXPECT_EQ(against.rho, with.rho);
}

}  // namespace
}  // namespace pulsewright
