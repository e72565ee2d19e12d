// Strings in every unpleasant position: on a coarse grid, where they overlap and touch; at random;
// laid along one line but for the last bits.
#include <gtest/gtest.h>

#include <cmath>

#include "unit/geometry/grounds.h"

namespace squaredig::geometry {
namespace {
using namespace testing;

enum class Lie { OnAGrid, AtRandom, AlongOneLine, OnTenths };

TriangulationInput tangled(Lie lie, unsigned seed) {
  std::mt19937 random(seed);
  const auto up_to = [&](unsigned n) { return static_cast<double>(random() % n); };
  TriangulationInput input;
  const unsigned count = 20 + static_cast<unsigned>(random() % 60);
  for (unsigned i = 0; i < count; ++i) {
    Point3 p{0, 0, up_to(10)};
    const double along = up_to(100) / 10;
    switch (lie) {
      case Lie::OnAGrid:
        p.x = up_to(8), p.y = up_to(8);
        break;
      case Lie::AtRandom:
        p.x = up_to(1000) / 7, p.y = up_to(1000) / 7;
        break;
      case Lie::AlongOneLine:
        p.x = along * 0.7, p.y = along * 0.3 + up_to(3) * 1e-9;
        break;
      case Lie::OnTenths:
        p.x = up_to(50) * 0.1, p.y = up_to(50) * 0.1;
        break;
    }
    input.points.push_back(p);
  }
  for (Index string = 0; string < 12; ++string) {
    Constraint c{{}, string, StringKind::Breakline};
    for (int v = 0; v < 4; ++v) c.vertices.push_back(static_cast<Index>(random() % count));
    input.constraints.push_back(c);
  }
  return input;
}

std::vector<Point2> places(const Surface& s) {
  std::vector<Point2> out;
  for (const Point3& v : s.vertices) out.push_back(v.plan());
  return out;
}

class TangledStrings : public ::testing::TestWithParam<Lie> {};

TEST_P(TangledStrings, MakeASoundSurfaceWhateverTheirOrder) {
  for (unsigned seed = 1; seed <= 25; ++seed) {
    TriangulationInput input = tangled(GetParam(), seed);
    const Surface one = triangulate(input).surface;
    EXPECT_EQ(verify(one), std::vector<std::string>{}) << "seed " << seed;
    const std::vector<Index> now = shuffle(input.points, seed);
    for (Constraint& c : input.constraints)
      for (Index& v : c.vertices) v = now[static_cast<std::size_t>(v)];
    std::reverse(input.constraints.begin(), input.constraints.end());
    const Surface two = triangulate(input).surface;
    EXPECT_EQ(one.triangles, two.triangles) << "seed " << seed;
    EXPECT_EQ(places(one), places(two)) << "seed " << seed;
  }
}

INSTANTIATE_TEST_SUITE_P(Lies, TangledStrings,
                         ::testing::Values(Lie::OnAGrid, Lie::AtRandom, Lie::AlongOneLine,
                                           Lie::OnTenths));

TEST(CrossingStrings, OneLineSurveyedTwiceIsOneLine) {
  // both along y = x / 3, their vertices at other stations: collinear but for the last bit
  TriangulationInput input = points_alone({{0, 3, 0}, {3, -2, 0}});
  for (const int step : {1, 7}) {
    Constraint c{{}, step, StringKind::Breakline};
    for (int i = 0; i <= 21; i += step) {
      c.vertices.push_back(static_cast<Index>(input.points.size()));
      input.points.push_back({0.3 * i, 0.1 * i, 0});
    }
    input.constraints.push_back(c);
  }
  const Triangulated t = triangulate(input);
  EXPECT_TRUE(t.crossings.empty());
  EXPECT_EQ(t.surface.vertices.size(), 24U);
  for (int i = 0; i < 21; ++i)
    EXPECT_TRUE(has_edge(t.surface, {0.3 * i, 0.1 * i}, {0.3 * (i + 1), 0.1 * (i + 1)})) << i;
}

}  // namespace
}  // namespace squaredig::geometry
