#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "base/work_grid_internal.h"

namespace squaredig::base {
namespace {

using geometry::Point2;

constexpr unsigned kSeed = 20260323;

struct Case {
  Floor floor;
  TankAxes axes;
  std::vector<Piece> pieces;
};

// A floor turned by some angle, and small triangles here and there on it.
Case random_case(std::mt19937& random) {
  std::uniform_real_distribution<double> unit(0, 1);
  Case c;
  const double turn = 6.28 * unit(random), length = 3 + 9 * unit(random),
               wide = 2 + 5 * unit(random);
  c.axes = {{1, 2}, {std::cos(turn), std::sin(turn)}, {std::sin(turn), -std::cos(turn)}};
  const auto at = [&](double u, double v) { return c.axes.at(u, v); };
  c.floor.toe = {at(-.2, -.2), at(-.2, wide), at(length, wide), at(length, -.2)};
  const int n = 1 + static_cast<int>(4 * unit(random));
  for (int i = 0; i < n; ++i) {
    const double u = (length - 0.5) * unit(random), v = (wide - 0.5) * unit(random);
    const double size = 0.05 + 0.4 * unit(random);
    c.pieces.push_back({{at(u, v), at(u, v + size), at(u + size, v)}, {1, 1, 1}});
  }
  return c;
}

bool in(const std::vector<geometry::Polygon>& parts, Point2 p, double snap) {
  for (const geometry::Polygon& part : parts)
    if (geometry::side_of(part, p, snap) >= 0) return true;
  return false;
}

TEST(WorkGrid, EveryPlaceMarkedIsWorked_work_1) {
  std::mt19937 random(kSeed);
  for (int i = 0; i < 60; ++i) {
    const Case c = random_case(random);
    WorkGrid grid(c.floor, c.axes, 0.4 + 0.02 * i);
    for (const Piece& piece : c.pieces) grid.mark(piece);
    const int count = grid.work();
    for (const Piece& piece : c.pieces) {
      const auto patch = grid.reached(piece);
      ASSERT_TRUE(patch);
      ASSERT_LT(*patch, count);
      const auto parts = grid.parts(*patch);
      for (int k = 0; k < 50; ++k) {
        std::uniform_real_distribution<double> unit(0, 1);
        double s = unit(random), t = unit(random);
        if (s + t > 1) s = 1 - s, t = 1 - t;
        const Point2 p = piece.corners[0] + (s * (piece.corners[1] - piece.corners[0]) +
                                             t * (piece.corners[2] - piece.corners[0]));
        EXPECT_TRUE(in(parts, p, 1e-9)) << "seed " << kSeed << ", case " << i;
      }
    }
  }
}

// Each worked step lies in a square of nine steps that is worked whole; the steps are read off the
// outline's own corners.
TEST(WorkGrid, WhatIsWorkedIsAUnionOfSquares_work_2) {
  std::mt19937 random(kSeed);
  for (int i = 0; i < 60; ++i) {
    const Case c = random_case(random);
    const double width = 0.4 + 0.02 * i;
    WorkGrid grid(c.floor, c.axes, width);
    for (const Piece& piece : c.pieces) grid.mark(piece);
    const int count = grid.work();
    for (int patch = 0; patch < count; ++patch) {
      double area = 0;
      const auto parts = grid.parts(patch);
      for (const geometry::Polygon& part : parts) {
        area += geometry::signed_area(part);
        for (const Point2 p : part) EXPECT_GE(geometry::side_of(c.floor.toe, p, 1e-9), 0);
      }
      double outlined = 0;
      for (const geometry::Polygon& ring : grid.outline(patch))
        outlined += geometry::signed_area(ring);
      EXPECT_NEAR(outlined, area, 1e-6);
      EXPECT_GE(area, width * width - 1e-9) << "seed " << kSeed << ", case " << i;
      // every run of steps is as long as a square is wide, and so is every column
      for (const geometry::Polygon& part : parts) {
        double low = HUGE_VAL, high = -HUGE_VAL;
        for (const Point2 p : part)
          low = std::min(low, c.axes.along_of(p)), high = std::max(high, c.axes.along_of(p));
        EXPECT_GE(high - low, width - 1e-9);
      }
    }
  }
}

TEST(WorkGrid, APlaceInTheMiddleIsTakenByTheSquareRoundIt) {
  Floor floor;
  floor.toe = {{0, 0}, {9, 0}, {9, 9}, {0, 9}};
  const TankAxes axes{{0, 9}, {1, 0}, {0, -1}};
  WorkGrid grid(floor, axes, 0.9);  // steps of 0.1 m
  grid.mark({{{4.55, 4.55}}, {0}});
  ASSERT_EQ(grid.work(), 1);
  const auto outline = grid.outline(0);
  ASSERT_EQ(outline.size(), 1u);
  for (const Point2 p : outline[0]) {
    EXPECT_NEAR(std::abs(p.x - 4.55), 0.45, 1e-9);
    EXPECT_NEAR(std::abs(p.y - 4.55), 0.45, 1e-9);
  }
}

TEST(WorkGrid, AFloorNarrowerThanTheMachineIsWorkedAcross) {
  Floor floor;
  floor.toe = {{0, 0}, {9, 0}, {9, 0.5}, {0, 0.5}};
  WorkGrid grid(floor, {{0, 0.5}, {1, 0}, {0, -1}}, 0.9);
  grid.mark({{{0.03, 0.2}}, {0}});
  ASSERT_EQ(grid.work(), 1);
  double area = 0;
  for (const geometry::Polygon& part : grid.parts(0)) area += geometry::signed_area(part);
  EXPECT_NEAR(area, 0.9 * 0.5, 1e-9);
}

}  // namespace
}  // namespace squaredig::base
