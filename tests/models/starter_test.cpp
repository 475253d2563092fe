// A starter case reads without a fault, whatever was asked for.

#include "models/starter.hpp"

#include <gtest/gtest.h>

#include "models/tube_stock.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_fault;
using test::read_engine;

StarterOptions options(const std::string& manifold, int cylinders) {
  StarterOptions o;
  o.manifold = manifold;
  o.cylinders = cylinders;
  return o;
}

TEST(Starter, EveryLayoutReadsForEveryCountOfCylindersThatItTakes) {
  for (const char* manifold : {"log", "4-1", "divided"})
    for (const int cylinders : {3, 4, 6})
      EXPECT_EQ(engine_fault(starter_case(options(manifold, cylinders))), "") << manifold << cylinders;
  EXPECT_EQ(engine_fault(starter_case(options("4-2-1", 4))), "");
  EXPECT_EQ(engine_fault(starter_case(options("3-3", 6))), "");
}

TEST(Starter, SaysWhatItWasAskedFor) {
  StarterOptions o = options("4-1", 4);
  o.bore = 0.0825;
  o.redline = 6800;
  o.boost_gauge = 1.4e5;
  const EngineCase c = read_engine(starter_case(o));
  EXPECT_NEAR(c.engine.crank.bore, 0.0825, 1e-9);
  EXPECT_EQ(c.engine.redline, 6800);
  EXPECT_NEAR(c.charge.boost_gauge, 1.4e5, 1e-6);
  EXPECT_EQ(c.turbines[0].scrolls, 1);
}

TEST(Starter, DividedHousingGetsCylindersThatFireAlternately) {
  const EngineCase c = read_engine(starter_case(options("divided", 4)));
  EXPECT_EQ(c.turbines[0].scrolls, 2);
  const auto ends_at = [&](const std::string& name) {
    return c.plan
        .nodes[static_cast<std::size_t>(
            c.plan.ducts[static_cast<std::size_t>(locate(c.plan, name, 0).duct)].finish.node)]
        .name;
  };
  EXPECT_EQ(ends_at("primary 1"), ends_at("primary 4"));
  EXPECT_EQ(ends_at("primary 2"), ends_at("primary 3"));
  EXPECT_NE(ends_at("primary 1"), ends_at("primary 2"));
}

TEST(Starter, TubeIsTheStockPipeNextAboveThePort) {
  // Two valves of 0.34 bore, throat 0.87 of the head less a stem of 0.2: 34.99 mm for 86 mm of bore.
  const EngineCase c = read_engine(starter_case(options("4-1", 4)));
  const double bore = equal_area_bore(area_at(c.plan.ducts[0].drawing, 0.3));
  EXPECT_GE(bore, 0.03499);
  EXPECT_NEAR(bore, stock_pipe_above(0.03499).tube().bore(), 1e-9);
}

TEST(Starter, WhatCannotBeIsAUsageError) {
  for (const StarterOptions& bad : {options("4-2-1", 6), options("3-3", 4), options("five", 4), options("4-1", 13)}) {
    try {
      starter_case(bad);
      FAIL() << bad.manifold << bad.cylinders;
    } catch (const Error& error) {
      EXPECT_EQ(error.kind(), ErrorKind::usage);
    }
  }
  StarterOptions o;
  o.bore = 1e300;
  EXPECT_THROW(starter_case(o), Error);
  o = {};
  o.title = "a\"b";
  EXPECT_THROW(starter_case(o), Error);
}

}  // namespace
}  // namespace pulsewright
