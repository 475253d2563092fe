// Joints with ducts on them, marched: nothing lost, nothing broken.

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "tests/verification/joint_rigs.hpp"

namespace pulsewright {
namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  double scaled(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
  bool heads() { return between(0, 1) < 0.5; }

 private:
  std::mt19937 engine_;
};

/// 3 to 6 ducts in any directions, areas 0.2 to 5 times a 40 mm bore's, 300-1800 K, 0.2-10 bar; half of the joints
/// without volume.
Star random_star(unsigned seed, JointLaw law, bool suppliers) {
  Dice dice(seed);
  JointSpec spec{.name = "random", .law = law};
  const int count = 3 + static_cast<int>(dice.between(0, 4));
  std::vector<StarDuct> ducts;
  for (int i = 0; i < count; ++i) {
    const double z = dice.between(-1, 1), turn = dice.between(0, 2 * std::numbers::pi), r = std::sqrt(1 - z * z);
    spec.ports.push_back({{r * std::cos(turn), r * std::sin(turn), z}, i + 1 == count ? 1.0 : 0.0});
    DuctGas gas{dice.scaled(0.2e5, 10e5), dice.between(300, 1800), 0, dice.between(0, 1)};
    if (suppliers && i + 1 < count && dice.heads()) gas.u = dice.between(0, 2) * std::sqrt(rig_gamma * rig_R * gas.T);
    const auto far = suppliers ? StarDuct::Far::endless : StarDuct::Far::wall;
    ducts.push_back({0.3, 0.04 * std::sqrt(dice.scaled(0.2, 5)), gas, far, {}});
  }
  spec.volume = dice.heads() ? 0 : dice.scaled(1e-6, 1e-4);
  spec.p = ducts[0].gas.p;
  spec.T = ducts[0].gas.T;
  return make_star(spec, ducts, 0.01);
}

/// What the network holds and what left it, against the start; with endless supplies some hundred times the start
/// passes.
void expect_sound(Star star, double tolerance) {
  const Content start = star.net->held();
  for (int step = 0; step < 200; ++step) star.net->step(star.net->allowed_step());
  const Content error = star.net->held() + star.net->left() - start;
  EXPECT_NEAR(error.mass / start.mass, 0, tolerance);
  EXPECT_NEAR(error.energy / start.energy, 0, tolerance);
  EXPECT_NEAR(error.burned / start.mass, 0, tolerance);
  for (int d = 0; d < star.net->ducts(); ++d)
    for (std::size_t i = 0; i < star.net->cells(d); ++i) {
      const Primitive q = star.net->cell(d, i);
      ASSERT_TRUE(q.p > 0 && q.rho > 0 && std::isfinite(q.p + q.rho + q.u));
    }
  EXPECT_LE(star.meter->joint.searches(), star.net->steps() / 4) << "Newton seldom arrives";
}

// 1e-12: rounding of sums over some 100 cells and 200 steps.
TEST(JointMarched, FourHundredRandomJointsLoseNothing) {
  for (JointLaw law : {JointLaw::momentum, JointLaw::constant_pressure})
    for (unsigned seed = 0; seed < 400; ++seed) {
      SCOPED_TRACE(seed);
      ASSERT_NO_THROW(expect_sound(random_star(seed, law, false), 1e-12));
    }
}

// 1e-11: supplies at up to Mach 2 and 10 bar bring many times the gas that the rig held at the start.
TEST(JointMarched, FourHundredWithSuppliersUpToMachTwoLoseNothing) {
  for (JointLaw law : {JointLaw::momentum, JointLaw::constant_pressure})
    for (unsigned seed = 1000; seed < 1400; ++seed) {
      SCOPED_TRACE(seed);
      ASSERT_NO_THROW(expect_sound(random_star(seed, law, true), 1e-11));
    }
}

TEST(JointMarched, ClosedNetworkKeepsEverythingOverTwentyThousandSteps) {
  for (double volume : {0.0, 4e-5}) {
    std::vector<StarDuct> ducts(4, {0.1, 0.04, {}, StarDuct::Far::wall, {}});
    ducts.push_back({0.1, 0.05, {}, StarDuct::Far::wall, {}});
    ducts[0].gas = {3e5, 1300, 0, 1};
    ducts[2].gas = {0.7e5, 500, 0, 0.3};
    JointSpec spec = cone(4, 25);
    spec.volume = volume;
    const Star star = make_star(spec, ducts, 0.01);
    const Content start = star.net->held();
    for (int step = 0; step < 20000; ++step) star.net->step(star.net->allowed_step());
    const Content error = star.net->held() - start;
    EXPECT_NEAR(error.mass / start.mass, 0, 1e-12);
    EXPECT_NEAR(error.energy / start.energy, 0, 1e-12);
    EXPECT_NEAR(error.burned / start.mass, 0, 1e-12);
  }
}

// 1000 m/s, 0.75 bar, 1090 K into 530 m/s, 1.9 bar, 1400 K. 1e-12 as above; 1e-9: the joint itself holds no more than
// one step's defect, so the shock does not leak into it.
TEST(JointMarched, NormalShockStandingAtATwoPortJointLosesNoMass) {
  JointSpec spec{.name = "shock", .p = 1.9e5, .T = 1400};
  spec.ports = {{{-1, 0, 0}, 1}, {{1, 0, 0}, 1}};
  const Star star = make_star(spec,
                              {{0.5, 0.04, {0.75e5, 1090, 1000, 0}, StarDuct::Far::endless, {}},
                               {0.5, 0.04, {1.9e5, 1400, -530, 0}, StarDuct::Far::endless, {}}},
                              0.01);
  const Content start = star.net->held();
  for (int step = 0; step < 4000; ++step) {
    star.net->step(star.net->allowed_step());
    ASSERT_LT(std::abs(star.meter->joint.held().mass), 1e-9 * start.mass);
  }
  const Content error = star.net->held() + star.net->left() - start;
  EXPECT_NEAR(error.mass / start.mass, 0, 1e-12);
  EXPECT_NEAR(star.net->cell(0, star.net->cells(0) - 1).p / 0.75e5, 1, 1e-9);  // it still stands there
}

}  // namespace
}  // namespace pulsewright
