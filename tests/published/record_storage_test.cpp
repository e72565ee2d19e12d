// Storage against derived check values and its laws.
#include <gtest/gtest.h>

#include "grounds.h"
#include "record/storage.h"

namespace squaredig {
namespace {

design::Tank tank(double length, double width, double height, double fall_percent) {
  auto input =
      testing::plain_pit(length, width, 10, Batter{}, grid_point(500, 600), Bearing::degrees(37));
  input.tank.height = Length::metres(height);
  input.tank.fall = Fall::percent(fall_percent);
  input.tank.fall_toward = "CD";
  return design::place_tank(input);
}

record::Storage storage(const design::Tank& t, std::optional<double> outlet) {
  return record::storage_of({t, t.underside, "as designed", Ratio::percent(95),
                             outlet ? std::optional(Elevation::metres(*outlet)) : std::nullopt});
}

// Derived: 12 x 6 x 1.2 x 0.95 holds 82.080 m3; to 0.9 m of it 61.560 m3.
TEST(Storage, OnALevelBaseItIsAreaTimesDepth_storage_2) {
  const auto t = tank(12, 6, 1.2, 0);
  const auto s = storage(t, 10.9);
  EXPECT_NEAR(s.net->in_cubic_metres(), 82.080, 1e-9);
  EXPECT_NEAR(s.gross.in_cubic_metres(), 86.4, 1e-9);
  EXPECT_NEAR(s.below_outlet->in_cubic_metres(), 61.560, 1e-9);
  for (const auto& row : s.table)
    EXPECT_NEAR(row.gross.in_cubic_metres(),
                72 * std::min(1.2, (row.level - Elevation::metres(10)).in_metres()), 1e-9);
}

// Derived: on a cross-fall of 1:100 over 6 m the water up to the high edge of the base is a wedge
// of 1/2 x 72 x 0.06 x 0.95 = 2.052 m3.
TEST(Storage, WedgeOnACrossFall) {
  EXPECT_NEAR(storage(tank(12, 6, 1.2, 1), 10.0).below_outlet->in_cubic_metres(), 2.052, 1e-9);
}

// codingace (seen): areas of 0, 120, 240, 360 and 480 m2 a metre apart hold 960 m3: a wedge, here a
// tank of 48 x 10 m whose base falls 4 m across.
TEST(Storage, WedgeOfGrowingAreas) {
  const auto t = tank(48, 10, 6, 40);
  const auto s =
      record::storage_of({t, t.underside, "as designed", std::nullopt, Elevation::metres(10)});
  EXPECT_NEAR(s.below_outlet->in_cubic_metres(), 960, 1e-9);
  for (const double level : {6.0, 7.0, 8.0, 9.0, 10.0}) {
    const double height = level - 6;
    const auto row = std::find_if(s.table.begin(), s.table.end(), [&](const auto& r) {
      return std::abs((r.level - Elevation::metres(level)).in_metres()) < 1e-9;
    });
    ASSERT_NE(row, s.table.end()) << level;
    EXPECT_NEAR(row->gross.in_cubic_metres(), 48 * height * height / 0.4 / 2, 1e-9);
  }
}

// Voids of the rock round the tank are never added: nothing is there to say how many they are.
TEST(Storage, NothingButTheTankStores) {
  const auto t = tank(12, 6, 1.2, 0);
  const auto s = record::storage_of({t, t.underside, "as designed", std::nullopt, std::nullopt});
  EXPECT_FALSE(s.net);
  EXPECT_NEAR(s.gross.in_cubic_metres(), 86.4, 1e-9);
}

TEST(Storage, RisesFromNothingToTheWhole_storage_1) {
  auto input = testing::plain_pit(1, 1, 10, Batter{});
  input.tank.corner_a.reset();
  input.tank.height = Length::metres(1.32);
  input.tank.fall = Fall::percent(0.5);
  input.tank.fall_bearing = Bearing::degrees(77);
  input.tank.outline = {grid_point(0, 0), grid_point(0, 14), grid_point(6, 14),
                        grid_point(6, 5), grid_point(15, 5), grid_point(15, 0)};
  const auto t = design::place_tank(input);
  const auto s = storage(t, std::nullopt);
  EXPECT_NEAR(s.gross.in_cubic_metres(), (14 * 6 + 9 * 5) * 1.32, 1e-9);
  EXPECT_NEAR(s.table.front().gross.in_cubic_metres(), 0, 1e-9);
  EXPECT_NEAR(s.table.back().gross.in_cubic_metres(), s.gross.in_cubic_metres(), 1e-9);
  for (std::size_t i = 1; i < s.table.size(); ++i)
    EXPECT_GT(s.table[i].gross, s.table[i - 1].gross);
}

}  // namespace
}  // namespace squaredig
