// trace between cell centres: the series at a place against the profile at the same instant.

#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "tests/acceptance/program.hpp"

namespace pulsewright {
namespace {

using Row = std::vector<double>;

std::vector<Row> rows(const std::string& csv) {
  std::vector<Row> all;
  std::istringstream in(csv);
  std::string line;
  std::getline(in, line);  // the head
  while (std::getline(in, line)) {
    Row row;
    std::istringstream cells(line);
    for (std::string cell; std::getline(cells, cell, ',');) row.push_back(std::stod(cell));
    all.push_back(row);
  }
  return all;
}

class ShockTubeFile : public testing::Test {
 protected:
  void SetUp() override { ASSERT_EQ(shop_.run({"run", "01_shock_tube.toml", "--out", "tube.h5"}).exit_code, 0); }

  std::vector<Row> series(const std::string& at) const {
    const Outcome o = shop_.run({"trace", "tube.h5", "--at", at});
    EXPECT_EQ(o.exit_code, 0) << o.err;
    return rows(o.out);
  }
  std::vector<Row> profile(const std::string& along, const std::string& when) const {
    const Outcome o = shop_.run({"trace", "tube.h5", "--along", along, "--when", when});
    EXPECT_EQ(o.exit_code, 0) << o.err;
    return rows(o.out);
  }

  Workshop shop_;
};

// Cells of 2.5 mm: centres of the driven duct at 1.25 mm, 3.75 mm ... Nine digits are printed: 1e-8 of a figure.
TEST_F(ShockTubeFile, APlaceBetweenTwoCellsLiesOnTheLineBetweenThem) {
  const auto cells = profile("driven", "0.6 ms");
  ASSERT_EQ(cells.size(), 200u);
  for (const double mm : {1.25, 100.0, 175.5, 331.9, 332.3}) {
    const Row place = series("driven:" + std::to_string(mm) + "mm").back();
    const double centre = mm / 2.5 - 0.5;
    const auto left = static_cast<std::size_t>(centre);
    const double part = centre - static_cast<double>(left);
    EXPECT_NEAR(place[0], 0.6e-3, 1e-15);
    for (std::size_t column = 1; column <= 4; ++column) {
      const double a = cells[left][column], b = cells[left + 1][column];
      EXPECT_NEAR(place[column], a + part * (b - a), 1e-8 * (std::abs(a) + std::abs(b)) + 1e-9)
          << mm << " mm, column " << column;
    }
  }
}

TEST_F(ShockTubeFile, WhereTwoNamesMeetBothTellTheSameGas) { EXPECT_EQ(series("driver:500mm"), series("driven:0mm")); }

TEST_F(ShockTubeFile, TheSeriesBeginsAtTheStartAndEndsAtTheEnd) {
  const auto all = series("driver:250mm");
  ASSERT_EQ(all.size(), 61u);
  EXPECT_EQ(all.front()[0], 0);
  EXPECT_EQ(all.front()[1], 1e5);
  EXPECT_NEAR(all.back()[0], 0.6e-3, 1e-15);
}

TEST_F(ShockTubeFile, TheProfileTakesTheNearestInstantAndSaysWhich) {
  const Outcome o = shop_.run({"trace", "tube.h5", "--along", "driver", "--when", "0.3041 ms"});
  EXPECT_EQ(o.exit_code, 0);
  EXPECT_NE(o.err.find("0.3 ms"), std::string::npos) << o.err;
  EXPECT_EQ(rows(o.out), profile("driver", "0.30 ms"));
}

TEST_F(ShockTubeFile, APlaceBeyondTheDuctIsAUsageFaultThatSaysItsLength) {
  const Outcome o = shop_.run({"trace", "tube.h5", "--at", "driver:501mm"});
  EXPECT_EQ(o.exit_code, 2);
  EXPECT_NE(o.err.find("500 mm"), std::string::npos) << o.err;
  EXPECT_TRUE(o.out.empty());
}

}  // namespace
}  // namespace pulsewright
