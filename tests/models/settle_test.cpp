#include "models/settle.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace pulsewright {
namespace {

// A figure that tends to 1 with errors 0.5 r^n: how far off it is when the watch calls it settled.
double error_when_settled(double r) {
  SettleWatch watch;
  double error = 0.5;
  while (!watch.settled() && watch.cycles() < SettleWatch::most_cycles) {
    error *= r;
    watch.add({{"x", 1 + error}});
  }
  return watch.settled() ? error : 1;
}

TEST(SettleWatch, WhatIsStillToComeIsBelowItsTolerance) {
  for (double r : {0.1, 0.5, 0.8}) EXPECT_LT(error_when_settled(r), SettleWatch::tolerance * 1.001);
}

TEST(SettleWatch, ASlowDriftIsNotSettled) { EXPECT_EQ(error_when_settled(0.97), 1); }

TEST(SettleWatch, NeedsFourCyclesEvenWhenNothingMoves) {
  SettleWatch watch;
  int cycles = 0;
  while (!watch.settled()) watch.add({{"x", 3.0}}), ++cycles;
  EXPECT_EQ(cycles, SettleWatch::least_cycles);
}

TEST(SettleWatch, NamesTheFigureThatDoesNotSettle) {
  SettleWatch watch;
  for (int i = 0; i < 10; ++i) watch.add({{"calm", 1}, {"wild", 1 + i % 2 * 0.1}});
  EXPECT_FALSE(watch.settled());
  EXPECT_NE(watch.worst().find("wild"), std::string::npos);
}

TEST(SettleWatch, SaysByHowMuchAFigureSwingsThatDoesNotCalm) {
  SettleWatch watch;
  for (int i = 0; i < 10; ++i) watch.add({{"wild", 1 + i % 2 * 0.1}});
  EXPECT_EQ(watch.worst(), "wild (from cycle to cycle by 9.1 %)");  // 0.1 of the last, 1.1
}

TEST(SettleWatch, NotANumberNeverSettles) {
  SettleWatch watch;
  for (int i = 0; i < 10; ++i) watch.add({{"x", std::nan("")}});
  EXPECT_FALSE(watch.settled());
}

}  // namespace
}  // namespace pulsewright
