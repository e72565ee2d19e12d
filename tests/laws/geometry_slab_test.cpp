// The laws of slabs between planes.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "geometry/slab.h"

namespace squaredig::geometry {
namespace {

const Polygon kBox{{-3, -2}, {4, -2}, {4, 5}, {-3, 5}};

std::vector<Plane> planes(unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> height(-1, 1), slope(-0.4, 0.4);
  std::vector<Plane> made;
  for (int i = 0; i < 5; ++i)
    made.push_back({{0.5, 1}, height(random), slope(random), slope(random)});
  return made;
}

TEST(Slab, RisingLevelsAddUp_slab_1) {
  for (unsigned seed = 1; seed <= 50; ++seed) {
    const auto p = planes(seed);
    const std::vector<Plane> lowers{p[0], p[1]}, uppers{p[2], p[3]};
    Plane level = p[4];
    const auto above = [&](double h) {
      Plane raised = level;
      raised.height += h;
      return raised;
    };
    double sum = 0;
    for (const double h : {-9.0, -0.6, 0.1, 0.7}) {
      auto low = lowers, high = uppers;
      low.push_back(above(h));
      high.push_back(above(h == -9.0 ? -0.6 : h == -0.6 ? 0.1 : h == 0.1 ? 0.7 : 9.0));
      sum += slab_between(kBox, low, high).volume;
    }
    EXPECT_NEAR(sum, slab_between(kBox, lowers, uppers).volume, 1e-12) << seed;
  }
}

TEST(Slab, OrderOfPlanesChangesNothing_slab_2) {
  for (unsigned seed = 1; seed <= 50; ++seed) {
    const auto p = planes(seed);
    const auto a = slab_between(kBox, std::vector{p[0], p[1], p[0]}, std::vector{p[2], p[3]});
    const auto b = slab_between(kBox, std::vector{p[1], p[0]}, std::vector{p[3], p[2], p[3]});
    EXPECT_NEAR(a.volume, b.volume, 1e-12) << seed;
    EXPECT_NEAR(a.area, b.area, 1e-9) << seed;
  }
}

TEST(Slab, SplittingThePolygonChangesNoSum_slab_3) {
  const Polygon ring{{-1, -1}, {2, 0}, {1, 3}, {-2, 1}};
  for (unsigned seed = 1; seed <= 50; ++seed) {
    const auto p = planes(seed);
    const std::vector<Plane> lowers{p[0], p[1]}, uppers{p[2], p[3]};
    const auto split = split_at(kBox, ring);
    double sum = slab_between(split.inside, lowers, uppers).volume;
    double area = area_of(split.inside);
    for (const auto& part : split.outside) {
      sum += slab_between(part, lowers, uppers).volume;
      area += area_of(part);
    }
    EXPECT_NEAR(area, 49, 1e-12);
    EXPECT_NEAR(sum, slab_between(kBox, lowers, uppers).volume, 1e-12) << seed;
  }
}

TEST(Slab, PolygonsApartStayWhole) {
  const auto split = split_at(kBox, Polygon{{10, -9}, {11, -9}, {11, 9}, {10, 9}});
  EXPECT_TRUE(split.inside.empty());
  ASSERT_EQ(split.outside.size(), 1U);
  EXPECT_EQ(split.outside[0], kBox);
}

}  // namespace
}  // namespace squaredig::geometry
