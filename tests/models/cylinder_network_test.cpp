// A cylinder that breathes into real ducts.
#include <gtest/gtest.h>

#include <cmath>

#include "solver/end_reservoir.hpp"
#include "solver/network.hpp"
#include "tests/models/engine_fixture.hpp"

namespace pulsewright {
namespace {

using test::sample_cylinder;

const Gas gas = perfect_gas(1.33, 287);

struct Rig {
  Network network{gas};
  Cylinder* cylinder;

  explicit Rig(const CylinderSpec& spec, int cells = 40) {
    const Primitive still{2e5 / (287 * 1000), 0, 2e5, 1};
    const int pipe = network.add_duct(straight_duct("primary", 0.4, 0.036, cells, still));
    cylinder = &network.attach(std::make_unique<Cylinder>(spec, gas), {{pipe, Side::start}});
    network.attach(open_end(make_reservoir(gas, 2e5, 900, 1)), {{pipe, Side::finish}});
    network.start();
  }
};

// |in - out - stored| over the fuel heat and the mass that went through in three cycles; 1e-11: rounding of some 20 000
// steps in every cell.
TEST(CylinderInANetwork, KeepsTheBalanceOfTheWhole) {
  Rig rig(sample_cylinder());
  const Content before = rig.network.held() + rig.network.left();
  rig.network.run_until(3 * rig.cylinder->cycle_time());
  const Content defect = rig.network.held() + rig.network.left() - before;
  const CylinderTotals t = rig.cylinder->totals();
  EXPECT_NEAR(defect.mass / t.exhaust.mass, 0, 1e-11);
  EXPECT_NEAR(defect.energy / t.fuel_heat, 0, 1e-11);
  EXPECT_NEAR(defect.burned / t.exhaust.mass, 0, 1e-11);
}

// Blowdown raises the port above the mean and the cycle repeats: 1e-4 is what is left of the transient after eight
// cycles.
TEST(CylinderInANetwork, SettlesAndPulses) {
  Rig rig(sample_cylinder());
  rig.network.run_until(7 * rig.cylinder->cycle_time());
  const CylinderCycle seventh = *rig.cylinder->last_cycle();
  rig.network.run_until(8 * rig.cylinder->cycle_time());
  const CylinderCycle eighth = *rig.cylinder->last_cycle();
  EXPECT_EQ(eighth.number, seventh.number + 1);
  EXPECT_NEAR(eighth.imep / seventh.imep, 1, 1e-4);
  EXPECT_NEAR(eighth.pmep / eighth.imep, seventh.pmep / seventh.imep, 1e-4);
  EXPECT_NEAR(eighth.charge.mass / seventh.charge.mass, 1, 1e-4);
}

}  // namespace
}  // namespace pulsewright
