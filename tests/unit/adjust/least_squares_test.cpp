#include "adjust/least_squares.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace squaredig::adjust {
namespace {

// A level net over five points, six lines more than it needs; point 0 is the bench.
std::vector<Equation> net(double sigma) {
  const double level[] = {0, 1.25, -0.5, 2, 3.5};
  const std::size_t lines[][2] = {{0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 0},
                                  {0, 2}, {1, 3}, {2, 4}, {3, 0}, {4, 1}};
  std::vector<Equation> rows;
  for (const auto& line : lines) {
    Equation e;
    if (line[0] > 0) e.terms.push_back({line[0] - 1, -1});
    if (line[1] > 0) e.terms.push_back({line[1] - 1, 1});
    e.observed = level[line[1]] - level[line[0]];
    e.sigma = sigma;
    rows.push_back(e);
  }
  return rows;
}

TEST(LeastSquares, RedundancyNumbersSumToTheFreedom_adjust_1) {
  const auto e = *least_squares(4, net(0.003));
  double sum = 0;
  for (const Tested& t : e.observations) sum += t.redundancy;
  EXPECT_EQ(e.freedom, 6U);
  EXPECT_NEAR(sum, 6, 1e-14);
}

TEST(LeastSquares, OrderDoesNotMatter_adjust_2) {
  auto rows = net(0.003);
  rows[3].observed += 0.02;
  rows[5].sigma = 0.001;
  const auto forth = *least_squares(4, rows);
  std::reverse(rows.begin(), rows.end());
  const auto back = *least_squares(4, rows);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(forth.unknowns[i], back.unknowns[i], 1e-15);
}

TEST(LeastSquares, ScalingAllSigmasChangesNoEstimate_adjust_3) {
  auto fine = net(0.001);
  auto coarse = net(0.020);
  fine[2].observed = coarse[2].observed += 0.010;
  const auto a = *least_squares(4, fine);
  const auto b = *least_squares(4, coarse);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(a.unknowns[i], b.unknowns[i], 1e-15);
  for (std::size_t i = 0; i < fine.size(); ++i)
    EXPECT_NEAR(a.observations[i].residual, b.observations[i].residual, 1e-15);
}

TEST(LeastSquares, OneGrossErrorIsNamedWithItsSize_adjust_4) {
  for (std::size_t wrong = 0; wrong < 10; ++wrong) {
    auto rows = net(0.003);
    rows[wrong].observed += 0.050;
    const auto e = *least_squares(4, rows);
    ASSERT_EQ(most_suspect(e, 3.2905), wrong);
    EXPECT_NEAR(*e.observations[wrong].gross_error, 0.050, 1e-14);
  }
  EXPECT_FALSE(most_suspect(*least_squares(4, net(0.003)), 3.2905));
}

TEST(LeastSquares, NothingWhereTheUnknownsAreNotFixed) {
  EXPECT_FALSE(least_squares(0, {}));
  const std::vector<Equation> few = {{{{0, 1}, {1, -1}}, 1, 1}};
  EXPECT_FALSE(least_squares(2, few));
  // a net without a bench floats
  const std::vector<Equation> floating = {
      {{{0, 1}, {1, -1}}, 1, 1}, {{{1, 1}, {2, -1}}, 1, 1}, {{{2, 1}, {0, -1}}, -2, 1}};
  EXPECT_FALSE(least_squares(3, floating));
  const std::vector<Equation> unseen = {{{{0, 1}}, 1, 1}, {{{0, 1}}, 2, 1}};
  EXPECT_FALSE(least_squares(2, unseen));
}

TEST(LeastSquares, AnUncheckedObservationTellsNothing) {
  const std::vector<Equation> rows = {{{{0, 1}}, 1, 1}, {{{0, 1}}, 1.1, 1}, {{{1, 1}}, 5, 1}};
  const auto e = *least_squares(2, rows);
  EXPECT_FALSE(e.observations[2].gross_error);
  EXPECT_TRUE(e.observations[0].gross_error);
  EXPECT_FALSE(least_squares(1, std::vector<Equation>{rows[0]})->sigma0());
}

}  // namespace
}  // namespace squaredig::adjust
