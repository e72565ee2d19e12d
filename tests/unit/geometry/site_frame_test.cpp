#include "geometry/site_frame.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace squaredig::geometry {
namespace {

TEST(SiteFrame, StandsAtWholeMetres) {
  const SiteFrame frame = SiteFrame::around(grid_position(715830.4999, 734697.6, -1.5));
  EXPECT_EQ(frame.origin(), grid_position(715830, 734698, -2));
  EXPECT_EQ(SiteFrame().origin(), grid_position(0, 0, 0));
}

TEST(SiteFrame, EastIsXNorthIsYUpIsZ) {
  const SiteFrame frame = SiteFrame::around(grid_position(1000, 2000, 30));
  EXPECT_EQ(frame.to_site(grid_position(1001, 2010, 130)), (Point3{1, 10, 100}));
  EXPECT_EQ(frame.to_site(grid_point(999, 1998)), (Point2{-1, -2}));
  EXPECT_EQ(frame.to_grid(Point3{1, 10, 100}), grid_position(1001, 2010, 130));
  EXPECT_EQ(frame.to_site(Elevation::metres(29)), -1);
  EXPECT_EQ(frame.to_grid_height(-1), Elevation::metres(29));
}

}  // namespace
}  // namespace squaredig::geometry
