#include <gtest/gtest.h>

#include "geometry/locate.h"
#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

TEST(Locate, EdgesAndVerticesBelongToATriangle_locate_1) {
  for (const auto& points : {random_points(300, 20, 71), exact_grid(15, 15, 0.7)}) {
    const Surface s = triangulate(points_alone(points)).surface;
    const Locator locator(s);
    for (std::size_t t = 0; t < s.triangles.size(); ++t) {
      const auto c = s.corners(static_cast<Index>(t));
      for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_TRUE(locator.triangle_at(c[i].plan()));
        const Point2 a = c[i].plan(), u = c[(i + 1) % 3].plan() - a;
        for (const double k : {0.1, 1.0 / 3, 0.5, 0.77}) {
          const auto found = locator.triangle_at(a + k * u);
          ASSERT_TRUE(found) << "seed 71, triangle " << t << ", side " << i;
          const bool own = *found == static_cast<Index>(t) || *found == s.neighbours[t][i];
          EXPECT_TRUE(own) << "triangle " << t << " found as " << *found;
        }
      }
    }
  }
}

TEST(Locate, TheHeightAtAVertexIsTheVertexs_locate_2) {
  const Surface s = triangulate(points_alone(random_points(500, 20, 72))).surface;
  const Locator locator(s);
  for (const Point3& v : s.vertices) EXPECT_EQ(locator.height_at(v.plan()), v.z);
}

}  // namespace
}  // namespace squaredig::geometry
