#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;

constexpr unsigned kSeed = 20260316;

BaseFixture asked() {
  BaseFixture base;
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  return base;
}

// A cone of 20 mm, 3 m wide at its foot, round (12, 4.8).
double cone(double along, double across) {
  return std::max(0.0, 20 * (1 - std::hypot(along - 12, across - 4.8) / 1.5));
}

TEST(Repair, AConeIsTrimmedAboveTheTolerance) {
  BaseFixture base = asked();
  base.add_grid(0.1, cone);
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  const RepairPatch& patch = r.repair[0];
  EXPECT_EQ(patch.work, Work::Trim);
  // above 5 mm the cone is a circle of 1.125 m; below it stands a cylinder of 5 mm
  const double radius = 1.5 * 0.75;
  const double area = M_PI * radius * radius;
  EXPECT_NEAR(patch.area.in_square_metres(), area, 0.02);
  EXPECT_NEAR(patch.volume.in_cubic_metres(), area * (0.005 + 0.015 / 3), 4e-4);
  EXPECT_NEAR(patch.deepest.along_ab.in_metres(), 12, 0.06);
  EXPECT_NEAR(patch.deepest.across_ab.in_metres(), 4.8, 0.06);
  EXPECT_LT(patch.deepest.move.in_millimetres(), -18.9);
  ASSERT_EQ(patch.rings.size(), 1u);
  for (const GridPoint& corner : patch.rings[0])
    EXPECT_NEAR(
        distance(corner, base.planned().tank.from_a(Length::metres(12), Length::metres(4.8)))
            .in_metres(),
        radius, 0.03);
  EXPECT_TRUE(patch.note.empty());
}

TEST(Repair, OverDigIsMadeUpInWordsThatLeaveItToTheEngineer) {
  BaseFixture base = asked();
  base.add_grid(0.5, [](double along, double across) { return -1.5 * cone(along, across); });
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_EQ(r.repair[0].work, Work::MakeUp);
  EXPECT_GT(r.repair[0].deepest.move, Length{});
  EXPECT_NE(r.repair[0].note.find("ask the engineer"), std::string::npos);
}

// A cone of 8 mm stands above 5 mm on a circle of 0.56 m; a machine of 1.5 m works the square
// round it.
TEST(Repair, ASmallPlaceIsWorkedAsTheSquareOfAMachine) {
  BaseFixture base = asked();
  base.add_grid(0.25, [](double along, double across) { return 0.4 * cone(along, across); });
  const Area beyond = base.check().repair.at(0).area;
  base.input.least_repair = Area::square_metres(2.25);
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  const RepairPatch& patch = r.repair[0];
  EXPECT_FALSE(patch.by_hand);
  EXPECT_EQ(patch.beyond, beyond);
  EXPECT_GE(patch.area.in_square_metres(), 2.25);
  EXPECT_LT(patch.area.in_square_metres(), 2.25 * 1.8);
  EXPECT_LE(patch.along_ab.first.in_metres(), 12 - 0.5);
  EXPECT_GE(patch.along_ab.second.in_metres(), 12 + 0.5);
  EXPECT_GE((patch.across_ab.second - patch.across_ab.first).in_metres(), 1.5);
  EXPECT_TRUE(patch.note.empty());
  ASSERT_FALSE(r.head.assumed.empty());
  EXPECT_EQ(r.head.assumed.back(),
            "a repair is worked in squares of 1.50 m along and square to A-B: the side of a square "
            "of least_repair_m2");
}

TEST(Repair, ALargePlaceIsHardlyWidened) {
  BaseFixture base = asked();  // 12 mm high on 6 by 4 m, the edges steep
  const auto table = [](double along, double across) {
    return along > 5.9 && along < 12.1 && across > 1.9 && across < 6.1 ? 12.0 : 0.0;
  };
  base.add_grid(0.2, table);
  base.input.least_repair = Area::square_metres(0.5);
  const RepairPatch patch = base.check().repair.at(0);
  EXPECT_GE(patch.area, patch.beyond);
  EXPECT_LT(patch.area / patch.beyond, 1.1);
}

TEST(Repair, TwoPlacesAMachineReachesAtOnceAreOnePatch) {
  BaseFixture base = asked();
  base.add_grid(0.25, [](double along, double across) {
    return 0.4 * (cone(along - 1.2, across) + cone(along + 1.2, across));
  });
  base.input.least_repair = Area::square_metres(0.25);
  EXPECT_EQ(base.check().repair.size(), 2u);
  base.input.least_repair = Area::square_metres(6.25);
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_EQ(r.repair[0].places, 2);
  EXPECT_NE(r.repair[0].note.find("2 places worked as one"), std::string::npos);
}

TEST(Repair, AStoneIsLeftToHandsAndTold) {
  BaseFixture base = asked();
  base.input.least_repair = Area::square_metres(0.5);
  base.add_grid(1.5, [](double, double) { return -1.0; });
  for (const double side : {-0.05, 0.05})
    for (const double up : {-0.05, 0.05}) base.add(12 + side, 4.8 + up, -1);
  base.add(12, 4.8, 25, "STONE");
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_LT(r.repair[0].area.in_square_metres(), 0.01);
  EXPECT_TRUE(r.repair[0].by_hand);
  EXPECT_NE(r.repair[0].note.find("by hand"), std::string::npos);
  EXPECT_EQ(r.repair[0].deepest.point, "STONE");
}

BaseFixture random_base(unsigned number) {
  std::mt19937 random(kSeed + number);
  std::normal_distribution<double> uneven(0, 6);
  BaseFixture base = asked();
  base.add_grid(1.2, [&](double, double) { return uneven(random); });
  base.input.least_repair = Area::square_metres(1);
  return base;
}

TEST(Repair, EveryPointBeyondTheToleranceLiesInOnePatch_repair_1) {
  for (unsigned i = 0; i < 10; ++i) {
    const BaseFixture base = random_base(i);
    const BaseResult r = base.check();
    for (const JudgedPoint& p : r.points) {
      const bool high = p.deviation > base.input.level_tolerance->high;
      if (!high && p.deviation >= -base.input.level_tolerance->low) continue;
      int patches = 0;
      for (const RepairPatch& patch : r.repair) {
        if ((patch.work == Work::Trim) != high) continue;
        for (const RepairSpot& spot : patch.spots) patches += spot.point == p.point;
      }
      EXPECT_EQ(patches, 1) << p.point << ", seed " << kSeed << ", case " << i;
    }
  }
}

TEST(Repair, VolumeIsDownToTheDigLevel_repair_2) {
  BaseFixture base = asked();  // a step of 12 mm over half the floor, with a steep edge
  const auto step = [](double along, double) { return along > 12 ? 12.0 : 0.0; };
  for (const double along : {-0.2, 12.0, 12.001, 24.2})
    for (const double across : {-0.2, 9.8}) base.add(along, across, step(along, across));
  const RepairPatch patch = base.check().repair.at(0);
  EXPECT_NEAR(patch.area.in_square_metres(), 12.2 * 10, 0.01);
  EXPECT_NEAR(patch.volume.in_cubic_metres(), 12.2 * 10 * 0.012, 1e-4);
  base.input.least_repair = Area::square_metres(1);  // a step more to work, nothing more to take
  const RepairPatch worked = base.check().repair.at(0);
  EXPECT_GT(worked.area, patch.area);
  EXPECT_LT(worked.area.in_square_metres(), 12.4 * 10);
  EXPECT_NEAR(worked.volume.in_cubic_metres(), 12.2 * 10 * 0.012, 1e-4);
}

bool inside(const RepairPatch& patch, GridPoint p) {
  bool in = false;  // a ray to the east, over every ring
  for (const auto& ring : patch.rings)
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const GridPoint a = ring[i], b = ring[(i + 1) % ring.size()];
      if ((a.northing > p.northing) == (b.northing > p.northing)) continue;
      const double t = (p.northing - a.northing) / (b.northing - a.northing);
      if (a.easting + (b.easting - a.easting) * t > p.easting) in = !in;
    }
  return in;
}

// Somewhere a square of that side that has p and no place outside the patch.
bool has_square_over(const design::Tank& tank, const RepairPatch& patch, GridPoint p, double side) {
  constexpr int kTries = 33, kPlaces = 7;
  const double along = tank.along_ab(p).in_metres(), in = tank.across_ab(p).in_metres();
  const double inner = side - 1e-3;
  for (int i = 0; i <= kTries; ++i)
    for (int k = 0; k <= kTries; ++k) {
      bool whole = true;
      for (int u = 0; u <= kPlaces && whole; ++u)
        for (int v = 0; v <= kPlaces && whole; ++v)
          whole = inside(
              patch, tank.from_a(Length::metres(along - inner * i / kTries + inner * u / kPlaces),
                                 Length::metres(in - inner * k / kTries + inner * v / kPlaces)));
      if (whole) return true;
    }
  return false;
}

TEST(Repair, AMachinesPatchIsMadeOfItsSquares_repair_3) {
  for (unsigned i = 0; i < 4; ++i) {
    BaseFixture base = random_base(i);
    std::mt19937 random(kSeed + i);
    std::uniform_real_distribution<double> unit(0, 1);
    const design::Tank tank = base.planned().tank;
    for (const RepairPatch& patch : base.check().repair) {
      if (patch.by_hand) continue;
      EXPECT_GE(patch.area.in_square_metres(), 1 - 1e-9);
      for (int n = 0; n < 3; ++n) {
        const auto between = [&](const std::pair<Length, Length>& reach) {
          return reach.first + (reach.second - reach.first) * unit(random);
        };
        const GridPoint p = tank.from_a(between(patch.along_ab), between(patch.across_ab));
        if (!inside(patch, p)) continue;
        // the squares are a ninth wider than needed at most, so a step of a ninth is looked over
        EXPECT_TRUE(has_square_over(tank, patch, p, 0.97)) << "seed " << kSeed << ", case " << i;
      }
    }
  }
}

// A hump in the corner of an L: the squares of the machine reach over the floor's edge, the patch
// does not.
TEST(Repair, AtAReentrantCornerThePatchStaysOnTheFloor) {
  BaseFixture base = asked();
  base.input.least_repair = Area::square_metres(2);
  PlannedBase planned = base.planned();
  const auto at = [&](double along, double across) {
    return planned.tank.from_a(Length::metres(along), Length::metres(across));
  };
  planned.tank.corners = {at(0, 0), at(24, 0), at(24, 4), at(10, 4), at(10, 9.6), at(0, 9.6)};
  planned.toe = {at(-.2, -.2),  at(24.2, -.2), at(24.2, 4.2),
                 at(10.2, 4.2), at(10.2, 9.8), at(-.2, 9.8)};
  base.add_grid(0.25, [](double along, double across) {
    return 20 * std::max(0.0, 1 - std::hypot(along - 10, across - 4) / 1.5);
  });
  const BaseResult r = check_base(base.input, planned);
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_GT(r.repair[0].area, r.repair[0].beyond);
  for (const auto& ring : r.repair[0].rings)
    for (const GridPoint p : ring) {
      const double along = planned.tank.along_ab(p).in_metres();
      const double in = planned.tank.across_ab(p).in_metres();
      EXPECT_TRUE(along < 10.2 + 1e-4 || in < 4.2 + 1e-4) << along << ", " << in;
    }
}

TEST(Repair, AtTheToeThePatchStaysOnTheFloor) {
  BaseFixture base = asked();
  base.input.least_repair = Area::square_metres(1);
  base.add_grid(0.25, [](double along, double across) {
    return 20 * std::max(0.0, 1 - std::hypot(along + 0.2, across + 0.2) / 1.2);
  });
  const BaseResult r = base.check();
  ASSERT_EQ(r.repair.size(), 1u);
  EXPECT_GE(r.repair[0].area.in_square_metres(), 1);
  EXPECT_NEAR(r.repair[0].along_ab.first.in_metres(), -0.2, 1e-6);
  EXPECT_NEAR(r.repair[0].across_ab.first.in_metres(), -0.2, 1e-6);
}

}  // namespace
}  // namespace squaredig::base
