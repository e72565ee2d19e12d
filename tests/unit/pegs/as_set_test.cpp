#include "unit/pegs/as_set.h"

#include <gtest/gtest.h>

namespace squaredig::pegs {
namespace {

TEST(AsSet, PegsWhereTheyWereDesignedGiveZeroEverywhere_set_out_3) {
  Site site;
  give_tolerances(site, 10);
  const PegsResult design = site.run();
  site.pegs.as_set = measured_pegs(design, {}, 2);
  const AsSetResult r = *site.run().as_set;
  ASSERT_EQ(r.points.size(), 8U);
  for (const PegDelta& d : r.points)
    for (const Length l : {d.delta_e, d.delta_n, d.along, d.across})
      EXPECT_EQ(l, Length{}) << d.name;
  ASSERT_EQ(r.corners.size(), 4U);
  for (const RemadeCorner& c : r.corners) EXPECT_NEAR(c.off.in_millimetres(), 0, 1e-5) << c.name;
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR((r.sides[i].grid - design.sides[i].grid).in_millimetres(), 0, 1e-5);
  EXPECT_NEAR(r.diagonal_difference->in_millimetres(), 0, 1e-5);
  EXPECT_NEAR(r.out_of_square->in_seconds(), 0, 1e-3);
  EXPECT_TRUE(r.moves.empty());
  EXPECT_EQ(r.verdict, Verdict::Conforms);
}

TEST(AsSet, APegMovedAlongIsNamedWithAmountAndDirection) {
  Site site;
  give_tolerances(site, 10);
  site.pegs.as_set = measured_pegs(site.run(), {{"B2", {30, 0}}});
  const PegsResult result = site.run();
  const AsSetResult& r = *result.as_set;
  ASSERT_EQ(result.head.findings.size(), 1U);
  EXPECT_EQ(result.head.findings[0].text,
            "As set: peg B2 along is 30.0 mm off (permitted 10.0 mm). Move peg B2 30.0 mm toward "
            "corner B.");
  const PegDelta& d = r.points[3];
  EXPECT_EQ(d.name, "B2");
  EXPECT_NEAR(d.along.in_millimetres(), 30, 1e-6);
  EXPECT_NEAR(d.across.in_millimetres(), 0, 1e-6);
  ASSERT_EQ(r.moves.size(), 1U);
  EXPECT_EQ(r.moves[0].name, "B2");
  EXPECT_NEAR(r.moves[0].along.in_millimetres(), -30, 1e-6);
  EXPECT_EQ(r.moves_words, "Move peg B2 30.0 mm toward corner B.");
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
}

TEST(AsSet, APegMovedAcrossTurnsItsStringAndIsNamed) {
  Site site;
  give_tolerances(site, 10);
  site.pegs.as_set = measured_pegs(site.run(), {{"A1", {0, 30}}});
  const AsSetResult r = *site.run().as_set;
  ASSERT_EQ(r.moves.size(), 1U);
  EXPECT_EQ(r.moves[0].name, "A1");
  EXPECT_NEAR(r.moves[0].across.in_millimetres(), -30, 1e-6);
  EXPECT_EQ(r.moves_words, "Move peg A1 30.0 mm to the left, seen from corner A.");
  // 3.87 m beyond A on a string of 24 + 2 x 3.87 m: A is off by 30 x (24 + 3.87) / 31.74
  EXPECT_NEAR(r.corners[0].off.in_millimetres(), 30 * 27.87 / 31.74, 1e-4);
  EXPECT_NEAR(r.corners[1].off.in_millimetres(), 30 * 3.87 / 31.74, 1e-4);
}

TEST(AsSet, TheFewestPegsAreMoved) {
  Site site;
  give_tolerances(site, 10);
  site.pegs.as_set = measured_pegs(
      site.run(), {{"A1", {4, 25}}, {"C2", {-3, -40}}, {"D1", {2, 3}}, {"B1", {-28, 1}}});
  const AsSetResult r = *site.run().as_set;
  ASSERT_EQ(r.moves.size(), 3U);
  EXPECT_EQ(r.moves[0].name, "A1");
  EXPECT_EQ(r.moves[1].name, "B1");
  EXPECT_EQ(r.moves[2].name, "C2");
  EXPECT_NEAR(r.moves[2].along.in_millimetres(), 3, 1e-6);
  EXPECT_NEAR(r.moves[2].across.in_millimetres(), 40, 1e-6);
  EXPECT_EQ(r.moves_words.find("peg by peg"), std::string::npos);
}

// Everything 30 mm east: the shape is right, its place is not.
TEST(AsSet, ShapeAndPlaceAreJudgedApart) {
  Site site;
  give_tolerances(site, 10);
  const PegsResult design = site.run();
  PointTable table;
  for (const auto& p : design.reference)
    add_measured(table, p.name, {p.at.easting + Length::millimetres(30), p.at.northing}, 1);
  site.pegs.as_set = table;
  const AsSetResult r = *site.run().as_set;
  EXPECT_EQ(verdict_of(r.checks, "corner A"), Verdict::DoesNotConform);
  EXPECT_EQ(verdict_of(r.checks, "side AB"), Verdict::Conforms);
  EXPECT_EQ(verdict_of(r.checks, "diagonal difference"), Verdict::Conforms);
  EXPECT_NEAR(r.out_of_square->in_seconds(), 0, 1e-2);
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
}

// One-sided 1.645 u on either side of the limit leaves the answer open.
TEST(AsSet, NearTheLimitIsNotProven) {
  const auto verdict = [](double along_mm) {
    Site site;
    give_tolerances(site, 10);
    site.pegs.as_set = measured_pegs(site.run(), {{"A1", {along_mm, 0}}}, 1);
    const AsSetResult r = *site.run().as_set;
    for (const Check& c : r.checks)
      if (c.name == "peg A1 along") {
        EXPECT_NEAR(c.uncertainty->in_millimetres(), 1.645, 1e-6);
        return c.verdict;
      }
    return Verdict::NotAsked;
  };
  EXPECT_EQ(verdict(8.3), Verdict::Conforms);
  EXPECT_EQ(verdict(8.4), Verdict::NotProven);
  EXPECT_EQ(verdict(11.6), Verdict::NotProven);
  EXPECT_EQ(verdict(11.7), Verdict::DoesNotConform);
}

// The corner's uncertainty is that of the two strings: see the strength of a re-made corner.
TEST(AsSet, UncertaintyOfACornerFollowsItsStrings) {
  Site site;
  give_tolerances(site, 10);
  const PegsResult design = site.run();
  site.pegs.as_set = measured_pegs(design, {}, 2);
  const PegsResult r = site.run();
  const auto variance = [](double beyond, double length) {
    const double t = beyond / (length + 2 * beyond);
    return (1 - t) * (1 - t) + t * t;
  };
  // square strings: the greater of the two is the worst direction
  EXPECT_NEAR(r.as_set->checks[0].uncertainty->in_millimetres(),
              1.645 * 2 * std::sqrt(variance(3.87, 24)), 1e-5);
}

TEST(AsSet, MissingAndUnknownPegsAreTold) {
  Site site;
  give_tolerances(site, 10);
  const PegsResult design = site.run();
  PointTable table;
  for (const auto& p : design.reference)
    if (p.name != "C1") add_measured(table, p.name, p.at, 1);
  add_measured(table, "Z9", design.reference[0].at);
  add_measured(table, "A", design.corners[0].at.at);
  site.pegs.as_set = table;
  const PegsResult r = site.run();
  EXPECT_TRUE(has_finding(r.head, "as-set-missing"));
  ASSERT_EQ(r.head.cautions.size(), 1U);
  EXPECT_EQ(
      r.head.cautions[0],
      "As set: 1 measured point is nothing that is set out and left aside, the first \"Z9\".");
  EXPECT_EQ(r.as_set->verdict, Verdict::NotProven);
  EXPECT_EQ(verdict_of(r.as_set->checks, "corner A"), Verdict::Conforms);
  EXPECT_EQ(verdict_of(r.as_set->checks, "corner C"), Verdict::NotProven);
  EXPECT_EQ(r.as_set->points.size(), 8U);
  EXPECT_EQ(r.as_set->points.back().name, "A");
  EXPECT_EQ(r.as_set->corners.size(), 2U);
}

TEST(AsSet, WithoutToleranceNothingIsAskedAndWithoutSigmaItIsSaid) {
  Site site;
  site.pegs.as_set = measured_pegs(site.run(), {{"A1", {500, 500}}});
  const PegsResult r = site.run();
  EXPECT_EQ(r.as_set->verdict, Verdict::NotAsked);
  EXPECT_TRUE(r.as_set->moves.empty());
  bool said = false;
  for (const auto& a : r.head.assumed)
    said = said || a.find("no sigma_plan_mm is stated for 8") != std::string::npos;
  EXPECT_TRUE(said);
}

TEST(AsSet, ManyCornersAndManyWrongPegsEndInTime) {
  Site site([](double, double) { return 5.0; }, 80);
  site.design.tank.outline.clear();
  for (int i = 0; i < 14; ++i)
    site.design.tank.outline.push_back(
        ahead(origin().at, Bearing::degrees(i * 360.0 / 14), Length::metres(20)));
  give_tolerances(site, 5);
  const PegsResult design = site.run();
  ASSERT_EQ(design.reference.size(), 28U);
  std::map<std::string, std::pair<double, double>> moved;
  int turn = 0;
  for (const ReferencePeg& p : design.reference) {
    moved[p.name] = {turn % 3 * 9.0, turn % 5 * 7.0 - 14};
    ++turn;
  }
  site.pegs.as_set = measured_pegs(design, moved);
  const AsSetResult r = *site.run().as_set;
  EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
  EXPECT_GT(r.moves.size(), 9U);
}

}  // namespace
}  // namespace squaredig::pegs
