// Ways from other coordinate systems to the job's: exact, or refused.
#include "app/crs_ways.h"

#include <gtest/gtest.h>

#include "refusal_text.h"

namespace squaredig::app {
namespace {

using squaredig::testing::refusal_text;

job::Job on_grid(std::optional<int> crs) {
  job::Job job;
  job.grid.emplace();
  job.grid->crs = crs;
  job.tank.emplace();
  job.tank->settings.corner_a = grid_point(715830.25, 734697.6);
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

TEST(CrsWays, WhatIsLessThanExactIsRefused) {
  const auto ways = crs_ways(on_grid(2157));
  EXPECT_NE(refusal_text([&] { ways(32629, {"g.las"}); }).find(" m only; coordinates in EPSG:2157"),
            std::string::npos)
      << refusal_text([&] { ways(32629, {"g.las"}); });
  EXPECT_NE(refusal_text([&] { ways(7855, {"g.las"}); }), "");
  EXPECT_NE(refusal_text([&] { ways(2903, {"g.las"}); }).find("US survey foot"), std::string::npos);
}

TEST(CrsWays, ALocalGridHasNone) { EXPECT_FALSE(crs_ways(on_grid(std::nullopt))); }

}  // namespace
}  // namespace squaredig::app
