#include "geometry/surface.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

Surface linked(std::vector<Point3> vertices, std::vector<std::array<Index, 3>> triangles) {
  Surface s{std::move(vertices), std::move(triangles), {}};
  link_neighbours(s);
  return s;
}

Surface square() {
  return linked({{0, 0, 1}, {3, 0, 1}, {3, 4, 1}, {0, 4, 1}}, {{0, 1, 2}, {0, 2, 3}});
}

TEST(Surface, AreasOfAnInclinedSquare) {
  // derived: a plane that rises 4 in 3 along x stretches areas by 5/3
  Surface s = square();
  for (Point3& v : s.vertices) v.z = v.x * 4 / 3;
  EXPECT_DOUBLE_EQ(plan_area(s), 12);
  EXPECT_DOUBLE_EQ(surface_area(s), 20);
}

TEST(Surface, PlaneGoesThroughItsCorners) {
  const Surface s = triangulate(points_alone(random_points(300, 30, 5))).surface;
  for (std::size_t t = 0; t < s.triangles.size(); ++t) {
    const Plane plane = s.plane(static_cast<Index>(t));
    for (const Point3& c : s.corners(static_cast<Index>(t)))
      EXPECT_NEAR(plane.at(c.plan()), c.z, 1e-9);
  }
}

TEST(Surface, AreasAreTheSameFarFromTheOrigin) {
  Surface s = triangulate(points_alone(random_points(1000, 40, 6))).surface;
  const double plan = plan_area(s), real = surface_area(s);
  for (Point3& v : s.vertices) v = {v.x + 4096, v.y + 8192, v.z + 64};
  EXPECT_NEAR(plan_area(s), plan, 1e-8);
  EXPECT_NEAR(surface_area(s), real, 1e-8);
}

TEST(Surface, LinkingFindsWhatTheTriangulationKnows) {
  Surface s = triangulate(points_alone(random_points(500, 30, 7))).surface;
  const auto neighbours = s.neighbours;
  EXPECT_TRUE(link_neighbours(s));
  EXPECT_EQ(s.neighbours, neighbours);
}

TEST(Surface, AnEdgeOfThreeTrianglesIsTold) {
  Surface s{{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0.2, 2, 0}, {0, -1, 0}},
            {{0, 1, 2}, {0, 1, 3}, {0, 4, 1}},
            {}};
  EXPECT_FALSE(link_neighbours(s));
  EXPECT_EQ(s.neighbours[0][0], kNone);
}

TEST(Surface, TwoTrianglesOnOneSideOfAnEdgeAreNoNeighbours) {
  Surface s{{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0.2, 2, 0}}, {{0, 1, 2}, {0, 1, 3}}, {}};
  EXPECT_TRUE(link_neighbours(s));
  EXPECT_EQ(s.neighbours[0][0], kNone);
  EXPECT_FALSE(verify(s).empty());
}

TEST(Surface, PatchesThatTouchInPartAreNoOverlap) {
  // the right patch has a vertex in the middle of the left one's side
  const Surface s = linked({{0, 0, 0}, {2, 0, 0}, {2, 2, 0}, {2, 1, 0}, {4, 1, 0}, {4, 2, 0}},
                           {{0, 1, 2}, {3, 4, 5}, {3, 5, 2}});
  EXPECT_EQ(verify(s), std::vector<std::string>{});
}

TEST(Surface, EmptySurface) {
  EXPECT_EQ(verify(Surface{}), std::vector<std::string>{});
  EXPECT_EQ(plan_area(Surface{}), 0);
}

}  // namespace
}  // namespace squaredig::geometry
