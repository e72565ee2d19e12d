#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/pegs/as_set.h"

namespace squaredig::pegs {
namespace {

struct Row {
  const char* from;
  const char* to;
  double length;
  double rise = 0;
};

PegsResult taped(Site& site, const std::vector<Row>& rows) {
  site.pegs.tape.emplace();
  for (const Row& row : rows)
    site.pegs.tape->push_back(
        {row.from,
         row.to,
         Length::metres(row.length),
         row.rise == 0 ? std::nullopt : std::optional(Length::metres(row.rise)),
         {"tape.csv", static_cast<int>(site.pegs.tape->size()) + 2, 1}});
  return site.run();
}

const double kDiagonal = std::hypot(24, 9.6);
std::vector<Row> exact() {
  return {{"A", "B", 24},  {"B", "C", 9.6},       {"C", "D", 24},
          {"D", "A", 9.6}, {"A", "C", kDiagonal}, {"D", "B", kDiagonal}};
}

TEST(Tape, LengthsOfTheDesignConform) {
  Site site;
  give_tolerances(site, 10);
  const TapeResult r = *taped(site, exact()).tape;
  EXPECT_EQ(r.verdict, Verdict::Conforms);
  EXPECT_FALSE(r.likely_wrong);
  EXPECT_EQ(r.words, "The lengths agree with one another.");
  ASSERT_EQ(r.sides.size(), 4U);
  ASSERT_EQ(r.diagonals.size(), 2U);
  EXPECT_EQ(r.lines[5].name, "BD");
  for (const TapedLine& line : r.lines)
    EXPECT_NEAR(line.by_the_others->in_metres(), line.design.in_metres(), 1e-9);
  EXPECT_NEAR(r.diagonal_difference->in_metres(), 0, 1e-12);
}

// One length misread by 50 mm: each in turn is named, with its amount. With one length to spare the
// lengths alone cannot tell which; the design can.
TEST(Tape, TheLengthMostLikelyWrongIsNamed) {
  for (std::size_t wrong = 0; wrong < 6; ++wrong)
    for (const double by : {0.050, -0.050, 1.0}) {
      Site site;
      give_tolerances(site, 10);
      auto rows = exact();
      rows[wrong].length += by;
      const PegsResult result = taped(site, rows);
      const TapeResult& r = *result.tape;
      ASSERT_TRUE(r.likely_wrong) << wrong << " " << by << " " << r.words;
      EXPECT_EQ(*r.likely_wrong, r.lines[wrong].name);
      EXPECT_NEAR(r.likely_wrong_by->in_metres(), by, 1e-6);
      EXPECT_EQ(r.verdict, Verdict::DoesNotConform);
      EXPECT_TRUE(has_finding(result.head, "tape"));
    }
}

// Strings taped as well, peg to peg: more lengths to spare, and the outlier test alone finds it.
TEST(Tape, WithLengthsToSpareTheOutlierTestNamesIt) {
  Site site;
  give_tolerances(site, 10);
  const PegsResult design = site.run();
  auto rows = exact();
  const auto add = [&](const char* from, const char* to) {
    const auto place = [&](const std::string& name) {
      for (const Corner& c : design.corners)
        if (c.name == name) return c.at.at;
      return peg(design, name).at;
    };
    rows.push_back(
        {from, to,
         distance(place(from), place(to)).in_metres() + 0.002 * (rows.size() % 2 == 0 ? 1 : -1)});
  };
  for (const char* corner : {"A", "B", "C", "D"}) add("B2", corner);
  rows[4].length += 0.060;
  const TapeResult r = *taped(site, rows).tape;
  ASSERT_TRUE(r.likely_wrong) << r.words;
  EXPECT_EQ(*r.likely_wrong, "AC");
  EXPECT_NEAR(r.likely_wrong_by->in_millimetres(), 60, 5);
  EXPECT_EQ(r.lines[6].name, "B2-A");
}

// Diagonals 4 mm long put the short side more than 10 mm off by the others: each length is still
// inside.
TEST(Tape, LengthsInsideTheirToleranceAreNotDoubted) {
  Site site;
  give_tolerances(site, 10);
  auto rows = exact();
  rows[4].length += 0.004;
  rows[5].length += 0.004;
  const TapeResult r = *taped(site, rows).tape;
  EXPECT_EQ(r.verdict, Verdict::Conforms);
  EXPECT_GT(abs(*r.lines[1].by_the_others - r.lines[1].horizontal), Length::millimetres(10));
  EXPECT_FALSE(r.likely_wrong);
  EXPECT_EQ(r.words, "Each length is inside its tolerance.");
}

TEST(Tape, SlopeIsTakenOutFirst) {
  Site site;
  give_tolerances(site, 10);
  auto rows = exact();
  rows[0].rise = 0.8;
  rows[0].length = std::hypot(24, 0.8);
  rows[4].rise = -1.1;
  rows[4].length = std::hypot(kDiagonal, 1.1);
  const TapeResult r = *taped(site, rows).tape;
  EXPECT_NEAR(r.sides[0]->in_metres(), 24, 1e-12);
  EXPECT_NEAR(r.diagonals[0]->in_metres(), kDiagonal, 1e-12);
  EXPECT_EQ(r.verdict, Verdict::Conforms);
}

TEST(Tape, TooFewLengthsProveNothing) {
  Site site;
  give_tolerances(site, 10);
  const PegsResult result =
      taped(site, {{"A", "B", 24}, {"B", "C", 9.6}, {"C", "D", 24}, {"D", "A", 9.6}});
  EXPECT_EQ(result.tape->verdict, Verdict::NotProven);
  EXPECT_FALSE(result.tape->diagonals[0]);
  EXPECT_TRUE(has_finding(result.head, "tape-shape"));
  EXPECT_EQ(result.tape->words, "There are too few lengths to check one another.");
}

TEST(Tape, GroundLengthsAreComparedWithTheGround) {
  Site site;
  give_tolerances(site, 5);
  site.on.stated_factor = Ratio::of(0.9996);
  auto rows = exact();
  for (Row& row : rows) row.length /= 0.9996;
  EXPECT_EQ(taped(site, rows).tape->verdict, Verdict::Conforms);
  // 24 m at 0.9996 is 9.6 mm: taken as grid lengths they would fail
  site.on.stated_factor.reset();
  EXPECT_EQ(taped(site, rows).tape->verdict, Verdict::DoesNotConform);
}

TEST(Tape, RefusesStrangersAndImpossibleSlopes) {
  Site site;
  EXPECT_EQ(testing::refusal_text([&] {
              taped(site, {{"A", "E", 24}});
            }),
            "tape.csv:2:1: \"E\" is no corner or peg of this tank; names such as \"A\" and \"A1\"; "
            "correct "
            "the name or leave the line out\n");
  EXPECT_NE(testing::refusal_text([&] { taped(site, {{"A", "A", 24}}); }), "");
  EXPECT_NE(testing::refusal_text([&] { taped(site, {{"A", "B", 24, 24}}); }), "");
}

TEST(Tape, AnAbsurdLengthStillEndsInANamedDoubt) {
  Site site;
  give_tolerances(site, 10);
  auto rows = exact();
  rows[4].length *= 10;
  const TapeResult r = *taped(site, rows).tape;
  ASSERT_TRUE(r.likely_wrong) << r.words;
  EXPECT_EQ(*r.likely_wrong, "AC");
}

}  // namespace
}  // namespace squaredig::pegs
