#include <gtest/gtest.h>

#include "unit/base/base_fixture.h"

namespace squaredig::base {
namespace {

using testing::BaseFixture;
using testing::mm;
using testing::named;

void add_toe(BaseFixture& base, double along, double across, const char* label) {
  SurveyPoint p;
  const design::Tank tank = base.planned().tank;
  p.at.at = tank.from_a(Length::metres(along), Length::metres(across));
  p.at.height = tank.dig_level.at(p.at.at);
  base.input.points.add(p, label, "TOE");
}

BaseFixture with_toe() {
  BaseFixture base;
  base.input.sigma_plan = Length::millimetres(10);
  base.input.extent_tolerance = Length::millimetres(50);
  base.add_grid(3, [](double, double) { return 0.0; });
  for (const double along : {2.0, 12.0, 22.0}) {
    add_toe(base, along, -0.21, "T1");
    add_toe(base, along, 9.81, "T2");
  }
  add_toe(base, -0.22, 5, "T3");
  add_toe(base, 24.22, 5, "T4");
  return base;
}

TEST(Extent, LeastDistanceFromTheFace) {
  BaseFixture base = with_toe();
  const BaseResult r = base.check();
  const Check& c = named(r, "extent");
  EXPECT_EQ(c.verdict, Verdict::Conforms);
  EXPECT_NEAR(mm(c.value), 210, 1e-4);
  EXPECT_NEAR(mm(c.limit), 150, 1e-9);
  EXPECT_NEAR(mm(c.uncertainty), 16.448536, 1e-5);
  EXPECT_TRUE(r.head.cautions.empty());
}

TEST(Extent, ANarrowPlaceIsNamed) {
  BaseFixture base = with_toe();
  add_toe(base, 7.5, 9.72, "NARROW");
  const BaseResult r = base.check();
  const Check& c = named(r, "extent");
  EXPECT_EQ(c.verdict, Verdict::DoesNotConform);
  EXPECT_NEAR(mm(c.value), 120, 1e-4);
  EXPECT_NE(c.words.find("\"NARROW\", off side CD"), std::string::npos) << c.words;
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
}

TEST(Extent, InsideTheTankIsBelowZero) {
  BaseFixture base = with_toe();
  add_toe(base, 7.5, 0.1, "T9");
  EXPECT_NEAR(mm(named(base.check(), "extent").value), -100, 1e-4);
}

TEST(Extent, EachSideHasItsOwnGap) {
  BaseFixture base = with_toe();
  PlannedBase planned = base.planned();
  planned.gap[2] = Length::metres(0.7);
  const BaseResult r = check_base(base.input, planned);
  EXPECT_NEAR(mm(named(r, "extent").limit), 650, 1e-9);
  EXPECT_NEAR(mm(named(r, "extent").value), 210, 1e-4);
  EXPECT_EQ(named(r, "extent").verdict, Verdict::DoesNotConform);
}

TEST(Extent, ASideWithoutToePointsIsCautioned) {
  BaseFixture base;
  base.input.extent_tolerance = Length::millimetres(50);
  base.add_grid(3, [](double, double) { return 0.0; });
  add_toe(base, 2, -0.21, "T1");
  const BaseResult r = base.check();
  ASSERT_EQ(r.head.cautions.size(), 3u);
  EXPECT_EQ(r.head.cautions[0], "no toe point was surveyed along side BC");
}

TEST(Extent, AskedWhereThereAreToeCodes) {
  BaseFixture base;
  base.input.extent_tolerance = Length::millimetres(50);
  base.add_grid(3, [](double, double) { return 0.0; });
  EXPECT_EQ(named(base.check(), "extent").verdict, Verdict::NotProven);
  base.input.toe_codes.clear();
  EXPECT_EQ(named(base.check(), "extent").verdict, Verdict::NotAsked);
}

TEST(Compaction, EachTestAgainstTheRatioAsked) {
  BaseFixture base;
  base.add_grid(3, [](double, double) { return 0.0; });
  const auto density = [](double d) { return Density::tonnes_per_cubic_metre(d); };
  base.input.tests = {{"base", base.corner_a, density(1.92), density(2.0), {"t.csv", 2, 1}},
                      {"base", base.corner_a, density(1.88), density(2.0), {"t.csv", 3, 1}}};
  const Check unasked = named(base.check(), "compaction");
  EXPECT_EQ(unasked.verdict, Verdict::NotAsked);
  EXPECT_NEAR(std::get<Ratio>(*unasked.value).in_percent(), 94, 1e-12);
  base.input.density_ratio = Ratio::percent(95);
  const BaseResult r = base.check();
  EXPECT_EQ(named(r, "compaction").verdict, Verdict::DoesNotConform);
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
  ASSERT_EQ(r.compaction.size(), 2u);
  EXPECT_EQ(r.compaction[0].verdict, Verdict::Conforms);
  EXPECT_EQ(r.compaction[1].verdict, Verdict::DoesNotConform);
  EXPECT_NE(named(r, "compaction").words.find("line 3 of t.csv"), std::string::npos);
  base.input.density_ratio = Ratio::percent(94);  // on the limit is inside
  EXPECT_EQ(named(base.check(), "compaction").verdict, Verdict::Conforms);
}

}  // namespace
}  // namespace squaredig::base
