#include "solver/wave.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

EndState air(double w, double p = 1e5, double rho = 1.2) {
  return {rho, w, p, 0, p / (287 * rho), 1.4, std::sqrt(1.4 * p / rho)};
}

// 1e-10: closed forms evaluated twice; what is left is rounding.
TEST(Wave, PressureIsTheInverseOfSlowdown) {
  for (double w : {-300.0, -20.0, 0.0, 150.0, 600.0})
    for (double p_star : {1e3, 4e4, 99999.0, 1.3e5, 9e5}) {
      const EndState d = air(w);
      EXPECT_NEAR(wave_pressure(w - wave_slowdown(p_star, d), d) / p_star, 1, 1e-10);
    }
}

// 1e-6: a central difference of relative width 1e-5 errs by its square.
TEST(Wave, SlopeIsTheDerivative) {
  const EndState d = air(30);
  for (double p : {2e4, 9e4, 1.2e5, 7e5}) {
    const double h = 1e-5 * p;
    const double difference = (wave_slowdown(p + h, d) - wave_slowdown(p - h, d)) / (2 * h);
    EXPECT_NEAR(wave_slowdown_slope(p, d) / difference, 1, 1e-6);
  }
}

TEST(Wave, ShockKeepsMassAndMomentumAcrossTheFront) {
  const EndState d = air(50), s = behind_wave(4e5, d);
  const double front = (s.rho * s.w - d.rho * d.w) / (s.rho - d.rho);
  const double momentum_before = d.rho * (d.w - front) * (d.w - front) + d.p;
  const double momentum_behind = s.rho * (s.w - front) * (s.w - front) + s.p;
  EXPECT_NEAR(momentum_behind / momentum_before, 1, 1e-12);
}

// 1e-12: the same closed forms by another road.
TEST(Wave, GasBroughtToAVelocityIsTheGasBehindTheWave) {
  const EndState d = air(80);
  for (double w : {-250.0, 0.0, 79.0, 81.0, 200.0, 500.0}) {
    const EndState a = brought_to(w, d), b = behind_wave(wave_pressure(w, d), d);
    EXPECT_NEAR(a.p / b.p, 1, 1e-12);
    EXPECT_NEAR(a.rho / b.rho, 1, 1e-12);
    EXPECT_NEAR(a.c / b.c, 1, 1e-12);
    EXPECT_NEAR(a.T / b.T, 1, 1e-12);
    EXPECT_NEAR(b.w, w, 1e-9 * d.c);
  }
}

TEST(Wave, GasBroughtBeyondItsEscapeSpeedStaysPositive) {
  const EndState s = brought_to(1e5, air(0));
  EXPECT_GT(s.p, 0);
  EXPECT_GT(s.rho, 0);
}

TEST(Wave, FaceIsSonicWhereTheFanSitsOnIt) {
  const EndState f = face_toward_element(1e3, air(0));
  EXPECT_NEAR(f.w / f.c, 1, 1e-12);
}

TEST(Wave, FaceIsTheDuctsGasWhereItArrivesSupersonic) {
  const EndState d = air(700);
  EXPECT_EQ(face_toward_element(2e4, d).p, d.p);
  EXPECT_EQ(face_toward_element(1.1e5, d).w, d.w);
}

}  // namespace
}  // namespace pulsewright
