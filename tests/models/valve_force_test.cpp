// How hard the drive pressure pushes on an exhaust valve that should be shut.

#include <gtest/gtest.h>

#include "models/engine_run.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_text;
using test::with;

SpeedResult run(const std::string& valve) {
  return run_speed(
      test::read_engine(with(engine_text, "cell = \"5 mm\"", "cell = \"12 mm\"") + "[engine.exhaust_valve]\n" + valve),
      4500);
}

// From the record itself: no shut instant pushes harder, and the force is that pressure on the head's area.
TEST(ShutValveForce, IsTheLargestDifferenceOverTheShutTimeOnTheHead) {
  const SpeedResult s = run("head = \"29 mm\"\nseat_load = \"10 N\"\n");
  const CylinderFigures& c = s.cylinders[0];
  const PlaceRecord& port = s.record.place("port 1");
  double highest = 0;
  for (std::size_t i = 0; i < port.p.size(); ++i) {
    const double deg = 0.5 * static_cast<double>(i);
    if (deg > 390 || deg < 110) highest = std::max(highest, port.p[i] - s.record.cylinders[0].p[i]);
  }
  EXPECT_NEAR(c.shut_valve_force, highest * 3.14159265 / 4 * 0.029 * 0.029, 1e-6 * c.shut_valve_force);
  EXPECT_GT(c.shut_valve_force, 10);
  EXPECT_LT(c.shut_valve_force, 500);
  EXPECT_TRUE(c.lifts_off());
}

TEST(ShutValveForce, IsNoFloatWithoutASeatLoadOrBelowIt) {
  EXPECT_FALSE(run("").cylinders[0].lifts_off());
  EXPECT_FALSE(run("seat_load = \"1000 N\"\n").cylinders[0].lifts_off());
}

}  // namespace
}  // namespace pulsewright
