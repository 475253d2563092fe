#include "solver/end_reservoir.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "solver/end_closed.hpp"
#include "solver/wave.hpp"
#include "tests/solver/end_gas.hpp"

namespace pulsewright {
namespace {

const Gas air = perfect_gas(1.4, 287);
constexpr double dt = 1e-5;

Port advanced(Element& end, const EndState& state) {
  std::array<Port, 1> ports = {port_with(state)};
  end.advance(ports, {0, dt, air});
  return ports[0];
}

TEST(ClosedEnd, PassesNothingAndHoldsThePressureOfGasBroughtToRest) {
  ClosedEnd end;
  const EndState d = gas_at(air, 1e5, 300, 40);
  const Port port = advanced(end, d);
  EXPECT_EQ(port.flux.mass, 0);
  EXPECT_EQ(port.flux.energy, 0);
  EXPECT_NEAR(port.flux.momentum / wave_pressure(0, d), 1, 1e-12);
  EXPECT_EQ(end.left().mass, 0);
}

// Normal reflection of a shock: H. W. Liepmann and A. Roshko, Elements of Gasdynamics, 1957, chapter 3. 1e-9: closed
// form.
TEST(ClosedEnd, ReflectsAShockAsPublished) {
  const double p21 = 4.5;  // Mach 2 in gamma 1.4
  const EndState still = gas_at(air, 1e5, 300, 0), behind = behind_wave(p21 * 1e5, still);
  EndState arriving = behind;
  arriving.w = -behind.w;  // the shock came along the duct: its gas moves toward the end
  ClosedEnd end;
  EXPECT_NEAR(advanced(end, arriving).flux.momentum / (p21 * 1e5), (3.2 * p21 - 0.4) / (0.4 * p21 + 2.4), 1e-9);
}

// R = -1 for a weak wave: the gas reaches twice the velocity of the wave. 1e-4: the wave is 1e-4 of the pressure.
TEST(OpenEnd, TurnsAWeakWaveRound) {
  const auto end = open_end(make_reservoir(air, 1e5, 300, 0));
  const double u = 1e-4 * 1e5 / (1.4 * 1e5) * gas_at(air, 1e5, 300, 0).c;
  EXPECT_NEAR(advanced(*end, gas_at(air, 1e5 * (1 + 1e-4), 300, u)).face.w / (2 * u), 1, 1e-3);
}

TEST(SupplyEnd, KeepsItsTotalState) {
  const auto end = supply_end(make_reservoir(air, 2e5, 500, 0));
  const EndState f = advanced(*end, gas_at(air, 1.7e5, 480, -150)).face;
  const double ratio = 1 + 0.2 * f.w * f.w / (f.c * f.c);
  EXPECT_NEAR(f.T * ratio / 500, 1, 1e-12);
  EXPECT_NEAR(f.p * std::pow(ratio, 3.5) / 2e5, 1, 1e-6);  // the solution's own tolerance
}

TEST(NozzleEnd, IsItsAreaTimesItsDischarge) {
  const Reservoir outside = make_reservoir(air, 1e5, 300, 0);
  const auto a = nozzle_end(outside, 4e-4, 0.5), b = nozzle_end(outside, 2e-4, 1);
  const EndState d = gas_at(air, 2e5, 600, 0);
  EXPECT_EQ(advanced(*a, d).flux.mass, advanced(*b, d).flux.mass);
}

TEST(ReservoirEnd, CountsWhatLeftByTheVeryFluxes) {
  const auto end = nozzle_end(make_reservoir(air, 1e5, 300, 0), 4e-4, 0.8);
  Content sum;
  for (double p : {0.6e5, 1e5, 1.3e5, 4e5}) sum += content_through(advanced(*end, gas_at(air, p, 700, 10, 0.4)), dt);
  EXPECT_EQ(end->left().mass, sum.mass);
  EXPECT_EQ(end->left().energy, sum.energy);
  EXPECT_EQ(end->left().burned, sum.burned);
}

}  // namespace
}  // namespace pulsewright
