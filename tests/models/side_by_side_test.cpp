// Runs side by side give the numbers of runs one by one, and stop as runs one by one do.

#include "models/side_by_side.hpp"

#include <gtest/gtest.h>

#include <atomic>

#include "shared/error.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

/// One cylinder on coarse cells: a whole run in a fraction of a second.
EngineCase single(const std::string& rpm, const std::string& length = "300 mm") {
  return test::read_engine(R"(title = "Single )" + length + R"("
[engine]
cylinders = 1
bore = "86 mm"
stroke = "86 mm"
redline = 7500
[charge]
boost_gauge = "0.5 bar"
[turbine]
capacity = { flow = "0.04 kg/s", ratio = 2.0, temperature = "288.15 K", pressure = "1.01325 bar" }
[run]
rpm = )" + rpm + R"(
cell = "20 mm"
[[primary]]
cylinder = 1
tube = "NPS 1-1/4 sch 10S"
length = ")" + length + R"("
to = "turbine"
)");
}

void expect_same(const SpeedResult& a, const SpeedResult& b) {
  EXPECT_EQ(a.rpm, b.rpm);
  EXPECT_EQ(a.cycles, b.cycles);
  EXPECT_EQ(a.torque, b.torque);
  EXPECT_EQ(a.mass_error, b.mass_error);
  EXPECT_EQ(a.turbine[0].power_available, b.turbine[0].power_available);
  EXPECT_EQ(a.cylinders[0].burned_gas_left, b.cylinders[0].burned_gas_left);
  ASSERT_EQ(a.record.ducts.size(), b.record.ducts.size());
  for (std::size_t d = 0; d < a.record.ducts.size(); ++d) {
    EXPECT_EQ(a.record.ducts[d].p, b.record.ducts[d].p);
    EXPECT_EQ(a.record.ducts[d].T, b.record.ducts[d].T);
  }
}

// No tolerance: bit for bit.
TEST(SideBySide, TwoThreadsGiveTheNumbersOfOneInTheOrderOfTheCases) {
  const EngineCase shorter = single("[3000, 5000]"), longer = single("[4000]", "450 mm");
  const auto one = run_engines({&shorter, &longer}, {.threads = 1}),
             two = run_engines({&shorter, &longer}, {.threads = 2});
  ASSERT_EQ(one.size(), 2u);
  ASSERT_EQ(two.size(), 2u);
  EXPECT_EQ(two[0].title, "Single 300 mm");
  EXPECT_EQ(two[1].title, "Single 450 mm");
  ASSERT_EQ(two[0].speeds.size(), 2u);
  ASSERT_EQ(two[1].speeds.size(), 1u);
  expect_same(one[0].speeds[0], two[0].speeds[0]);
  expect_same(one[0].speeds[1], two[0].speeds[1]);
  expect_same(one[1].speeds[0], two[1].speeds[0]);
  EXPECT_EQ(two[0].speeds[1].rpm, 5000);
}

TEST(SideBySide, AFaultComesThroughWithItsKindAndNamesCaseAndSpeed) {
  const EngineCase good = single("[3000]");
  EngineCase bad = single("[3500]", "450 mm");
  for (DuctPlan& duct : bad.plan.ducts)
    for (InitialStretch& stretch : duct.initial) stretch.gas.velocity = 2.9e3;  // away from the valve: a vacuum
  for (const int threads : {1, 2}) try {
      run_engines({&good, &bad}, {.threads = threads});
      FAIL() << "gas at Mach 5 from a shut valve is not physical";
    } catch (const Error& error) {
      EXPECT_EQ(error.kind(), ErrorKind::unphysical) << error.what();
      EXPECT_TRUE(test::says(error.what(), {"Single 450 mm", "3500 rpm"}));
    }
}

TEST(SideBySide, AFaultWithoutAPlaceNamesCaseAndSpeedAlone) {
  EngineCase bad = single("[3500]");
  bad.engine.lambda = 0.1;  // no mixture of gas is made for it
  try {
    run_engines({&bad});
    FAIL() << "lambda 0.1";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::internal);
    EXPECT_EQ(error.where(), "Single 300 mm, 3500 rpm");
  }
}

TEST(SideBySide, ProgressRisesToTheWhole) {
  const EngineCase engine = single("[3000, 5000]");
  double last = 0;
  run_engines({&engine}, {.threads = 2}, [&](double share) {
    EXPECT_GE(share, last);
    last = share;
    return true;
  });
  EXPECT_DOUBLE_EQ(last, 1);
}

TEST(SideBySide, StopsWhenItsListenerSaysSo) {
  const EngineCase engine = single("[3000, 5000]");
  std::atomic<int> asked = 0;
  try {
    run_engines({&engine}, {.threads = 2}, [&](double) { return ++asked < 3; });
    FAIL() << "it ran on";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::internal);
    EXPECT_EQ(error.message(), "interrupted");
  }
  EXPECT_LE(asked, 5);  // the third answer stops one run; the other may be asked once or twice before it hears of it
}

}  // namespace
}  // namespace pulsewright
