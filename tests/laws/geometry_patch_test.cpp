// The laws of patches.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "geometry/patch.h"

namespace squaredig::geometry {
namespace {

// Squares of a metre, two triangles each, heights by position; corner squares from (0, 0).
Surface squares(int columns, int rows, int first_column = 0) {
  Surface s;
  for (int c = 0; c <= columns; ++c)
    for (int r = 0; r <= rows; ++r) {
      const double x = c + first_column, y = r;
      s.vertices.push_back({x, y, std::sin(x) + std::cos(2 * y)});
    }
  const auto v = [&](int c, int r) { return static_cast<Index>(c * (rows + 1) + r); };
  for (int c = 0; c < columns; ++c)
    for (int r = 0; r < rows; ++r) {
      s.triangles.push_back({v(c, r), v(c + 1, r), v(c + 1, r + 1)});
      s.triangles.push_back({v(c, r), v(c + 1, r + 1), v(c, r + 1)});
    }
  link_neighbours(s);
  return s;
}

const std::vector<Point2> kSeed{{12.3, 6.4}};
const Box2 kBox{{10.5, 4.5}, {14.5, 8.5}};

TEST(Patch, KeepsOrderAndNumbers_patch_1) {
  const Surface whole = squares(30, 20);
  const Patch patch = patch_of(whole, kSeed, kBox);
  EXPECT_EQ(patch.triangles.size(), 5U * 5U * 2U);
  EXPECT_TRUE(verify(patch.surface).empty());
  EXPECT_TRUE(std::is_sorted(patch.triangles.begin(), patch.triangles.end()));
  EXPECT_TRUE(std::is_sorted(patch.vertices.begin(), patch.vertices.end()));
  for (std::size_t t = 0; t < patch.triangles.size(); ++t)
    for (std::size_t i = 0; i < 3; ++i) {
      const auto mine = static_cast<std::size_t>(patch.surface.triangles[t][i]);
      EXPECT_EQ(patch.vertices[mine],
                whole.triangles[static_cast<std::size_t>(patch.triangles[t])][i]);
    }
}

TEST(Patch, TheSameOfALargerSurface_patch_2) {
  const Patch small = patch_of(squares(12, 20, 6), kSeed, kBox);
  const Patch large = patch_of(squares(60, 20), kSeed, kBox);
  EXPECT_EQ(small.surface.vertices, large.surface.vertices);
  EXPECT_EQ(small.surface.triangles, large.surface.triangles);
  EXPECT_EQ(small.surface.neighbours, large.surface.neighbours);
}

// Across a gap nothing hangs together; from both sides of it all of it is found. The walk to the
// far side is stopped by the rim.
TEST(Patch, SpreadsFromEverySeedAndRoundHoles) {
  Surface s = squares(30, 20);
  std::erase_if(s.triangles,
                [&](const auto& t) { return s.vertices[static_cast<std::size_t>(t[0])].x == 12; });
  link_neighbours(s);
  const std::vector<Point2> west{{11.3, 6.4}}, east{{13.3, 6.4}}, both{{11.3, 6.4}, {13.3, 6.4}};
  const auto count = [&](const std::vector<Point2>& seeds) {
    return patch_of(s, seeds, kBox).triangles.size();
  };
  EXPECT_EQ(count(west), 20U);
  EXPECT_EQ(count(east), 20U);
  EXPECT_EQ(count(both), 40U);
  EXPECT_EQ(count({{12.5, 6.4}}), 0U);
  EXPECT_EQ(count({}), 0U);
  EXPECT_TRUE(patch_of({}, west, kBox).surface.triangles.empty());
}

}  // namespace
}  // namespace squaredig::geometry
