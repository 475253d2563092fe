#include "solver/end_wave.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <random>

#include "shared/error.hpp"
#include "solver/wave.hpp"
#include "tests/solver/end_gas.hpp"

namespace pulsewright {
namespace {

const Gas air = perfect_gas(1.4, 287);
constexpr double dt = 1e-5;

Port advanced(Element& end, const EndState& state, double time = 0) {
  std::array<Port, 1> ports = {port_with(state)};
  end.advance(ports, {time, dt, air});
  return ports[0];
}

// The gas of a simple wave of this pressure running through `start`; direction +1 toward the element, -1 away from it.
EndState in_simple_wave(const EndState& start, double p, double direction) {
  const double ratio = std::pow(p / start.p, (start.gamma - 1) / (2 * start.gamma));
  const double dw = 2 * start.c / (start.gamma - 1) * (ratio - 1);
  return gas_at(air, p, start.T * ratio * ratio, start.w + direction * dw);
}

// 1e-9: the relation is exact, so only the tolerance of the solution (1e-10 of the sound speed) is left.
TEST(AnechoicEnd, ASimpleWaveOfAnyHeightLeavesWithoutEcho) {
  for (double start_speed : {0.0, 60.0, -40.0}) {
    AnechoicEnd end;
    const EndState start = gas_at(air, 1e5, 300, start_speed);
    advanced(end, start);
    for (double p : {0.3e5, 0.99e5, 1.001e5, 1.5e5, 3e5}) {
      const EndState wave = in_simple_wave(start, p, 1);
      const EndState face = advanced(end, wave).face;
      if (face.w < 0) continue;  // gas from outside is in the face: the pressure below still holds for it
      EXPECT_NEAR(face.p / wave.p, 1, 1e-9) << p;
      EXPECT_NEAR(face.w, wave.w, 1e-7) << p;
    }
  }
}

TEST(AnechoicEnd, GasComesBackInUnderALeavingRarefactionWithoutEcho) {
  AnechoicEnd end;
  const EndState start = gas_at(air, 1e5, 300, 0);
  advanced(end, start);
  const EndState wave = in_simple_wave(start, 0.6e5, 1), face = advanced(end, wave).face;
  EXPECT_LT(face.w, 0);
  EXPECT_NEAR(face.p / wave.p, 1, 1e-9);
}

// 0.5 %: the shock's own relation departs from the simple wave's in the third power of its strength (0.4 % at
// ratio 1.94, by the closed forms of H. W. Liepmann and A. Roshko 1957, chapter 3).
TEST(AnechoicEnd, AShockLeavesAnEchoOfAtMostHalfAPercent) {
  AnechoicEnd end;
  const EndState start = gas_at(air, 1e5, 300, 0);
  advanced(end, start);
  EndState arriving = behind_wave(1.94e5, start);
  arriving.w = -arriving.w;
  EXPECT_NEAR(advanced(end, arriving).face.p / arriving.p, 1, 0.005);
}

SignalEnd pulse() { return SignalEnd({{0, 1e5, 300}, {1e-3, 2e5, 300 * std::pow(2, 0.4 / 1.4)}}); }

// 1e-9 as above; the signal is read half a step ahead, where the end's state is.
TEST(SignalEnd, SendsInTheSimpleWaveOfItsPressure) {
  SignalEnd end = pulse();
  const EndState start = gas_at(air, 1e5, 300, 25);
  advanced(end, start, -1);
  const EndState wave = in_simple_wave(start, 2e5, -1);
  const EndState face = advanced(end, wave, 2e-3).face;  // the duct already holds the wave: nothing is left to change
  EXPECT_NEAR(face.p / 2e5, 1, 1e-9);
  EXPECT_NEAR(face.w, wave.w, 1e-6);
  const EndState first = advanced(end, start, 2e-3).face;  // the duct still at rest: a shock runs in
  EXPECT_NEAR(first.p / 2e5, 1, 0.005);
}

// The sum of what goes out and what comes in, for weak waves: p - p0 = both heights together. 1e-3 of it: their
// product.
TEST(SignalEnd, LetsAWaveOutWhileItSendsOneIn) {
  const EndState start = gas_at(air, 1e5, 300, 0);
  SignalEnd end({{0, 1.0e5, 300}, {1e-3, 1.001e5, 300 * std::pow(1.001, 0.4 / 1.4)}});
  advanced(end, start, -1);
  const EndState face = advanced(end, in_simple_wave(start, 1.002e5, 1), 1).face;
  EXPECT_NEAR((face.p - 1e5) / 300, 1, 1e-3);
}

TEST(SignalEnd, IsLinearBetweenRowsAndHeldBeyondThem) {
  const EndState start = gas_at(air, 1e5, 300, 0);
  SignalEnd a = pulse(), b({{0, 1.5e5, (300 + 300 * std::pow(2, 0.4 / 1.4)) / 2}});
  advanced(a, start, -1);
  advanced(b, start, -1);
  EXPECT_NEAR(advanced(a, start, 0.5e-3 - dt / 2).face.p, advanced(b, start, 7).face.p, 1e-4);
  EXPECT_NEAR(advanced(a, start, -5).face.p, 1e5, 1e-4);
}

TEST(SignalEnd, RefusesRowsOutOfOrderOrBelowZero) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(SignalEnd({}), Error);
  EXPECT_THROW(SignalEnd({{0, 1e5, 300}, {0, 1e5, 300}}), Error);
  EXPECT_THROW(SignalEnd({{0, -1e5, 300}}), Error);
  EXPECT_THROW(SignalEnd({{0, 1e5, 0}}), Error);
  EXPECT_THROW(SignalEnd({{nan, 1e5, 300}}), Error);
  EXPECT_THROW(SignalEnd({{0, nan, 300}}), Error);
}

TEST(WaveEnd, AnyStateIsAnsweredFinitely) {
  std::mt19937 random(3);
  const auto between = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  const auto any = [&] {
    const double T = between(200, 2500);
    return gas_at(air, std::pow(10, between(3, 6.5)), T, std::sqrt(1.4 * 287 * T) * between(-2.5, 2.5));
  };
  for (int i = 0; i < 20000; ++i) {
    AnechoicEnd end;
    advanced(end, any());
    const Port port = advanced(end, any());
    ASSERT_TRUE(std::isfinite(port.flux.mass + port.flux.momentum + port.flux.energy)) << i;
    ASSERT_TRUE(port.face.p > 0 && port.face.rho > 0 && port.face.T > 0) << i;
  }
}

}  // namespace
}  // namespace pulsewright
