#include "geometry/far_parts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "geometry/polygon.h"

namespace squaredig::geometry {
namespace {

constexpr unsigned kSeed = 20260324;

std::vector<Point2> thrown(std::mt19937& random, int n) {
  std::uniform_real_distribution<double> x(0, 10), y(0, 6);
  std::vector<Point2> points;
  for (int i = 0; i < n; ++i) points.push_back({x(random), y(random)});
  return points;
}

double area_of(const std::vector<FarPart>& parts) {
  double area = 0;
  for (const FarPart& part : parts) area += part.area;
  return area;
}

double nearest(const std::vector<Point2>& points, Point2 p) {
  double least = HUGE_VAL;
  for (const Point2 q : points) least = std::min(least, std::hypot(p.x - q.x, p.y - q.y));
  return least;
}

const Polygon kFloor{{0, 0}, {10, 0}, {10, 6}, {0, 6}};
const std::vector<Polygon> kWhole(1, kFloor);

// Against a count of places on a grid of a hundredth of a metre, and its connected parts.
TEST(FarParts, FillWhatTheCirclesLeave_far_1) {
  std::mt19937 random(kSeed);
  for (int n : {1, 2, 5, 12, 30}) {
    const auto points = thrown(random, n);
    const double distance = 1.4;
    constexpr int kColumns = 1000, kRows = 600;
    std::vector<int> number(std::size_t{kColumns} * kRows, 0);
    const auto place = [](int row, int column) {
      return static_cast<std::size_t>(row) * kColumns + static_cast<std::size_t>(column);
    };
    int far = 0;
    for (int r = 0; r < kRows; ++r)
      for (int c = 0; c < kColumns; ++c)
        if (nearest(points, {(c + 0.5) / 100, (r + 0.5) / 100}) > distance)
          number[place(r, c)] = -1, ++far;
    int regions = 0;  // of more than a few places
    for (int start = 0; start < kColumns * kRows; ++start) {
      if (number[static_cast<std::size_t>(start)] != -1) continue;
      std::vector<int> open{start};
      number[static_cast<std::size_t>(start)] = 1;
      int size = 0;
      while (!open.empty()) {
        const int at = open.back();
        open.pop_back();
        ++size;
        const int c = at % kColumns, r = at / kColumns;
        for (const auto& [i, k] : {std::pair(c + 1, r), {c - 1, r}, {c, r + 1}, {c, r - 1}}) {
          if (i < 0 || k < 0 || i >= kColumns || k >= kRows) continue;
          int& other = number[place(k, i)];
          if (other != -1) continue;
          other = 1;
          open.push_back(k * kColumns + i);
        }
      }
      regions += size > 20;
    }
    const auto parts = far_parts(kWhole, points, distance);
    EXPECT_NEAR(area_of(parts), far / 1e4, 0.02) << "seed " << kSeed << ", " << n << " points";
    const auto large =
        std::count_if(parts.begin(), parts.end(), [](const FarPart& p) { return p.area > 0.004; });
    EXPECT_NEAR(static_cast<double>(large), regions, n < 12 ? 0 : 1) << n << " points";
  }
}

TEST(FarParts, TheFarthestPlaceIsTheLargestEmptyCircle_far_2) {
  std::mt19937 random(kSeed);
  for (int i = 0; i < 100; ++i) {
    const auto points = thrown(random, 1 + i);
    const Circle circle = largest_empty_circle(kFloor, points);
    const auto parts = far_parts(kWhole, points, 0.7 * circle.radius);
    double farthest = 0;
    for (const FarPart& part : parts) {
      EXPECT_NEAR(nearest(points, part.farthest), part.distance, 1e-9);
      farthest = std::max(farthest, part.distance);
    }
    EXPECT_NEAR(farthest, circle.radius, 1e-8) << "seed " << kSeed << ", case " << i;
    EXPECT_TRUE(far_parts(kWhole, points, circle.radius + 1e-6).empty());
  }
}

TEST(FarParts, AnotherTilingChangesNothing_far_3) {
  std::mt19937 random(kSeed);
  const std::vector<Polygon> tiles{{{0, 0}, {10, 0}, {4, 3}},
                                   {{10, 0}, {10, 6}, {4, 3}},
                                   {{10, 6}, {0, 6}, {4, 3}},
                                   {{0, 6}, {0, 0}, {4, 3}}};
  for (int i = 0; i < 60; ++i) {
    const auto points = thrown(random, 1 + i / 2);
    const auto whole = far_parts(kWhole, points, 1.2);
    const auto tiled = far_parts(tiles, points, 1.2);
    ASSERT_EQ(whole.size(), tiled.size()) << "seed " << kSeed << ", case " << i;
    for (std::size_t k = 0; k < whole.size(); ++k) {
      EXPECT_NEAR(whole[k].area, tiled[k].area, 1e-9);
      EXPECT_NEAR(whole[k].distance, tiled[k].distance, 1e-9);
    }
  }
}

TEST(FarParts, OnePointInTheMiddleLeavesWhatItsCircleDoes) {
  const std::vector<Point2> middle{{5, 3}};
  const auto round = far_parts(kWhole, middle, 2);
  ASSERT_EQ(round.size(), 1u);
  EXPECT_NEAR(round[0].area, 60 - 4 * std::numbers::pi, 1e-12);
  EXPECT_NEAR(round[0].distance, std::hypot(5, 3), 1e-12);
  // a circle that reaches over both long sides leaves a part at each end
  const auto ends = far_parts(kWhole, middle, 4);
  ASSERT_EQ(ends.size(), 2u);
  const double half = std::sqrt(16.0 - 9);
  const double circle = 6 * half + 32 * std::asin(3.0 / 4);  // the part of it between the sides
  EXPECT_NEAR(ends[0].area + ends[1].area, 60 - circle, 1e-12);
  EXPECT_NEAR(ends[0].area, ends[1].area, 1e-12);
}

TEST(FarParts, PointsOnALineAndDoubledPoints) {
  const std::vector<Point2> row{{0, 0}, {5, 0}, {5, 0}, {10, 0}};
  const auto parts = far_parts(kWhole, row, 3);
  ASSERT_EQ(parts.size(), 1u);
  // half a circle and two quarters, with what two neighbours share of the gap of 5 m taken once
  const double lens = 9 * std::acos(2.5 / 3) - 2.5 * std::sqrt(9 - 6.25);
  EXPECT_NEAR(parts[0].area, 60 - (9 * std::numbers::pi - 2 * lens), 1e-12);
  const std::vector<Point2> same{{5, 3}, {5, 3}, {5, 3}};
  EXPECT_NEAR(far_parts(kWhole, same, 2)[0].area, 60 - 4 * std::numbers::pi, 1e-12);
}

// On a grid four points lie on one circle everywhere.
TEST(FarParts, AGridLeavesOneCushionInEachSquare) {
  std::vector<Point2> grid;
  for (int i = 0; i <= 5; ++i)
    for (int k = 0; k <= 3; ++k) grid.push_back({2.0 * i, 2.0 * k});
  const double r = 1.05;
  const auto parts = far_parts(kWhole, grid, r);
  ASSERT_EQ(parts.size(), 15u);
  const double lens = 2 * (r * r * std::acos(1 / r) - std::sqrt(r * r - 1));
  for (const FarPart& part : parts) {
    EXPECT_NEAR(part.area, 4 - std::numbers::pi * r * r + 2 * lens, 1e-12);
    EXPECT_NEAR(part.distance, std::sqrt(2), 1e-12);
  }
}

}  // namespace
}  // namespace squaredig::geometry
