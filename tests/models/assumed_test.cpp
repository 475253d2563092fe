#include "models/assumed.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

constexpr double pi = 3.14159265358979323846;

EngineFacts two_litre() {
  EngineFacts f;
  f.bore = f.stroke = 0.086;
  f.displacement = 2.0e-3;
  f.redline = 7500;
  f.boost_gauge = 1e5;
  f.lambda = 0.85;
  f.heat_set_free = 0.8;
  f.exhaust_head = 0.029;
  f.intake_head = 0.034;
  f.primary_bore = f.largest_primary_bore = 0.0366;
  f.turbine_inducer = 0.064;
  f.turbine_exducer = 0.055;
  f.wastegate_bore = 0.044;
  f.wastegate_spring = 0.7e5;
  return f;
}

// Every row is usable once the facts stand: a number, inside its own range, with a reason and readable texts.
TEST(Assumed, EveryRowHasADefaultInsideItsRangeAndAReason) {
  for (bool diesel : {false, true}) {
    for (const AssumedRow& row : assumed_table()) {
      EngineFacts facts = two_litre();
      facts.diesel = diesel;
      AssumedList list(facts);
      list.take(row.key);
      const AssumedEntry entry = list.entries().at(0);
      EXPECT_TRUE(std::isfinite(entry.si)) << row.key;
      EXPECT_LE(entry.low, entry.si) << row.key;
      EXPECT_GE(entry.high, entry.si) << row.key;
      EXPECT_FALSE(entry.why.empty()) << row.key;
      EXPECT_FALSE(entry.value.empty()) << row.key;
      EXPECT_EQ(entry.range.empty(), row.range.kind == AssumedRange::Kind::none) << row.key;
    }
  }
}

TEST(Assumed, NoKeyStandsTwiceForOneFuel) {
  std::set<std::string> petrol, diesel;
  for (const AssumedRow& row : assumed_table()) {
    EXPECT_TRUE(row.fuel == AssumedFor::diesel || petrol.emplace(row.key).second) << row.key;
    EXPECT_TRUE(row.fuel == AssumedFor::petrol || diesel.emplace(row.key).second) << row.key;
  }
  EXPECT_EQ(petrol, diesel);
}

TEST(Assumed, AGivenValueKeepsTheRowOutOfTheList) {
  AssumedList list(two_litre());
  EXPECT_EQ(list.given_or(0.145, "engine.rod"), 0.145);
  EXPECT_TRUE(list.entries().empty());
  EXPECT_NEAR(list.given_or(std::nullopt, "engine.rod"), 1.7 * 0.086, 1e-15);  // one product, rounding only
  ASSERT_EQ(list.entries().size(), 1U);
  EXPECT_EQ(list.entries()[0].value, "146.2 mm");
  EXPECT_EQ(list.entries()[0].range, "129 to 172 mm");
}

TEST(Assumed, FormulasFollowTheEngine) {
  AssumedList list(two_litre());
  const double rounding = 1e-12;  // closed forms, rounding only
  EXPECT_NEAR(list.take("engine.burn.centre"), 20 * pi / 180, rounding);
  EXPECT_NEAR(list.take("engine.burn.efficiency"), 0.98 * 0.8, rounding);
  EXPECT_NEAR(list.take("turbine.capacity"), 0.16, rounding);
  EXPECT_NEAR(list.take("wastegate.bore"), 0.044, rounding);
  EXPECT_NEAR(list.take("exhaust_valve.lift"), 0.00725, rounding);
  EXPECT_NEAR(list.take("turbine.inertia"), 3.5e-5 * std::pow(55.0 / 60.0, 5), rounding);
  EXPECT_NEAR(list.take("joint.throat"), std::sqrt(1.2) * 0.0366, rounding);
  list.facts().displacement = 1.0e-3;
  EXPECT_NEAR(list.take("turbine.capacity"), 0.08, rounding);
  list.facts().heat_set_free = 1;
  EXPECT_NEAR(list.take("engine.burn.efficiency"), 0.98, rounding);
}

TEST(Assumed, PetrolAndDieselDiffer) {
  AssumedList list;
  EXPECT_EQ(list.take("engine.lambda"), 0.85);
  list.facts().diesel = true;
  EXPECT_EQ(list.take("engine.lambda"), 1.4);
  EXPECT_EQ(list.take("engine.compression_ratio"), 16.5);
}

// Standard atmosphere at 1000 m over sea level: ISO 2533 gives 89874.6 / 101325 Pa and 281.651 / 288.15 K. The exponent
// is rounded to six figures: 1e-4.
TEST(Assumed, AltitudeThinsTheAirByTheStandardAtmosphere) {
  AssumedList list;
  EXPECT_EQ(list.take("ambient.pressure"), 101300.0);
  list.facts().altitude = 1000;
  EXPECT_NEAR(list.take("ambient.pressure") / 101300, 0.886993, 1e-4);
  EXPECT_NEAR(list.take("ambient.temperature") / 293, 0.977444, 1e-4);
}

TEST(Assumed, EntriesComeInTableOrderAndAlikeOnesOnce) {
  AssumedList list(two_litre());
  list.take("roughness");
  list.take("engine.rod");
  list.take("roughness");
  list.take_scaled("joint.volume", 40e-6, "rear");
  list.take_scaled("joint.volume", 40e-6, "front");
  const auto entries = list.entries();
  ASSERT_EQ(entries.size(), 4U);
  EXPECT_EQ(entries[0].key, "engine.rod");
  EXPECT_EQ(entries[1].value, "0.03 mm");
  EXPECT_EQ(entries[2].value, "40 cm^3 (rear)");
  EXPECT_EQ(entries[3].value, "40 cm^3 (front)");
  EXPECT_EQ(entries[3].range, "12 to 120 cm^3");
}

TEST(Assumed, AskingBeforeTheFactIsKnownIsAnErrorNotAZero) {
  AssumedList list;
  for (std::string_view key : {"engine.rod", "turbine.capacity", "engine.burn.centre", "engine.burn.efficiency"})
    EXPECT_THROW(list.take(key), Error) << key;
  EXPECT_THROW(list.take("engine.colour"), Error);
}

TEST(Assumed, ValveAndPortKeysStandUnderEngineInACase) {
  EXPECT_EQ(assumed_address("exhaust_valve.opens"), "engine.exhaust_valve.opens");
  EXPECT_EQ(assumed_address("roughness"), "roughness");
}

}  // namespace
}  // namespace pulsewright
