// The verifier told every planted defect, and none where there is none.
#include <gtest/gtest.h>

#include <limits>

#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

Surface sound() { return triangulate(points_alone(random_points(200, 30, 51))).surface; }

TEST(Surface, TurnedAndFlatTrianglesAreTold_surface_1) {
  Surface s = sound();
  ASSERT_TRUE(verify(s).empty());
  std::swap(s.triangles[7][0], s.triangles[7][1]);
  std::vector<SurfaceFault> faults = find_faults(s);
  ASSERT_FALSE(faults.empty());
  EXPECT_EQ(faults[0].kind, SurfaceFault::Kind::Clockwise);
  EXPECT_EQ(faults[0].triangle, 7);
  EXPECT_EQ(verify(s)[0], "triangle 7 runs clockwise");
  s = sound();
  const auto corner = s.corners(9);
  s.vertices[static_cast<std::size_t>(s.triangles[9][2])] = {(corner[0].x + corner[1].x) / 2,
                                                             (corner[0].y + corner[1].y) / 2, 0};
  bool told = false;
  for (const SurfaceFault& f : find_faults(s)) told |= f.triangle == 9;
  EXPECT_TRUE(told);
  s = Surface{{{0, 0, 0}, {1, 1, 0}, {2, 2, 0}}, {{0, 1, 2}}, {{kNone, kNone, kNone}}};
  EXPECT_EQ(verify(s), std::vector<std::string>{"triangle 0 has no area in plan"});
}

TEST(Surface, NeighboursThatDisagreeAreTold_surface_2) {
  for (std::size_t side = 0; side < 3; ++side) {
    Surface s = sound();
    s.neighbours[11][side] = s.neighbours[11][side] == kNone ? 3 : kNone;
    const auto faults = find_faults(s);
    ASSERT_EQ(faults.size(), 1U);
    EXPECT_EQ(faults[0].kind, SurfaceFault::Kind::Neighbours);
    EXPECT_EQ(faults[0].triangle, 11);
    EXPECT_EQ(verify(s)[0], "triangle 11 does not name the neighbours it has");
  }
  Surface s = sound();
  s.neighbours.pop_back();
  EXPECT_EQ(verify(s)[0], "not every triangle has its neighbours");
}

bool overlap_told(const Surface& s) {
  for (const SurfaceFault& f : find_faults(s))
    if (f.kind == SurfaceFault::Kind::Overlap) return true;
  return false;
}

// Every pair tried by its common area: the slow answer.
bool overlaps_slowly(const Surface& s) {
  for (std::size_t t = 0; t < s.triangles.size(); ++t)
    for (std::size_t u = 0; u < t; ++u) {
      bool apart = false;
      for (int pass = 0; pass < 2; ++pass) {
        const auto a = s.corners(static_cast<Index>(pass ? u : t));
        const auto b = s.corners(static_cast<Index>(pass ? t : u));
        for (std::size_t i = 0; i < 3; ++i) {
          bool beyond = true;
          for (const Point3& c : b)
            beyond &= orient(a[i].plan(), a[(i + 1) % 3].plan(), c.plan()) <= 1e-9;
          apart |= beyond;
        }
      }
      if (!apart) return true;
    }
  return false;
}

TEST(Surface, OverlapsAreToldWhereverTheyAre_surface_3) {
  const Surface whole = sound();
  std::mt19937 random(52);
  int overlapping = 0;
  for (int trial = 0; trial < 60; ++trial) {
    Surface s = whole;
    // some triangles taken out, and now and then a loose one put somewhere
    for (int i = 0; i < 20; ++i)
      s.triangles.erase(s.triangles.begin() +
                        static_cast<std::ptrdiff_t>(random() % s.triangles.size()));
    if (trial % 2 == 1) {
      const auto first = static_cast<Index>(s.vertices.size());
      const double x = random_millimetres(random, 30), y = random_millimetres(random, 30);
      for (const Point3 p : {Point3{x, y, 0}, {x + 0.9, y, 0}, {x, y + 0.7, 0}})
        s.vertices.push_back(p);
      s.triangles.push_back({first, first + 1, first + 2});
    }
    link_neighbours(s);
    EXPECT_EQ(overlap_told(s), overlaps_slowly(s)) << "seed 52, trial " << trial;
    overlapping += overlap_told(s);
  }
  EXPECT_GT(overlapping, 20);
  Surface twice = whole;  // laid down twice
  twice.triangles.insert(twice.triangles.end(), whole.triangles.begin(), whole.triangles.end());
  link_neighbours(twice);
  EXPECT_TRUE(overlap_told(twice));
  // a fan that goes round its centre more than once: neighbours agree, and yet it overlaps
  Surface fan;
  fan.vertices.push_back({0, 0, 0});
  for (int i = 0; i < 10; ++i)
    fan.vertices.push_back({std::cos(0.8 * i), std::sin(0.8 * i), static_cast<double>(i)});
  for (Index i = 1; i < 10; ++i) fan.triangles.push_back({0, i, i + 1});
  link_neighbours(fan);
  EXPECT_TRUE(overlap_told(fan));
}

TEST(Surface, NumbersOutOfRangeAndNotFiniteAreTold_surface_4) {
  Surface s = sound();
  s.triangles[3][1] = static_cast<Index>(s.vertices.size());
  EXPECT_EQ(verify(s), std::vector<std::string>{"triangle 3 names a vertex that does not exist"});
  s = sound();
  s.triangles[3][1] = -1;
  EXPECT_EQ(verify(s).size(), 1U);
  s = sound();
  s.vertices[4].z = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(verify(s), std::vector<std::string>{"vertex 4 has a coordinate that is not finite"});
  s = sound();
  s.vertices[4].x = std::numeric_limits<double>::infinity();
  EXPECT_EQ(verify(s).size(), 1U);
  s = sound();
  s.neighbours[0][0] = 100000;
  EXPECT_EQ(verify(s).size(), 1U);
}

}  // namespace
}  // namespace squaredig::geometry
