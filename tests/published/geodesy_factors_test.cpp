// The national grid of Great Britain at Caister, and published combined factors.
#include <gtest/gtest.h>

#include "geodesy/factors.h"
#include "quantity/angle_text.h"

namespace squaredig::geodesy {
namespace {

Angle dms(const char* text) { return *parse_angle(text, AngleNotation::DegreesMinutesSeconds); }
constexpr double kFoot = 0.3048;

// DAT-8, DAT-9: Ordnance Survey, A guide to coordinate systems in Great Britain v2.2, Annexe C.1
// and C.2, p.40-42; seen.
TEST(PublishedNationalGrid, CaisterWaterTowerBothWays) {
  const Grid grid = Grid::open("EPSG:27700", {"job.toml", 1, 1});
  const GridPoint p = grid.to_grid({dms("52 39 27.2531"), dms("1 43 04.5177")});
  EXPECT_NEAR(p.easting.in_metres(), 651409.903, 0.001);
  EXPECT_NEAR(p.northing.in_metres(), 313177.270, 0.001);
  const Geographic g = grid.to_geographic(grid_point(651409.903, 313177.270));
  EXPECT_NEAR((g.latitude - dms("52 39 27.2531")).in_seconds(), 0, 5e-5);
  EXPECT_NEAR((g.longitude - dms("1 43 04.5177")).in_seconds(), 0, 5e-5);
}

// DAT-10: derived, not printed by the Ordnance Survey.
TEST(PublishedNationalGrid, CaisterConvergenceAndScaleDerived) {
  const GridFactors f = Grid::open("EPSG:27700", {}).factors(grid_point(651409.903, 313177.270));
  EXPECT_NEAR((f.convergence - dms("2 57 26.556")).in_seconds(), 0, 0.001);
  EXPECT_NEAR(f.point_scale.value(), 1.000377315, 5e-10);
}

// DAT-12: the same guide, section 7 p.33: true scale about 180 km either side of the meridian;
// seen.
TEST(PublishedNationalGrid, TrueScaleAbout180KilometresFromTheMeridian) {
  const Grid grid = Grid::open("EPSG:27700", {});
  for (const double east : {400000.0 - 180000, 400000.0 + 180000})
    EXPECT_NEAR(grid.factors(grid_point(east, 400000)).point_scale.value(), 1, 2e-6);
}

// CSF-1 to CSF-3: NOAA Manual NOS NGS 5, section 4.4, worked traverse; quoted in public copies.
TEST(PublishedFactors, WorkedTraverseOfTheNgsManual) {
  const Ratio elevation =
      elevation_factor(Length::metres(20906000 * kFoot), Length::metres((865 - 100) * kFoot));
  EXPECT_NEAR(elevation.value(), 0.9999634, 5e-8);
  const Ratio combined = combined_factor(Ratio::of(1.0000450), elevation);
  EXPECT_NEAR(combined.value(), 1.0000084, 5e-8);
  const double ground[] = {4805.468, 3963.694, 4966.083, 3501.223, 4466.935};
  const double grid[] = {4805.508, 3963.727, 4966.125, 3501.252, 4466.973};
  for (std::size_t i = 0; i < 5; ++i) {
    const Length on_grid = Length::metres(grid[i] * kFoot);
    EXPECT_NEAR(to_ground_length(on_grid, combined).in_metres() / kFoot, ground[i], 0.0006);
  }
}

// CSF-4: surveying examination 2015, question 4, official key (open data set); quoted.
TEST(PublishedFactors, SeaLevelReductionOfAnExamination) {
  const Ratio f = elevation_factor(Length::metres(6371000), Length::metres(3000));
  EXPECT_NEAR(2386.987 * f.value(), 2385.864, 0.0006);
}

// CSF-5, CSF-6: GDA2020 Technical Manual v1.3, s.5.1.1.2 and 5.1.1.3; seen.
TEST(PublishedFactors, SixAndAHalfMetresAreOnePartPerMillion) {
  const Length radius = Length::metres(6371000);
  const auto ppm = [&](double h) {
    return (1 - elevation_factor(radius, Length::metres(h)).value()) * 1e6;
  };
  EXPECT_NEAR(ppm(6.5), 1.02, 0.005);
  EXPECT_NEAR(ppm(650), 102, 0.5);
  EXPECT_NEAR(ppm(-35), -5, 0.6);
  EXPECT_NEAR(ppm(70), 11, 0.6);
}

}  // namespace
}  // namespace squaredig::geodesy
