// Two turbines on one engine: each with its own shaft, one plenum for both compressors.

#include <gtest/gtest.h>

#include "models/engine_figures.hpp"
#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

const std::string two_text = R"(title = "Two turbines"
[engine]
arrangement = "inline 4"
bore = "86 mm"
stroke = "86 mm"
redline = 7500
[charge]
boost_gauge = "1.0 bar"
[run]
rpm = [4500]
cell = "20 mm"
[each_primary]
tube = "NPS 1-1/4 sch 10S"
length = "400 mm"
angle = "15 deg"
[[primary]]
cylinder = 1
to = "outer"
[[primary]]
cylinder = 4
to = "outer"
[[primary]]
cylinder = 2
to = "inner"
[[primary]]
cylinder = 3
to = "inner"
[[joint]]
name = "outer"
outlet = "left"
[[joint]]
name = "inner"
outlet = "right"
[[turbine]]
name = "left"
inducer = "44 mm"
exducer = "38 mm"
[[turbine]]
name = "right"
inducer = "44 mm"
exducer = "38 mm"
)";

const std::string separate = R"([[duct]]
name = "left pipe"
from = "left.out"
to = "air"
length = "600 mm"
bore = "50 mm"
[[duct]]
name = "right pipe"
from = "right.out"
to = "air"
length = "600 mm"
bore = "50 mm"
)";

const std::string joined = R"([[duct]]
name = "left pipe"
from = "left.out"
to = "y"
to_angle = "20 deg"
length = "400 mm"
bore = "50 mm"
[[duct]]
name = "right pipe"
from = "right.out"
to = "y"
to_angle = "20 deg"
length = "400 mm"
bore = "50 mm"
[[joint]]
name = "y"
outlet = "downpipe"
[[duct]]
name = "downpipe"
to = "air"
length = "600 mm"
bore = "63.5 mm"
)";

SpeedResult run(const std::string& text) { return run_speed(test::read_engine(text), 4500); }

TEST(TwoTurbines, ShareTheAssumedFlowAndTheSilencerAlike) {
  const EngineCase one = test::read_engine(test::engine_text), two = test::read_engine(two_text);
  ASSERT_EQ(two.turbines.size(), 2u);
  for (const TurbineCase& t : two.turbines) EXPECT_NEAR(t.capacity.flow, one.turbines[0].capacity.flow / 2, 1e-12);
}

// Alike halves of an even engine: left and right differ by when their cylinders fire, no more. 0.1 %: settled.
TEST(TwoTurbines, AlikeTurbinesShareTheWorkAlike) {
  for (const std::string& pipes : {std::string(), separate, joined}) {
    const SpeedResult r = run(two_text + pipes);
    EXPECT_TRUE(r.settled) << r.unsettled_figure;
    ASSERT_EQ(r.shafts.size(), 2u);
    EXPECT_NEAR(r.shafts[0].share_of_air, 0.5, 0.5e-3);
    EXPECT_NEAR(r.shafts[0].power_shaft / r.shafts[1].power_shaft, 1, 2e-3);
    EXPECT_LT(r.mass_error, 1e-12);  // the books are kept to rounding
    EXPECT_LT(r.energy_error, 1e-12);
  }
}

// 1e-12: sums of the same figures.
TEST(TwoTurbines, EveryShaftDrivesItsShareOfTheAir) {
  const SpeedResult r =
      run(test::with(two_text, "name = \"right\"\n", "name = \"right\"\nmechanical_efficiency = 0.8\n"));
  double shares = 0, surplus = 0;
  const double efficiency[] = {0.96, 0.8};
  for (std::size_t i = 0; i < 2; ++i) {
    const ShaftFigures& s = r.shafts[i];
    shares += s.share_of_air, surplus += s.surplus;
    EXPECT_NEAR(s.surplus, efficiency[i] * s.power_shaft - s.share_of_air * r.compressor_power, 1e-6);
    EXPECT_NEAR(s.surplus / s.share_of_air / r.turbine_surplus, 1, 1e-12);  // in balance for one is in balance for both
  }
  EXPECT_NEAR(shares, 1, 1e-12);
  EXPECT_NEAR(surplus / r.turbine_surplus, 1, 1e-12);
  EXPECT_LT(r.shafts[1].share_of_air, r.shafts[0].share_of_air);
}

TEST(TwoTurbines, ScrollsAreAddressedByNameAndLetter) {
  const std::string divided = test::with(test::with(two_text, "name = \"left\"\n", "name = \"left\"\nscrolls = 2\n"),
                                         "outlet = \"left\"", "outlet = \"left.a\"");
  const std::string text =
      test::with(test::with(divided, "cylinder = 4\nto = \"outer\"", "cylinder = 4\nto = \"left.b\""),
                 "[[joint]]\nname = \"outer\"\noutlet = \"left.a\"\n", "");
  const EngineCase engine =
      test::read_engine(test::with(text, "cylinder = 1\nto = \"outer\"", "cylinder = 1\nto = \"left.a\""));
  std::vector<std::string> names;
  for (const TurbineEntry& e : turbine_entries(engine)) names.push_back(e.name);
  EXPECT_EQ(names, (std::vector<std::string>{"left.a", "left.b", "right"}));
}

TEST(TwoTurbines, OneBehindTheOtherIsRefused) {
  const std::string series = test::with(two_text, "outlet = \"right\"", "outlet = \"left\"");
  const std::string inner = test::with(series, "[[joint]]\nname = \"outer\"\noutlet = \"left\"\n", "");
  std::string all = inner;
  for (const char* cylinder : {"1", "4"})
    all = test::with(all, std::string("cylinder = ") + cylinder + "\nto = \"outer\"",
                     std::string("cylinder = ") + cylinder + "\nto = \"inner\"");
  try {
    test::read_engine(all +
                      "[[duct]]\nname = \"stage\"\nfrom = \"left.out\"\nto = \"right\"\nlength = \"300 mm\"\n"
                      "bore = \"50 mm\"\n");
    FAIL() << "two stages were taken for two turbines";
  } catch (const Error& error) {
    EXPECT_NE(std::string(error.what()).find("runs into turbine 'right'"), std::string::npos) << error.what();
  }
}

// With the wheels' sizes the shaft's speed is the tip's over the inducer's circumference.
TEST(TwoTurbines, TheShaftsTurnAsTheirWheelsDo) {
  const SpeedResult r = run(two_text);
  for (const ShaftFigures& s : r.shafts)
    EXPECT_NEAR(*s.revolutions, 60 * s.tip_speed / (3.14159265358979 * 0.044), 1e-6);
}

}  // namespace
}  // namespace pulsewright
