// The network as a whole: how time runs, what is refused, and what is said when the gas turns unphysical.

#include "solver/network.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <memory>
#include <stdexcept>

#include "shared/error.hpp"
#include "solver/end_closed.hpp"

namespace pulsewright {
namespace {

const Gas gas = perfect_gas(1.4, 287);

/// One closed tube of ten cells of 50 mm with this gas in it.
std::unique_ptr<Network> closed_tube(const Primitive& left, const Primitive& right) {
  auto net = std::make_unique<Network>(gas);
  DuctSpec spec = straight_duct("pipe", 0.5, 0.04, 10, left);
  for (std::size_t j = 5; j < 10; ++j) spec.initial[j] = right;
  net->add_duct(spec);
  net->attach(std::make_unique<ClosedEnd>(), {{0, Side::start}});
  net->attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  net->start();
  return net;
}
const Primitive thick{2.4, 0, 2e5, 0}, thin{1.2, 0, 1e5, 0};

TEST(Network, RunUntilLandsExactly) {
  const auto net = closed_tube(thick, thin);
  for (const double t : {1.7e-5, 1e-3, 1.0e-3 + 1e-9, 3.14159e-3}) {
    net->run_until(t);
    EXPECT_EQ(net->time(), t);
  }
}

TEST(Network, RunUntilNowDoesNothing) {
  const auto net = closed_tube(thick, thin);
  net->run_until(1e-3);
  const long steps = net->steps();
  net->run_until(1e-3);
  net->run_until(0.5e-3);
  EXPECT_EQ(net->steps(), steps);
  EXPECT_EQ(net->time(), 1e-3);
}

TEST(Network, StepsAreNoLongerThanAllowed) {
  const auto net = closed_tube(thin, thin);  // at rest: the allowed step stays
  const double allowed = net->allowed_step();
  EXPECT_NEAR(allowed, 0.8 * 0.05 / std::sqrt(1.4 * 1e5 / 1.2), 1e-12 * allowed + 1e-18);  // rounding
  net->run_until(10.5 * allowed);
  EXPECT_EQ(net->steps(), 11);
}

TEST(Network, ADuctEndAttachedTwiceIsNamed) {
  Network net(gas);
  net.add_duct(straight_duct("pipe", 0.5, 0.04, 10, thin));
  net.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  try {
    net.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
    FAIL() << "attached twice";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::internal);
    EXPECT_NE(error.message().find("finish of duct pipe"), std::string::npos);
  }
}

TEST(Network, AFreeEndIsNamed) {
  Network net(gas);
  net.add_duct(straight_duct("pipe", 0.5, 0.04, 10, thin));
  net.attach(std::make_unique<ClosedEnd>(), {{0, Side::finish}});
  try {
    net.start();
    FAIL() << "started with a free end";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::internal);
    EXPECT_NE(error.message().find("pipe"), std::string::npos);
  }
}

TEST(Network, NamesTheCellThatSetsTheStep) {
  const auto net = closed_tube({1.2, 100, 1e5, 0}, thin);
  EXPECT_EQ(net->step_setter().duct, 0);
  EXPECT_LT(net->step_setter().cell, 5u);
}

/// What is said when steps far beyond the allowed one break the gas.
Error broken_by_long_steps(Network& net) {
  try {
    for (int i = 0; i < 50; ++i) net.step(20 * net.allowed_step());
  } catch (const Error& error) {
    return error;
  }
  throw std::logic_error("the gas survived");
}

TEST(Network, UnphysicalGasIsToldWithDuctCellDistanceTimeAndValues) {
  const auto net = closed_tube(thick, thin);
  const Error error = broken_by_long_steps(*net);
  EXPECT_EQ(error.kind(), ErrorKind::unphysical);
  for (const char* word : {"duct pipe", "cell ", " mm from its start", " ms"})
    EXPECT_NE(error.where().find(word), std::string::npos) << error.where();
  for (const char* word : {"density", "kg/m3", "pressure", "bar", "temperature", "K", "velocity", "m/s"})
    EXPECT_NE(error.message().find(word), std::string::npos) << error.message();
  EXPECT_EQ(std::string(error.what()).find("nan"), std::string::npos) << error.what();
  EXPECT_FALSE(error.hint().empty());
}

/// An end whose answer is no number.
class NoNumberEnd : public Element {
 public:
  void advance(std::span<Port> ports, const Step&) override {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    ports[0].flux = {none, none, none, none};
    ports[0].face = ports[0].state;
  }
};

TEST(Network, WhatIsNoNumberIsFoundAtOnceAndNeverPrintedAsOne) {
  Network net(gas);
  net.add_duct(straight_duct("pipe", 0.5, 0.04, 10, thin));
  net.attach(std::make_unique<ClosedEnd>(), {{0, Side::start}});
  net.attach(std::make_unique<NoNumberEnd>(), {{0, Side::finish}});
  net.start();
  try {
    net.step(net.allowed_step());
    FAIL() << "it went unseen";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unphysical);
    EXPECT_NE(error.where().find("duct pipe, cell 10, 475.0 mm"), std::string::npos) << error.where();
    EXPECT_EQ(std::string(error.what()).find("nan"), std::string::npos) << error.what();
  }
}

}  // namespace
}  // namespace pulsewright
