// Alloys: found by any of their names, and how much they grow.

#include "models/alloy.hpp"

#include <gtest/gtest.h>

#include "shared/error.hpp"

namespace pulsewright {
namespace {

TEST(Alloy, IsFoundByNameAndByEitherDesignation) {
  for (const char* text : {"321", "1.4541", "EN 1.4541", "S32100", "UNS S32100", "uns s32100"})
    EXPECT_EQ(find_alloy(text).name, "321") << text;
  EXPECT_EQ(find_alloy("Cast iron").name, "cast iron");
}

TEST(Alloy, UnknownOneIsRefusedWithTheNearest) {
  try {
    find_alloy("mild stel");
    FAIL() << "was taken";
  } catch (const Error& error) {
    EXPECT_EQ(error.kind(), ErrorKind::case_file);
    EXPECT_NE(error.hint().find("mild steel"), std::string::npos);
  }
  EXPECT_THROW(find_alloy(""), Error);
  EXPECT_THROW(find_alloy("4"), Error);
}

// A 300 mm runner heated by 600 and 800 K: 3.4-3.6 and 4.5-4.8 mm, from the mean expansion of 321 in public data sheets
// (18.9e-6 from 20 to 600 degC, 20.5e-6 to 1000 degC; sheets differ by 5 %).
TEST(Alloy, StainlessRunnerGrowsAsDataSheetsSay) {
  const Alloy& alloy = find_alloy("321");
  EXPECT_NEAR(1e3 * 0.3 * growth_per_metre(alloy, 293.15 + 600), 3.5, 0.1);
  EXPECT_NEAR(1e3 * 0.3 * growth_per_metre(alloy, 293.15 + 800), 4.65, 0.15);
}

// 18.7e-6 from 0 to 650 degC for 304 in a public data sheet; it lies between the table's points. 1 %: the sheet's last digit
// and its 0 degC for our 20.
TEST(Alloy, ExpansionBetweenTheTablesPointsAgreesWithTheSheet) {
  EXPECT_NEAR(growth_per_metre(find_alloy("304"), 650 + 273.15) / (18.7e-6 * 630), 1, 0.01);
}

TEST(Alloy, GrowsFromTwentyDegreesOnAndWithoutAStep) {
  for (const Alloy& alloy : alloys()) {
    EXPECT_NEAR(growth_per_metre(alloy, 293.15), 0, 1e-12) << alloy.name;
    for (double T = 300; T < 1400; T += 10)
      EXPECT_NEAR(growth_per_metre(alloy, T + 10) - growth_per_metre(alloy, T), 1.7e-4, 1.4e-4) << alloy.name << T;
    EXPECT_GT(alloy.conductivity.at(1200), 10) << alloy.name;
    EXPECT_GT(alloy.heat_capacity.at(300), 350) << alloy.name;
  }
}

}  // namespace
}  // namespace pulsewright
