// A starter case reads without a fault, whatever was asked for, and hides nothing that it assumes.

#include "models/starter.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>

#include "models/arrangement.hpp"
#include "models/firing_pairs.hpp"
#include "models/tube_stock.hpp"
#include "tests/models/case_text.hpp"

namespace pulsewright {
namespace {

using test::engine_fault;
using test::read_engine;
using test::says;

StarterOptions options(const std::string& manifold, const std::string& cylinders) {
  StarterOptions o;
  o.manifold = manifold;
  o.cylinders = cylinders;
  return o;
}

std::string fault_of(const StarterOptions& o) {
  try {
    make_starter(o);
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::usage) << error.what();
    return error.what();
  }
  return {};
}

/// The case with the # taken away before every value and table that stands behind one.
std::string all_said(const std::string& text) {
  static const std::regex behind_a_mark("# ([a-z_]+ += .*|\\[\\[.*)");
  std::istringstream in(text);
  std::string said;
  for (std::string line; std::getline(in, line);) {
    std::smatch found;
    said += (std::regex_match(line, found, behind_a_mark) ? found[1].str() : line) + '\n';
  }
  return said;
}

TEST(Starter, KnowingNothingGivesACaseThatReads) {
  const StarterCase starter = make_starter({});
  EXPECT_EQ(engine_fault(starter.text), "");
  EXPECT_EQ(starter.engine.engine.cylinders(), 4);
  EXPECT_TRUE(says(starter.text, {"assumed, because you did not say"}));
}

TEST(Starter, EveryLayoutReadsForEveryArrangementThatItFits) {
  for (const Arrangement& a : arrangements()) {
    const std::string name(a.name);
    for (const std::string& manifold : starter_manifolds(starter_cylinders(name))) {
      const StarterCase starter = make_starter(options(manifold, name));
      EXPECT_EQ(engine_fault(starter.text), "") << name << ' ' << manifold;
      EXPECT_EQ(starter.engine.engine.arrangement, name);
      EXPECT_EQ(starter.engine.turbines[0].scrolls, manifold == "divided" || manifold == "3-3" ? 2 : 1);
    }
  }
}

TEST(Starter, SaysWhatItWasToldInTheUnitsItWasTold) {
  StarterOptions o = options("4-1", "4");
  o.bore = "3.25 in";
  o.stroke = "82.5 mm";
  o.redline = "6800";
  o.boost = "20 psi";
  o.exhaust_cam = "60 deg before bdc, 12 deg after tdc";
  o.port = "oval 36 mm x 28 mm";
  o.turbine = "0.63, 64 mm, 2.17 in";
  o.length = "14 in";
  o.fuel = "ethanol";
  const StarterCase starter = make_starter(o);
  const EngineCase& c = starter.engine;
  EXPECT_NEAR(c.engine.crank.bore, 0.08255, 1e-9);
  EXPECT_NEAR(c.engine.crank.stroke, 0.0825, 1e-9);
  EXPECT_EQ(c.engine.redline, 6800);
  EXPECT_NEAR(c.charge.boost_gauge, 20 * 6894.757, 1);  // psi to a Pascal
  EXPECT_NEAR(c.engine.exhaust.card.opens.degrees(), 120, 1e-9);
  EXPECT_NEAR(c.engine.exhaust.card.closes.degrees(), 372, 1e-9);
  EXPECT_TRUE(c.engine.port.exit.has_value());
  EXPECT_EQ(c.engine.fuel.name, "ethanol");
  ASSERT_TRUE(c.turbines[0].housing.has_value());
  EXPECT_NEAR(c.turbines[0].housing->a_over_r, 0.63 * 0.0254, 1e-12);  // a plain number means inches
  EXPECT_TRUE(says(starter.text, {"\"3.25 in\"", "\"20 psi\"", "\"14 in\"", "\"2.17 in\""}));
  EXPECT_FALSE(says(starter.text, {"because you did not say"}));
}

TEST(Starter, EverythingAssumedStandsInTheCaseWithItsRange) {
  for (const char* manifold : {"4-1", "divided", "log"}) {
    const StarterCase starter = make_starter(options(manifold, "4"));
    for (const AssumedEntry& e : starter.engine.assumed) {
      const std::string key = e.key.substr(e.key.rfind('.') + 1);
      EXPECT_TRUE(std::regex_search(starter.text, std::regex("# .*" + key + "( +=|:)"))) << e.key;
      EXPECT_TRUE(e.range.empty() || starter.text.find(e.range) != std::string::npos) << e.key;
    }
  }
}

// Rounded to four figures on the way: 1e-3.
TEST(Starter, WhatIsAssumedMayBeSaidByTakingItsMarkAway) {
  for (const char* manifold : {"4-1", "divided", "log", "4-2-1"})
    for (const char* turbine : {"", "0.63 in, 64 mm, 55 mm"}) {
      StarterOptions o = options(manifold, "4");
      o.turbine = turbine;
      const StarterCase starter = make_starter(o);
      const std::string said = all_said(starter.text);
      ASSERT_EQ(engine_fault(said), "") << said;
      const EngineCase c = read_engine(said);
      EXPECT_NEAR(c.engine.crank.rod, starter.engine.engine.crank.rod, 1e-3 * c.engine.crank.rod);
      EXPECT_NEAR(c.turbines[0].capacity.flow, starter.engine.turbines[0].capacity.flow,
                  1e-3 * c.turbines[0].capacity.flow);
      EXPECT_NEAR(c.charge.temperature, starter.engine.charge.temperature, 0.1);
      const auto list = starter.text.find("# Assumed beside all this:");
      for (const AssumedEntry& e : c.assumed)  // what is left is a rule or a curve, or belongs to the downpipe
        EXPECT_TRUE(starter.text.find(e.key + ": ", list) != std::string::npos || e.key == "wall_temperature" ||
                    e.key == "roughness" || e.key == "emissivity" || e.key == "wall")
            << e.key;
    }
}

TEST(Starter, DividedHousingGetsCylindersThatFireAlternately) {
  const auto groups = pipe_groups(make_starter(options("divided", "4")).engine);
  ASSERT_EQ(groups.size(), 2u);
  EXPECT_EQ(groups[0].cylinders, (std::vector<int>{1, 4}));
  EXPECT_EQ(groups[1].cylinders, (std::vector<int>{2, 3}));
  const auto six = pipe_groups(make_starter(options("3-3", "6")).engine);
  ASSERT_EQ(six.size(), 2u);
  EXPECT_EQ(six[0].cylinders, (std::vector<int>{1, 2, 3}));
}

TEST(Starter, OfTwoBanksEachHasItsOwnScroll) {
  for (const char* arrangement : {"boxer 4", "boxer 6", "vee 6", "vee 8"}) {
    const Arrangement& a = *find_arrangement(arrangement);
    for (const PipeGroup& group : pipe_groups(make_starter(options("divided", arrangement)).engine)) {
      std::set<int> banks;
      for (const int c : group.cylinders) banks.insert(a.bank[static_cast<std::size_t>(c - 1)]);
      EXPECT_EQ(banks.size(), 1u) << arrangement;
    }
  }
}

TEST(Starter, FourIntoTwoIntoOneMeetsInPairsFirst) {
  const auto pairs = firing_pairs(make_starter(options("4-2-1", "4")).engine);
  for (const FiringPair& p : pairs) {
    const bool pair = p.blows + p.hears == 5;  // 1 and 4, 2 and 3
    EXPECT_EQ(p.meet_at, pair ? (p.blows == 1 || p.blows == 4 ? "front" : "rear") : "merge");
  }
}

TEST(Starter, TubeIsTheStockPipeNextAboveThePort) {
  // Two valves of 0.34 bore, throat 0.87 of the head less a stem of 0.2: 34.99 mm for 86 mm of bore.
  const EngineCase c = make_starter(options("4-1", "4")).engine;
  EXPECT_NEAR(equal_area_bore(area_at(c.plan.ducts[0].drawing, 0.3)), stock_pipe_above(0.03499).tube().bore(), 1e-9);
  StarterOptions o = options("4-1", "4");
  o.port = "round 38 mm";
  const EngineCase measured = make_starter(o).engine;
  EXPECT_NEAR(equal_area_bore(area_at(measured.plan.ducts[0].drawing, 0.3)), stock_pipe_above(0.038).tube().bore(),
              1e-9);
}

TEST(Starter, ALayoutThatDoesNotFitNamesThoseThatDo) {
  EXPECT_TRUE(
      says(fault_of(options("4-2-1", "6")), {"--manifold", "4-2-1", "6 cylinders", "log, 4-1, divided or 3-3"}));
  EXPECT_TRUE(says(fault_of(options("3-3", "4")), {"4 cylinders", "log, 4-1, 4-2-1 or divided"}));
  EXPECT_TRUE(says(fault_of(options("divided", "5")), {"5 cylinders", "log or 4-1"}));
  EXPECT_TRUE(says(fault_of(options("4-2-2", "4")), {"no manifold", "did you mean 4-2-1?"}));
  EXPECT_TRUE(says(fault_of(options("4-1", "13")), {"no usual firing order", "inline 4"}));
  EXPECT_TRUE(says(fault_of(options("4-1", "boxr 4")), {"did you mean boxer 4?"}));
}

struct BadAnswer {
  std::string StarterOptions::*answer;
  const char* text;
  std::vector<std::string> said;
};

TEST(Starter, ABadAnswerIsAUsageFaultThatNamesItsOption) {
  using O = StarterOptions;
  for (const BadAnswer& bad : std::vector<BadAnswer>{
           {&O::bore, "86", {"--bore", "unit"}},
           {&O::bore, "1e300 mm", {"--bore", "between 20 mm and 500 mm"}},
           {&O::bore, "86 kg", {"--bore", "length"}},
           {&O::stroke, "-86 mm", {"--stroke"}},
           {&O::stroke, "86,5 mm", {"--stroke", "86.5"}},
           {&O::redline, "fast", {"--redline", "'fast'"}},
           {&O::redline, "7000 rpm", {"--redline"}},
           {&O::redline, "nan", {"--redline"}},
           {&O::boost, "1 bara", {"--boost"}},
           {&O::boost, "40 bar", {"--boost"}},
           {&O::boost, "-0.2 bar", {"--boost"}},
           {&O::fuel, "petrool", {"--fuel", "did you mean petrol?"}},
           {&O::exhaust_cam, "54 deg before bdc", {"--exhaust-cam", "comma"}},
           {&O::exhaust_cam, "54 deg before tdc, 18 deg after tdc", {"no opening"}},
           {&O::exhaust_cam, "54 deg before bdc, 18 deg after bdc", {"no closing"}},
           {&O::exhaust_cam, "centre 108 deg before tdc, 18 deg after tdc", {"centre"}},
           {&O::port, "36 x 28", {"--port"}},
           {&O::turbine, "0.63", {"--turbine", "commas"}},
           {&O::turbine, "63, 64 mm, 55 mm", {"--turbine", "0.1 and 5 in"}},
           {&O::turbine, "0.63, 55 mm, 64 mm", {"--turbine", "wider"}},
           {&O::tube, "1-1/2", {"--tube", "two tubes"}},
           {&O::length, "350", {"--length"}},
           {&O::length, "20 m", {"--length", "5 m"}},
           {&O::title, "a\"b", {"quotes"}},
           {&O::title, "a\nb", {"control"}},
       }) {
    StarterOptions o;
    o.*bad.answer = bad.text;
    EXPECT_TRUE(says(fault_of(o), bad.said)) << bad.text;
  }
}

}  // namespace
}  // namespace pulsewright
