// The grid of cut.tif: along the tank it is the sheet's cells; north up it is the same where the
// tank itself lies north up on whole multiples of the cell, and elsewhere reads ground less floor.
#include <gtest/gtest.h>

#include "dig/dig.h"
#include "grounds.h"

namespace squaredig {
namespace {

using testing::MadeSurvey;
using testing::plain_pit;

dig::DigResult dug(dig::RasterFrame frame, Bearing ab) {
  MadeSurvey survey(testing::grid_surface(60, 7.3, testing::rough_ground(4, 3, 0.3)));
  const auto design = plain_pit(20, 10, 0, Batter::run_per_rise(1), grid_point(0, 0), ab);
  dig::DigInput input;
  input.cell = Length::metres(1);
  input.raster = frame;
  return dig::dig(input, design, design::excavate(design, survey), survey);
}

TEST(CutRaster, AlongTheTankHoldsTheCells) {
  const auto result = dug(dig::RasterFrame::Tank, Bearing::degrees(37.5));
  const auto& raster = result.raster;
  EXPECT_EQ(raster.columns, result.grid.columns);
  EXPECT_EQ(raster.bearing, Bearing::degrees(37.5));
  std::size_t held = 0, given = 0;
  for (const auto& value : raster.cut) held += value.has_value();
  for (const auto& cell : result.grid.cells) {
    const auto i = static_cast<std::size_t>((cell.row - result.grid.first_row) * raster.columns +
                                            cell.column - result.grid.first_column);
    EXPECT_EQ(raster.cut[i], cell.cut_at_centre);
    given += cell.cut_at_centre.has_value();
  }
  EXPECT_EQ(held, given);
}

TEST(CutRaster, NorthUpIsTheTanksOwnWhereTheTankLiesNorthUp) {
  const auto tank = dug(dig::RasterFrame::Tank, Bearing::degrees(90)).raster;
  const auto north = dug(dig::RasterFrame::North, Bearing::degrees(90)).raster;
  EXPECT_EQ(north.columns, tank.columns);
  EXPECT_EQ(north.rows, tank.rows);
  EXPECT_NEAR((north.origin.easting - tank.origin.easting).in_metres(), 0, 1e-9);
  EXPECT_NEAR((north.origin.northing - tank.origin.northing).in_metres(), 0, 1e-9);
  ASSERT_EQ(north.cut.size(), tank.cut.size());
  for (std::size_t i = 0; i < north.cut.size(); ++i) {
    ASSERT_EQ(north.cut[i].has_value(), tank.cut[i].has_value()) << i;
    if (!north.cut[i]) continue;
    EXPECT_NEAR(north.cut[i]->in_metres(), tank.cut[i]->in_metres(), 1e-9) << i;
  }
}

// A plane of ground, so that every value is known: 3 + x / 50 over a floor at 0, from row and
// column.
TEST(CutRaster, NorthUpReadsGroundLessFloorAtEachCentre) {
  MadeSurvey survey(testing::grid_surface(60, 7.3, [](double x, double) { return 3 + x / 50; }));
  const auto design = plain_pit(20, 10, 0, Batter{}, grid_point(0.3, 0.7), Bearing::degrees(37.5));
  dig::DigInput input;
  input.cell = Length::metres(0.5);
  input.raster = dig::RasterFrame::North;
  const auto raster = dig::dig(input, design, design::excavate(design, survey), survey).raster;
  EXPECT_EQ(raster.bearing, Bearing::degrees(90));
  const double east = sine(Angle::degrees(37.5)), north = cosine(Angle::degrees(37.5));
  std::size_t held = 0;
  for (int row = 0; row < raster.rows; ++row)
    for (int column = 0; column < raster.columns; ++column) {
      const double x = raster.origin.easting.in_metres() + (column + 0.5) * 0.5;
      const double y = raster.origin.northing.in_metres() - (row + 0.5) * 0.5;
      const double along = (x - 0.3) * east + (y - 0.7) * north;
      const double across = (x - 0.3) * north - (y - 0.7) * east;
      const auto& value =
          raster.cut[static_cast<std::size_t>(row) * static_cast<std::size_t>(raster.columns) +
                     static_cast<std::size_t>(column)];
      ASSERT_EQ(value.has_value(), std::abs(along) <= 10 && std::abs(across) <= 5) << x << ' ' << y;
      if (!value) continue;
      EXPECT_NEAR(value->in_metres(), 3 + x / 50, 1e-9);
      ++held;
    }
  EXPECT_NEAR(static_cast<double>(held) * 0.25, 200, 6);
}

}  // namespace
}  // namespace squaredig
