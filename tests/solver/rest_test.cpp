// Gas at rest stays at rest, whatever the duct's shape and whatever lies side by side in it.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>

#include "solver/end_closed.hpp"
#include "solver/network.hpp"

namespace pulsewright {
namespace {

constexpr double length = 0.6, pressure = 2e5;
constexpr int cells = 60;

using Shape = std::function<double(double)>;  // of x, m

DuctSpec shaped(const Shape& bore, const Shape& density, const Shape& burned) {
  DuctSpec d = straight_duct("taper", length, 0.04, cells, {});
  for (std::size_t i = 0; i <= cells; ++i) {
    const double b = bore(static_cast<double>(i) * d.dx);
    d.face_area[i] = 0.785398 * b * b;
  }
  for (std::size_t i = 0; i < cells; ++i) {
    const double x = (static_cast<double>(i) + 0.5) * d.dx;
    d.cell_volume[i] = 0.5 * d.dx * (d.face_area[i] + d.face_area[i + 1]);
    d.initial[i] = {density(x), 0, pressure, burned(x)};
  }
  return d;
}

double fastest_after(const Gas& gas, const DuctSpec& duct, int steps) {
  Network network(gas);
  network.add_duct(duct);
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::start}});
  network.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  network.start();
  double fastest = 0;
  for (int k = 0; k < steps; ++k) {
    network.step(network.allowed_step());
    if (k % 20 && k + 1 < steps) continue;
    for (std::size_t i = 0; i < cells; ++i) fastest = std::max(fastest, std::abs(network.cell(0, i).u));
  }
  return fastest;
}

const std::vector<std::pair<const char*, Shape>>& bores() {
  static const std::vector<std::pair<const char*, Shape>> table = {
      {"straight", [](double) { return 0.04; }},
      {"cone", [](double x) { return 0.03 + 0.1 * x; }},
      {"narrowing to a fifth", [](double x) { return 0.05 - 0.0667 * x; }},
      {"waist", [](double x) { return 0.04 - 0.02 * std::exp(-std::pow((x - 0.3) / 0.05, 2)); }},
      {"step", [](double x) { return x < 0.3 ? 0.03 : 0.05; }},
      {"saw", [](double x) { return 0.04 + 0.01 * (std::fmod(x, 0.05) / 0.05); }},
  };
  return table;
}

// 1e-9 m/s, a three hundred billionth of the speed of sound: rounding and nothing else.
constexpr double at_rest = 1e-9;

TEST(Rest, StaysInAnyTaper) {
  for (const auto& [name, bore] : bores()) {
    const DuctSpec duct = shaped(
        bore, [](double) { return 0.8; }, [](double) { return 0.5; });
    EXPECT_LT(fastest_after(perfect_gas(1.33, 287), duct, 5000), at_rest) << name;
  }
}

TEST(Rest, StaysWhereHotAndColdGasLieSideBySide) {
  for (const auto& [name, bore] : bores()) {
    const DuctSpec duct = shaped(
        bore, [](double x) { return x < 0.27 ? 0.4 : 2.0; }, [](double x) { return x > 0.4; });
    EXPECT_LT(fastest_after(perfect_gas(1.4, 287), duct, 5000), at_rest) << name;
  }
}

TEST(Rest, StaysInTheMixtureOfAirAndBurnedGas) {
  const Gas gas = mixture_gas(known_fuels().front(), 1);
  for (const auto& [name, bore] : bores()) {
    const DuctSpec duct = shaped(
        bore, [](double x) { return x < 0.27 ? 0.4 : 2.0; }, [](double x) { return x > 0.4; });
    EXPECT_LT(fastest_after(gas, duct, 5000), at_rest) << name;
  }
}

}  // namespace
}  // namespace pulsewright
