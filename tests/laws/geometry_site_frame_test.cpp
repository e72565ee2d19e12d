#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "geometry/site_frame.h"

namespace squaredig::geometry {
namespace {

// Random positions to the millimetre, up to `reach` metres from a far origin.
template <class Use>
void near_far_origins(double reach, Use use) {
  std::mt19937_64 random(81);
  for (const double east : {715830.0, 1525747.9, 21531220.4, 99990000.0}) {
    const SiteFrame frame = SiteFrame::around(grid_position(east, east / 3, 60.4));
    for (int i = 0; i < 2000; ++i) {
      const auto offset = [&] {
        return static_cast<double>(random() % static_cast<unsigned>(2000 * reach)) / 1000 - reach;
      };
      const auto millimetres = [](double v) { return std::round(v * 1000) / 1000; };
      use(frame, grid_position(millimetres(east + offset()), millimetres(east / 3 + offset()),
                               millimetres(60 + offset() / 100)));
    }
  }
}

TEST(SiteFrame, ShiftsByWholeMetresSoThatMillimetresStay_frame_1) {
  near_far_origins(5000, [](const SiteFrame& frame, GridPosition p) {
    const GridPosition o = frame.origin();
    EXPECT_EQ(o.at.easting.in_metres(), std::trunc(o.at.easting.in_metres()));
    EXPECT_EQ(o.height.in_metres(), std::trunc(o.height.in_metres()));
    const Point3 site = frame.to_site(p);
    const auto thousandths = [](double v) { return std::llround(v * 1000); };
    EXPECT_EQ(thousandths(site.x) + 1000 * std::llround(o.at.easting.in_metres()),
              thousandths(p.at.easting.in_metres()));
    EXPECT_EQ(thousandths(site.y) + 1000 * std::llround(o.at.northing.in_metres()),
              thousandths(p.at.northing.in_metres()));
    EXPECT_EQ(thousandths(site.z) + 1000 * std::llround(o.height.in_metres()),
              thousandths(p.height.in_metres()));
  });
}

TEST(SiteFrame, ThereAndBackIsTheSame_frame_2) {
  near_far_origins(5000, [](const SiteFrame& frame, GridPosition p) {
    const GridPosition back = frame.to_grid(frame.to_site(p));
    EXPECT_EQ(back.at, p.at);
    EXPECT_NEAR(back.height.in_metres(), p.height.in_metres(), 1e-13);
  });
}

}  // namespace
}  // namespace squaredig::geometry
