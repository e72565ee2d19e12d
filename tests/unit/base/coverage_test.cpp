// What of the floor the survey saw: corners, sides, holes, and the parts no point is near.
#include <gtest/gtest.h>

#include <cmath>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::named;

BaseFixture asked() {
  BaseFixture base;
  base.input.level_tolerance = Tolerance{Length::millimetres(5), Length::millimetres(10)};
  return base;
}

TEST(Coverage, HolesSayWhereMorePointsAreWanted) {
  BaseFixture base = asked();
  base.input.spacing = Length::metres(3);
  base.add_grid(1.5, [](double, double) { return 0.0; });
  EXPECT_TRUE(base.check().holes.empty());
  std::erase_if(base.input.points.points, [&](const SurveyPoint& p) {
    return base.planned().tank.along_ab(p.at.at) > Length::metres(14);
  });
  const BaseResult r = base.check();
  EXPECT_EQ(named(r, "coverage").verdict, Verdict::DoesNotConform);
  ASSERT_FALSE(r.holes.empty());
  for (const HoleInSurvey& hole : r.holes)
    base.add(hole.along_ab.in_metres(), hole.across_ab.in_metres(), 0);
  EXPECT_EQ(named(base.check(), "coverage").verdict, Verdict::Conforms);
}

// Points on a 1.5 m grid, but none within 3 m of corner C nor near the last 5 m of side A-B. The
// limit is 1.5 / sqrt 2 m + 1 mm = 1.0617 m.
TEST(Coverage, CornersAndSidesThatWereNotSeenAreNamed) {
  BaseFixture base = asked();
  base.input.spacing = Length::metres(1.5);
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const design::Tank tank = base.planned().tank;
  std::erase_if(base.input.points.points, [&](const SurveyPoint& p) {
    const double along = tank.along_ab(p.at.at).in_metres();
    const double in = tank.across_ab(p.at.at).in_metres();
    return std::hypot(along - 24.2, in - 9.8) < 3 || (along > 19.2 && in < 2);
  });
  const BaseResult r = base.check();
  ASSERT_TRUE(r.reach);
  const std::vector<CornerSeen>& corners = r.reach->corners;
  ASSERT_EQ(corners.size(), 4u);
  EXPECT_TRUE(corners[0].seen && corners[3].seen);
  EXPECT_FALSE(corners[1].seen);
  EXPECT_FALSE(corners[2].seen);
  EXPECT_EQ(corners[2].name, "C");
  EXPECT_NEAR(corners[0].nearest.in_metres(), 0, 1e-6);
  double nearest = 100;
  for (const JudgedPoint& p : r.points)
    nearest = std::min(nearest, distance(p.at.at, corners[2].at).in_metres());
  EXPECT_NEAR(corners[2].nearest.in_metres(), nearest, 1e-9);
  // along A-B, walked in steps of a millimetre
  const SideSeen& ab = r.reach->sides[0];
  EXPECT_EQ(ab.name, "AB");
  EXPECT_NEAR(ab.length.in_metres(), 24.4, 1e-8);
  int unseen = 0;
  for (int mm = 0; mm < 24400; ++mm) {
    const GridPoint at = tank.from_a(Length::metres(mm / 1000.0 - 0.2), Length::metres(-0.2));
    bool seen = false;
    for (const JudgedPoint& p : r.points) seen = seen || distance(p.at.at, at) <= r.reach->limit;
    unseen += !seen;
  }
  EXPECT_GT(unseen, 3000);
  EXPECT_NEAR(ab.unseen.in_metres(), unseen / 1000.0, 0.002);
  EXPECT_NEAR(ab.to.in_metres(), 24.4, 1e-6);
  EXPECT_NEAR((ab.to - ab.from).in_metres(), ab.unseen.in_metres(), 1e-9);
  EXPECT_EQ(r.reach->sides[3].unseen, Length{});
  const std::string& words = named(r, "coverage").words;
  EXPECT_NE(words.find("corners of the floor not seen: B, C"), std::string::npos) << words;
  EXPECT_NE(words.find("sides not seen: AB "), std::string::npos) << words;
  EXPECT_EQ(words.find("DA "), std::string::npos) << words;
}

TEST(Coverage, WhereAllWasSeenItSaysSo) {
  BaseFixture base = asked();
  base.input.spacing = Length::metres(1.5);
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  EXPECT_NE(named(r, "coverage")
                .words.find("all corners of the floor were seen; all sides were "
                            "seen; no part of it lies farther than 1.50 m"),
            std::string::npos);
  EXPECT_NEAR(r.widest_hole->radius.in_metres(), r.largest_hole->in_metres(), 1e-12);
  EXPECT_TRUE(r.reach->far_parts.empty());
}

// One row of points along A-B: beyond the spacing lies a strip, and its far corner is worst.
TEST(Coverage, PartsFartherThanTheSpacingAreToldWithTheirPlace) {
  BaseFixture base = asked();
  base.input.spacing = Length::metres(3);
  for (double along = -0.2; along < 24.3; along += 0.1) base.add(along, -0.2, 0);
  base.add(-0.2, 0.1, 0);  // off the line
  const BaseResult r = base.check();
  ASSERT_EQ(r.reach->far_parts.size(), 1u);
  const FarPart& part = r.reach->far_parts[0];
  // the row's circles of 3 m reach 2.9996 m in between their points
  EXPECT_NEAR(part.area.in_square_metres(), 24.4 * 7, 0.05 * 24.4);
  EXPECT_NEAR(part.distance.in_metres(), r.largest_hole->in_metres(), 1e-9);
  EXPECT_NEAR(part.across_ab.in_metres(), 9.8, 1e-6);
  EXPECT_NE(named(r, "coverage").words.find("in 1 part, lie farther than 3.00 m"),
            std::string::npos);
}

TEST(Coverage, WithoutASpacingNothingIsToldOfTheEdge) {
  BaseFixture base = asked();
  base.add_grid(1.5, [](double, double) { return 0.0; });
  const BaseResult r = base.check();
  EXPECT_FALSE(r.reach);
  EXPECT_TRUE(r.widest_hole);
}

}  // namespace
}  // namespace squaredig::base
