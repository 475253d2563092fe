// A rig run: which instants are kept, what its books say, and how it stops.

#include "models/rig_run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::read_rig;
using test::rig_text;
using test::with;

/// The tee of case_text with pressed gas in its stub.
RigSetup tee(const std::string& duration = "1 ms", const std::string& record = "0.1 ms") {
  std::string text =
      with(rig_text, "duration = \"1 ms\"", "duration = \"" + duration + "\"\nrecord = \"" + record + "\"");
  return read_rig(with(text, "bore = \"30 mm\"\npressure = \"1 bar\"", "bore = \"30 mm\"\npressure = \"1.5 bar\""))
      .setup;
}

TEST(RigRun, KeepsTheFirstAndTheLastInstantAndEveryRecordBetween) {
  const RigResult r = run_rig(tee());
  ASSERT_EQ(r.times.size(), 11u);
  EXPECT_EQ(r.times.front(), 0);
  EXPECT_EQ(r.times.back(), 1e-3);  // exactly
  for (std::size_t k = 0; k < r.times.size(); ++k) EXPECT_NEAR(r.times[k], 1e-4 * static_cast<double>(k), 1e-15);
}

TEST(RigRun, KeepsTheLastInstantWhereTheRecordDoesNotDivideTheDuration) {
  const RigResult r = run_rig(tee("1 ms", "0.3 ms"));
  ASSERT_EQ(r.times.size(), 5u);
  EXPECT_NEAR(r.times[3], 0.9e-3, 1e-15);
  EXPECT_EQ(r.times[4], 1e-3);
}

TEST(RigRun, ARecordLongerThanTheRunKeepsBothEnds) {
  const RigResult r = run_rig(tee("0.2 ms", "5 ms"));
  ASSERT_EQ(r.times.size(), 2u);
  EXPECT_EQ(r.times[1], 0.2e-3);
}

TEST(RigRun, HoldsEveryCellOfEveryDuctAtEveryInstant) {
  const RigResult r = run_rig(tee());
  ASSERT_EQ(r.ducts.size(), 3u);
  for (const RigDuctRecord& duct : r.ducts) {
    EXPECT_EQ(duct.bore.size(), duct.cells);
    for (const auto* field : {&duct.p, &duct.T, &duct.u, &duct.rho, &duct.Y})
      EXPECT_EQ(field->size(), duct.cells * r.times.size()) << duct.name;
  }
  const RigDuctRecord& stub = r.ducts[1];
  EXPECT_NEAR(stub.p[0], 1.5e5, 1e-6);                         // as the case begins
  EXPECT_LT(stub.p[10 * stub.cells + stub.cells - 1], 1.4e5);  // and has blown down at its mouth
}

// Rounding of some hundred steps; the books of the open end, the anechoic end and the ducts are kept apart.
TEST(RigRun, TheBooksOfDuctsAndEndsBalance) {
  const RigResult r = run_rig(tee("5 ms"));
  EXPECT_LT(std::abs(r.mass_error), 1e-12);
  EXPECT_LT(std::abs(r.energy_error), 1e-12);
  double start = 0, end = 0, left = 0, out_of_the_open_end = 0;
  for (const RigBalance& b : r.balances) {
    start += b.at_start.mass, end += b.at_end.mass, left += b.left.mass;
    if (b.name == "far right") out_of_the_open_end = b.left.mass;
  }
  EXPECT_EQ(r.balances.size(), 3u + 4u);  // ducts, then nodes
  EXPECT_NEAR(end + left, start, 1e-12 * start);
  EXPECT_GT(out_of_the_open_end, 0.01 * (start - end));  // gas did leave there
}

TEST(RigRun, TellsItsProgressUpToTheWhole) {
  std::vector<double> shares;
  run_rig(tee(), [&](double share) { return shares.push_back(share), true; });
  ASSERT_EQ(shares.size(), 10u);
  EXPECT_TRUE(std::is_sorted(shares.begin(), shares.end()));
  EXPECT_EQ(shares.back(), 1);
}

TEST(RigRun, StopsWhenItsListenerSaysSo) {
  int asked = 0;
  try {
    run_rig(tee(), [&](double) { return ++asked < 3; });
    FAIL() << "it ran on";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::internal);
    EXPECT_EQ(error.message(), "interrupted");
  }
  EXPECT_EQ(asked, 3);
}

TEST(RigRun, CountsItsStepsAndNamesTheCellThatSetsThem) {
  const RigResult r = run_rig(tee());
  EXPECT_EQ(r.timing.cells, 60u + 40u + 80u);
  EXPECT_GT(r.timing.steps, 50);  // 5 mm at some 350 m/s and 0.8: 11 us a step
  EXPECT_NE(r.timing.step_setter.find(" mm"), std::string::npos);
}

TEST(RigCase, EndsThatDoNotSayHoldTheRigsOwnGas) {
  const auto burned_outside = [](const std::string& gas, const std::string& end) {
    const RigCase rig = read_rig(with(with(rig_text, "{ gamma = 1.4, R = 287.0 }", gas), "kind = \"open\"", end));
    const auto node = std::ranges::find(rig.setup.plan.nodes, "far right", &NodePlan::name);
    return std::get<OpenNode>(node->kind).outside.burned;
  };
  EXPECT_EQ(burned_outside("\"burned\"", "kind = \"open\""), 1);
  EXPECT_EQ(burned_outside("\"air\"", "kind = \"open\""), 0);
  EXPECT_EQ(burned_outside("\"burned\"", "kind = \"open\"\nburned = 0.25"), 0.25);
}

}  // namespace
}  // namespace pulsewright
