#include "adjust/snooping.h"

#include <gtest/gtest.h>

#include <cmath>

namespace squaredig::adjust {
namespace {

// a line through four points, the last one measured twice
std::vector<Equation> rows() {
  return {{{{0, 1}, {1, 0}}, 0, 1},
          {{{0, 1}, {1, 1}}, 1, 1},
          {{{0, 1}, {1, 2}}, 2, 2},
          {{{0, 1}, {1, 3}}, 3, 1},
          {{{0, 1}, {1, 3}}, 3, 1}};
}

TEST(Snooping, CorrelationsAreCorrelations_snooping_1) {
  const auto lines = rows();
  const auto fit = *least_squares(2, lines);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    EXPECT_DOUBLE_EQ(*correlation(fit, lines, i, i), 1);
    for (std::size_t j = 0; j < lines.size(); ++j) {
      EXPECT_LE(std::abs(*correlation(fit, lines, i, j)), 1);
      EXPECT_DOUBLE_EQ(*correlation(fit, lines, i, j), *correlation(fit, lines, j, i));
    }
  }
}

TEST(Snooping, TwoReadingsOfOneThingCannotBeToldApart_snooping_2) {
  const std::vector<Equation> twice = {{{{0, 1}}, 5, 0.1}, {{{0, 1}}, 5.4, 0.2}};
  const auto fit = *least_squares(1, twice);
  EXPECT_NEAR(*correlation(fit, twice, 0, 1), -1, 1e-12);
  EXPECT_EQ(alike(fit, twice, 0, 0.9), (std::vector<std::size_t>{0, 1}));
  // five readings of one thing: each correlated with another by -1/4
  const std::vector<Equation> five(5, Equation{{{0, 1}}, 5, 0.1});
  const auto mean = *least_squares(1, five);
  EXPECT_NEAR(*correlation(mean, five, 0, 1), -0.25, 1e-12);
  EXPECT_EQ(alike(mean, five, 0, 0.9), (std::vector<std::size_t>{0}));
}

TEST(Snooping, WhatNothingChecksIsNotTested) {
  const std::vector<Equation> bare = {{{{0, 1}}, 5, 0.1}, {{{1, 1}}, 5.4, 0.2}, {{{1, 1}}, 5, 0.2}};
  const auto fit = *least_squares(2, bare);
  EXPECT_FALSE(correlation(fit, bare, 0, 1));
  EXPECT_FALSE(smallest_detectable(fit.observations[0], 0.1, 4.1321));
  EXPECT_NEAR(*smallest_detectable(fit.observations[1], 0.2, 4.1321), 0.2 * 4.1321 * std::sqrt(2.0),
              1e-12);
}

TEST(Snooping, TheGlobalTestAsksWhetherChanceWouldDo) {
  std::vector<Equation> twice = {{{{0, 1}}, 5, 0.1}, {{{0, 1}}, 5.1, 0.1}};
  EXPECT_EQ(global_test(*least_squares(1, twice), 0.001), GlobalTest::Passed);
  twice[1].observed = 5.6;
  EXPECT_EQ(global_test(*least_squares(1, twice), 0.001), GlobalTest::Failed);
  twice.pop_back();
  EXPECT_EQ(global_test(*least_squares(1, twice), 0.001), GlobalTest::NothingToTest);
}

}  // namespace
}  // namespace squaredig::adjust
