// Ways from other coordinate systems to the job's: exact, or refused.
#include "app/crs_ways.h"

#include <gtest/gtest.h>

#include "refusal_text.h"

namespace squaredig::app {
namespace {

using squaredig::testing::refusal_text;

job::Job on_grid(std::optional<int> crs, GridPoint corner = grid_point(715830.25, 734697.6)) {
  job::Job job;
  job.grid.emplace();
  job.grid->crs = crs;
  job.tank.emplace();
  job.tank->settings.corner_a = corner;
  return job;
}

// IRENET95 / UTM zone 29N has the datum of EPSG:2157. The numbers are those of cs2cs (PROJ 9.1.1):
// echo "715830.25 734697.6" | cs2cs -f %.6f EPSG:2157 EPSG:2158
TEST(CrsWays, AMapProjectionOfTheSameDatumIsExact_crs_ways_1) {
  const auto ways = crs_ways(on_grid(2157));
  const auto way = ways(2158, {"g.las"});
  const auto back = crs_ways(on_grid(2158))(2157, {"g.las"});
  const GridPoint there = back.move(715830.25, 734697.6);
  EXPECT_NEAR(there.easting.in_metres(), 682356.647050, 1e-6);
  EXPECT_NEAR(there.northing.in_metres(), 5914683.065818, 1e-6);
  const GridPoint here = way.move(there.easting.in_metres(), there.northing.in_metres());
  EXPECT_NEAR(here.easting.in_metres(), 715830.25, 1e-6);
  EXPECT_NEAR(here.northing.in_metres(), 734697.6, 1e-6);
  EXPECT_TRUE(way.words.starts_with("coordinates in EPSG:2158 are taken over to EPSG:2157 by "))
      << way.words;
  EXPECT_NE(way.words.find(", which loses nothing (PROJ "), std::string::npos);
}

TEST(CrsWays, DegreesOfTheSameDatum) {
  const GridPoint at = crs_ways(on_grid(2157))(4173, {"g.json"}).move(-8, 53.5);
  EXPECT_NEAR(at.easting.in_metres(), 600000, 1e-6);  // the projection's own origin
  EXPECT_NEAR(at.northing.in_metres(), 750000, 1e-6);
}

// The same projection counted in feet: coordinates come in metres, made of feet of 0.3048 m and
// 1200/3937 m. Arizona's origin is a whole number of both units, so that nothing else changes; for
// Colorado the register rounds its origin's easting differently in the two systems. The numbers are
// those of cs2cs (PROJ 9.1.1): echo "700123.25 1500000.5" | cs2cs -f %.9f EPSG:2868 EPSG:2762
TEST(CrsWays, FeetOfTheSameProjectionAreExact) {
  const GridPoint arizona = crs_ways(on_grid(2762, grid_point(213400, 457200)))(2868, {"g.las"})
                                .move(700123.25 * 0.3048, 1500000.5 * 0.3048);
  EXPECT_NEAR(arizona.easting.in_metres(), 213397.566600000, 2e-9);
  EXPECT_NEAR(arizona.northing.in_metres(), 457200.152400000, 2e-9);
  const GridPoint colorado = crs_ways(on_grid(2772, grid_point(914400, 457200)))(2876, {"g.las"})
                                 .move(3000123.25 * (1200.0 / 3937), 1500000.5 * (1200.0 / 3937));
  EXPECT_NEAR(colorado.easting.in_metres(), 914439.395575133, 2e-9);
  EXPECT_NEAR(colorado.northing.in_metres(), 457201.066800915, 2e-9);
}

TEST(CrsWays, WhatIsLessThanExactIsRefused) {
  const auto ways = crs_ways(on_grid(2157));
  EXPECT_NE(refusal_text([&] { ways(32629, {"g.las"}); }).find(" m only; coordinates in EPSG:2157"),
            std::string::npos)
      << refusal_text([&] { ways(32629, {"g.las"}); });
  EXPECT_NE(refusal_text([&] { ways(7855, {"g.las"}); }), "");
  // another datum, in US survey feet
  EXPECT_NE(refusal_text([&] { ways(2903, {"g.las"}); }), "");
}

TEST(CrsWays, ALocalGridHasNone) { EXPECT_FALSE(crs_ways(on_grid(std::nullopt))); }

}  // namespace
}  // namespace squaredig::app
