#include "models/pulse_parts.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>

#include "solver/end_closed.hpp"
#include "solver/end_wave.hpp"
#include "solver/network.hpp"

namespace pulsewright {
namespace {

constexpr double gamma_air = 1.4, R_air = 287, p0 = 1e5, T0 = 300;

/// A sine-squared pulse down a 1.5 m tube into an end; the record of what passes at a place, as if it were a cycle.
PlaceRecord pulse_record(double height, std::unique_ptr<Element> end, double distance) {
  std::vector<SignalPoint> pulse;
  for (int i = 0; i <= 100; ++i) {
    const double s = std::sin(std::numbers::pi * i / 100), p = p0 + height * s * s;
    pulse.push_back({2e-5 * i, p, T0 * std::pow(p / p0, (gamma_air - 1) / gamma_air)});
  }
  Network net(perfect_gas(gamma_air, R_air));
  const int tube = net.add_duct(straight_duct("tube", 1.5, 0.04, 600, {p0 / (R_air * T0), 0, p0, 0}));
  net.attach(std::make_unique<SignalEnd>(pulse), {{tube, Side::start}});
  net.attach(std::move(end), {{tube, Side::finish}});
  net.start();
  PlaceRecord place{"place", 0, distance, {}, {}, {}, {}, {}, {}};
  const auto cell = static_cast<std::size_t>(distance / net.dx(tube));
  for (std::size_t i = 0; i < record_samples; ++i) {
    net.run_until(7e-3 * static_cast<double>(i) / record_samples);
    const Primitive q = net.cell(tube, cell);
    place.p.push_back(q.p), place.u.push_back(q.u), place.rho.push_back(q.rho);
    place.c.push_back(std::sqrt(gamma_air * q.p / q.rho));
  }
  return place;
}

double swing(const Series& s) { return *std::ranges::max_element(s) - *std::ranges::min_element(s); }

// The parts superpose to the record: X = X+ + X- - 1. 1e-12: rounding of two powers.
TEST(WaveParts, GiveThePressureBack) {
  const PlaceRecord place = pulse_record(1e5, std::make_unique<ClosedEnd>(), 1.2);
  const WaveParts parts = wave_parts(place);
  const double G = (gamma_air - 1) / (2 * gamma_air), p_m = mean(place.p);
  for (std::size_t i = 0; i < place.p.size(); i += 7) {
    const double X = std::pow(parts.forward[i] / p_m, G) + std::pow(parts.backward[i] / p_m, G) - 1;
    EXPECT_NEAR(p_m * std::pow(X, 1 / G) / place.p[i], 1, 1e-12);
  }
}

// At a wall u = 0, so both parts are one. The last cell's middle stands 1.25 mm before it, 7 us of a pulse of 2 ms: 2 % of the swing.
TEST(WaveParts, AreAlikeAtAClosedEnd) {
  const PlaceRecord place = pulse_record(100, std::make_unique<ClosedEnd>(), 1.4999);
  const WaveParts parts = wave_parts(place);
  for (std::size_t i = 0; i < place.p.size(); ++i)
    EXPECT_NEAR(parts.forward[i], parts.backward[i], 0.02 * swing(place.p));
}

double backward_share(double height) {
  const PlaceRecord place = pulse_record(height, std::make_unique<AnechoicEnd>(), 0.5);
  const WaveParts parts = wave_parts(place);
  double worst = 0;
  for (double p : parts.backward) worst = std::max(worst, std::abs(p - mean(place.p)));
  return worst / swing(place.p);
}

// Nothing comes back from an anechoic end. 4 % for a pulse of 1 bar: the cycle's means are not one state of the wave.
TEST(WaveParts, HaveNoBackwardPartBeforeAnAnechoicEnd) {
  EXPECT_LT(backward_share(100), 0.001);
  EXPECT_LT(backward_share(1e5), 0.04);
}

TEST(NextRise, FindsTheTenPercentPointOfARampAfterAValley) {
  Series s(record_samples, 1.0);
  for (std::size_t i = 0; i < 100; ++i)
    s[400 + i] = 1 + 0.01 * static_cast<double>(i);  // 200 to 250 degrees, peak 1.99
  const Rise rise = next_rise(s, 190);
  EXPECT_NEAR(rise.deg, 200 + 0.1 * 49.5, 0.5);
  EXPECT_NEAR(rise.height(), 0.99, 1e-12);
}

TEST(NextRise, WrapsRoundTheCycle) {
  Series s(record_samples, 1.0);
  for (std::size_t i = 0; i < 100; ++i) s[(1400 + i) % record_samples] = 1 + 0.01 * static_cast<double>(i);
  EXPECT_NEAR(next_rise(s, 690).deg, 700 + 4.95, 0.5);
}

}  // namespace
}  // namespace pulsewright
