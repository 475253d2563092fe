// Direct arrivals on a wye drawn by hand, with a pulse at each port.

#include "models/arrivals.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "models/pulse_parts.hpp"

namespace pulsewright {
namespace {

constexpr double rpm = 3000, c0 = 600, gamma_gas = 1.33;
constexpr double rounding_deg = 1e-8;  // a ray's leg ends at most 1e-9 degrees late

/// Ducts 0 and 1 from the ports to the merge, duct 2 on to the turbine.
ManifoldPlan wye(const std::string& merge) {
  const auto tube = [](double length) {
    return DuctPlan{"tube", {{straight_section(length, round_section(0.03), 0, 300)}}, {}, {}, {}};
  };
  ManifoldPlan plan;
  plan.ducts = {tube(0.3), tube(0.5), tube(0.2)};
  plan.nodes = {{"seat 1", CylinderNode{0}, {{0, false}}},
                {"seat 2", CylinderNode{1}, {{1, false}}},
                {"turbine", TurbineNode{0, {0}}, {{2, true}}},
                {merge, JointNode{}, {{0, true}, {1, true}, {2, false}}}};
  plan.ducts[0].start = {0, 0}, plan.ducts[1].start = {1, 0}, plan.ducts[2].start = {3, 2};
  plan.ducts[0].finish = {3, 0}, plan.ducts[1].finish = {3, 1}, plan.ducts[2].finish = {2, 0};
  return plan;
}

/// A simple wave running forward, a sine-squared pulse of 60 degrees that begins at `from_deg`.
PlaceRecord pulse_at(const std::string& name, int duct, double from_deg) {
  PlaceRecord r{name, duct, 0, {}, {}, {}, {}, {}, {}};
  for (std::size_t i = 0; i < record_samples; ++i) {
    const double d = record_step_deg * static_cast<double>(i) - from_deg, since = d - 720 * std::floor(d / 720);
    const double s = since < 60 ? std::sin(std::numbers::pi * since / 60) : 0, p = 1e5 + 5e4 * s * s;
    const double c = c0 * std::pow(p / 1e5, (gamma_gas - 1) / (2 * gamma_gas));
    r.p.push_back(p), r.c.push_back(c), r.u.push_back(2 * (c - c0) / (gamma_gas - 1)),
        r.rho.push_back(gamma_gas * p / (c * c));
  }
  return r;
}

DuctRecord still(double length) {
  DuctRecord r{"tube", length / 4, 4, {}, {}, {}, {}, {}, {}};
  r.u.assign(4 * record_samples, 0), r.c.assign(4 * record_samples, static_cast<float>(c0));
  return r;
}

const std::vector<PortPlace> ports = {{0, {0, 0}, true, 130}, {1, {1, 0}, true, 700}};
const std::vector<ArrivalPlace> places = {{"merge", {0, 0.3}}, {"turbine", {2, 0.2}}};

CycleRecord record() {
  return {rpm, {pulse_at("port 1", 0, 140), pulse_at("port 2", 1, 710)}, {still(0.3), still(0.5), still(0.2)}, {}, {},
          {}};
}

const Arrival& arrival(const std::vector<Arrival>& all, int from, const std::string& at) {
  const auto found = std::ranges::find_if(all, [&](const Arrival& a) { return a.from == from && a.at == at; });
  if (found == all.end()) throw std::logic_error("no arrival at " + at);
  return *found;
}

double in_still_gas(double length) { return 6 * rpm * length / c0; }

TEST(Arrivals, GoFromEveryPortToEveryPlaceAndEveryOtherPort) {
  const auto all = direct_arrivals(wye("merge"), record(), ports, {places[1]});
  EXPECT_EQ(all.size(), 4u);  // each to the turbine and to the other port, none to its own
  for (const char* at : {"turbine", "port 2"}) EXPECT_NO_THROW(arrival(all, 1, at));
  for (const char* at : {"turbine", "port 1"}) EXPECT_NO_THROW(arrival(all, 2, at));
}

TEST(Arrivals, AreThePortsRisePlusTheWay) {
  const auto all = direct_arrivals(wye("merge"), record(), ports, places);
  const Rise rise = next_rise(wave_parts(record().place("port 1")).forward, 130, 0);
  const Arrival& a = arrival(all, 1, "turbine");
  EXPECT_NEAR(a.deg, rise.deg + in_still_gas(0.5), 2 * rounding_deg);
  EXPECT_NEAR(a.deg_after_opening, a.deg - 130, rounding_deg);
  EXPECT_NEAR(a.steepest_deg_after_opening - a.deg_after_opening, rise.steepest_deg - rise.deg, 2 * rounding_deg);
  EXPECT_NEAR(a.rise, 2.0 / 3 * rise.height(), 1e-9 * rise.height());  // three equal bores; rounding
  EXPECT_NEAR(arrival(all, 1, "port 2").deg, rise.deg + in_still_gas(0.8), 2 * rounding_deg);
}

// The port opens at 700, its pulse begins at 710 and is 10 % up before 720: the turbine hears it in the next cycle.
TEST(Arrivals, OfALatePortStandWithinTheCycle) {
  const Arrival a = arrival(direct_arrivals(wye("merge"), record(), ports, places), 2, "turbine");
  EXPECT_GE(a.deg, 0);
  EXPECT_LT(a.deg, 720);
  EXPECT_NEAR(a.deg + 720 - 700, a.deg_after_opening, rounding_deg);
  EXPECT_GT(a.deg_after_opening, 10 + in_still_gas(0.7));
}

TEST(Arrivals, SayTheWayInWords) {
  const auto all = direct_arrivals(wye("merge"), record(), ports, places);
  EXPECT_EQ(arrival(all, 1, "turbine").path, "port 1 - merge - turbine");
  EXPECT_EQ(arrival(all, 1, "port 2").path, "port 1 - merge - port 2");
}

TEST(Arrivals, AtAJointNameItOnce) {
  const auto all = direct_arrivals(wye("merge"), record(), ports, {{"merge", {2, 0}}});
  EXPECT_EQ(arrival(all, 1, "merge").path, "port 1 - merge");
}

TEST(Arrivals, NameThePortBehindAJointWhoseNameEndsAlike) {
  const auto all = direct_arrivals(wye("over port 2"), record(), ports, places);
  EXPECT_EQ(arrival(all, 1, "port 2").path, "port 1 - over port 2 - port 2");
}

}  // namespace
}  // namespace pulsewright
