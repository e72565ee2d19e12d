// Faces, scale of the work, level books, two-peg tests, intersections and traverses: their laws,
// and the traps of the instrument.
#include <gtest/gtest.h>

#include <cmath>

#include "field/faces.h"
#include "field/intersection.h"
#include "field/level_net.h"
#include "field/traverse.h"
#include "field/work_scale.h"
#include "geodesy/grid.h"
#include "refusal_text.h"
#include "unit/field/made_book.h"

namespace squaredig::field {
namespace {

using testing::MadeBook;

Angle dms(const char* text) { return *parse_angle(text, AngleNotation::DegreesMinutesSeconds); }
Length m(double v) { return Length::metres(v); }
const GridPosition kA = grid_position(100, 200, 62), kB = grid_position(180, 210, 64);
const GridPosition kC = grid_position(140, 270, 61), kP = grid_position(121, 233, 62.4);

// TRAP-7: faces left and right; derived from the definition.
TEST(Faces, MeansAsDefined_trap_7) {
  EXPECT_NEAR((zenith_of_faces(dms("85 00 10"), dms("274 59 40")) - dms("85 00 15")).in_seconds(),
              0, 1e-6);
  StationShot left, right;
  left.target = right.target = "T";
  left.zenith = dms("85 00 10");
  right.zenith = dms("274 59 40");
  left.face = Face::Left;
  right.face = Face::Right;
  right.horizontal = Angle::degrees(180);
  const PointingSigmas sigmas{Angle::seconds(5), Angle::seconds(5), m(0.002)};
  const auto reduced = reduce_faces(std::vector<StationShot>{left, right}, sigmas);
  EXPECT_NEAR(reduced.errors->index.in_seconds(), -5, 1e-6);
}

TEST(Faces, DirectionsAreMeanedAcrossNorth_faces_3) {
  EXPECT_NEAR(
      (direction_of_faces(dms("359 59 58"), dms("180 00 04")) - dms("0 00 01")).in_seconds(), 0,
      1e-6);
  EXPECT_NEAR(
      (direction_of_faces(dms("0 00 02"), dms("179 59 56")) - dms("359 59 59")).in_seconds(), 0,
      1e-6);
}

TEST(Faces, BothFacesFreeASightOfTheInstrumentsErrors_faces_1) {
  MadeBook book;
  book.control("A", kA);
  book.control("B", kB);
  book.control("C", kC);
  book.stand("S1", "A", kA, 20);
  book.both_faces("B", kB, Angle::seconds(40), Angle::seconds(25));
  book.both_faces("C", kC, Angle::seconds(40), Angle::seconds(25));
  book.both_faces("P", kP, Angle::seconds(40), Angle::seconds(25));
  const FieldResult r = book.reduce();
  EXPECT_TRUE(r.head.findings.empty());
  EXPECT_NEAR(distance(r.points.at(0).at, kP.at).in_metres(), 0, 1e-6);
  EXPECT_NEAR((*r.points[0].height - kP.height).in_metres(), 0, 1e-6);
  EXPECT_NEAR(r.setups[0].faces->index.in_seconds(), 40, 1e-3);
  EXPECT_NEAR(r.setups[0].faces->collimation.in_seconds(), 25, 1e-3);
}

TEST(Faces, OneFaceTakesTheSetUpsOwnErrors_faces_2) {
  MadeBook book;
  book.control("A", kA);
  book.control("B", kB);
  book.stand("S1", "A", kA, 20);
  book.both_faces("B", kB, Angle::seconds(40), Angle::seconds(25));
  book.both_faces("P", kP, Angle::seconds(40), Angle::seconds(25));
  book.input.stations.pop_back();  // face left alone
  book.both_faces("Q", kP, Angle::seconds(40), Angle::seconds(25));
  book.input.stations.erase(book.input.stations.end() - 2);  // face right alone
  const FieldResult r = book.reduce();
  ASSERT_EQ(r.points.size(), 2U);
  for (const ReducedPoint& p : r.points) {
    EXPECT_NEAR(distance(p.at, kP.at).in_metres(), 0, 1e-6) << p.point;
    EXPECT_NEAR((*p.height - kP.height).in_metres(), 0, 1e-6) << p.point;
  }
}

TEST(Faces, APairThatDisagreesIsTold) {
  MadeBook book;
  book.control("A", kA);
  for (const auto& [name, at] : {std::pair{"B", kB}, {"C", kC}}) book.control(name, at);
  book.stand("S1", "A", kA, 20);
  for (const auto& [name, at] : {std::pair{"B", kB}, {"C", kC}, {"P", kP}})
    book.both_faces(name, at, Angle{}, Angle{});
  *book.input.stations.back().zenith += Angle::seconds(60);
  *book.input.stations.back().slope_distance += m(0.03);
  const FieldResult r = book.reduce();
  ASSERT_EQ(r.head.findings.size(), 2U);
  EXPECT_EQ(r.head.findings[0].text,
            "setups.csv:6 and 7: both faces of \"P\" disagree in zenith angle by 60.0\" beyond the "
            "set-up's index");
  EXPECT_EQ(r.head.findings[1].code, "faces-disagree");
}

// Prism constant: D = reading + K, and the three-peg test K = AC - (AB + BC); derived. A wrong
// constant is a pure offset, free of scale.
TEST(Faces, ThePrismConstantIsAdded) {
  MadeBook book;
  for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}}) book.control(name, at);
  const auto point_with = [&](double constant_mm, double read_mm) {
    MadeBook copy = book;
    copy.stand("S1", "A", kA, 20);
    copy.sight("B", kB);
    auto& shot = copy.sight("P", kP);
    shot.prism_constant = Length::millimetres(constant_mm);
    *shot.slope_distance += Length::millimetres(read_mm);
    return copy.reduce().points.at(0);
  };
  EXPECT_NEAR(distance(point_with(-30, 30).at, kP.at).in_metres(), 0, 1e-6);
  EXPECT_NEAR(distance(point_with(17.5, -17.5).at, kP.at).in_metres(), 0, 1e-6);
  EXPECT_NEAR(distance(point_with(0, 30).at, kP.at).in_millimetres(), 30, 0.01);
  const double ab = 30.030, bc = 25.030, ac = 55.030;
  EXPECT_NEAR(ac - (ab + bc), -0.030, 1e-12);
}

TEST(WorkScale, AStatedFactorIsGridOverGround_work_scale_1) {
  FieldInput input;
  input.scale_factor = Ratio::of(0.9996);
  input.refraction = Ratio{};
  ResultHead head;
  const WorkScale work = work_scale(input, grid_point(500000, 700000), head);
  const Length above = m(400);
  const double ground_over_arc = (work.earth.radius + above) / work.earth.radius;
  EXPECT_NEAR(work.grid_over_arc({}, above).value() / ground_over_arc, 0.9996, 1e-12);
}

// TRAP-11: a 24 m side at a factor of 0.9996 is 9.6 mm shorter on the grid than on the ground, more
// than a peg's tolerance of 5 mm; derived.
TEST(WorkScale, ASideOnTheGroundIsNotThatOnTheGrid_trap_11) {
  MadeBook book;
  book.control("A", kA);
  book.control("B", kB);
  book.stand("S1", "A", kA, 20);
  book.sight("B", kB);
  const GridPosition side{ahead(kA.at, Bearing::degrees(77), m(24)), kA.height};
  book.sight("P", side);
  // the ground length is free of direction: control and point lie on a local grid
  const GridPoint on_ground = book.reduce().points.at(0).at;
  EXPECT_NEAR(distance(kA.at, on_ground).in_metres(), 24, 1e-6);
  book.input.scale_factor = Ratio::of(0.9996);
  book.input.control.points[1].at.at =
      ahead(kA.at, Bearing::of_line(kA.at, kB.at), distance(kA.at, kB.at) * 0.9996);
  const GridPoint on_grid = book.reduce().points.at(0).at;
  EXPECT_NEAR((m(24) - distance(kA.at, on_grid)).in_millimetres(), 9.6, 0.001);
}

TEST(WorkScale, ALocalGridHasGroundLengths_work_scale_2) {
  ResultHead head;
  const WorkScale work = work_scale({}, {}, head);
  const double arc_over_ground = work.earth.radius / (work.earth.radius + m(62));
  EXPECT_NEAR(work.grid_over_arc({}, m(62)).value() * arc_over_ground, 1, 1e-15);
  EXPECT_EQ(head.assumed.size(), 3U);
}

TEST(WorkScale, TheGridsOwnScaleIsUsedWhereNoneIsStated) {
  FieldInput input;
  input.crs = "EPSG:7855";
  ResultHead head;
  // GDA-3, Flinders Peak: GDA2020 Technical Manual v1.3, table C.1 p.74; seen
  const GridPoint flinders = grid_point(273741.297, 5796489.777);
  const WorkScale work = work_scale(input, flinders, head);
  EXPECT_NEAR(work.grid_over_arc(flinders, {}).value(), 1.0002305586, 1e-10);
  const GridPoint off{flinders.easting + m(3000), flinders.northing - m(2000)};
  EXPECT_NEAR(work.grid_over_arc(off, {}).value(),
              geodesy::Grid::open("EPSG:7855", {}).factors(off).point_scale.value(), 1e-10);
}

TEST(Intersection, LiesOnBothBearings_intersection_1) {
  const GridPoint a = grid_point(0, 0), b = grid_point(100, 20);
  for (const double from_a : {10.0, 80.0, 170.0, 260.0})
    for (const double from_b : {300.0, 5.0, 100.0}) {
      const auto p = intersection(a, Bearing::degrees(from_a), b, Bearing::degrees(from_b));
      ASSERT_TRUE(p);
      const auto off = [&](GridPoint from, double bearing) {
        return std::sin(Bearing::of_line(from, *p).from_north().in_radians() -
                        Angle::degrees(bearing).in_radians()) *
               distance(from, *p).in_metres();
      };
      EXPECT_NEAR(off(a, from_a), 0, 1e-9);
      EXPECT_NEAR(off(b, from_b), 0, 1e-9);
    }
}

TEST(Traverse, AdjustedDifferencesClose_traverse_1) {
  const Traverse t = closed_traverse(std::vector<TraverseLeg>{{Bearing::degrees(12), m(80)},
                                                              {Bearing::degrees(130), m(75)},
                                                              {Bearing::degrees(250), m(81)}});
  Length e, n;
  for (const auto& leg : t.legs) {
    e += leg.adjusted_east;
    n += leg.adjusted_north;
  }
  EXPECT_NEAR(e.in_metres(), 0, 1e-12);
  EXPECT_NEAR(n.in_metres(), 0, 1e-12);
}

LevelLine row(const std::string& point, std::optional<double> back, std::optional<double> between,
              std::optional<double> fore, std::optional<double> distance = std::nullopt) {
  const auto length = [](std::optional<double> v) {
    return v ? std::optional(Length::metres(*v)) : std::nullopt;
  };
  LevelLine line;
  line.point = point;
  line.backsight = length(back);
  line.intermediate = length(between);
  line.foresight = length(fore);
  line.distance = length(distance);
  line.place = {"levels.csv", 2, 1};
  return line;
}
constexpr std::nullopt_t kNone = std::nullopt;

// TRAP-14: a reading on an inverted staff enters with a minus sign: the soffit 2.1 m above a line
// of sight at 51.5 stands at 53.6, not at 49.4; derived.
TEST(LevelBook, AnInvertedStaffReadsUpward_trap_14) {
  FieldInput input;
  SurveyPoint mark;
  mark.at = grid_position(0, 0, 50);
  input.control.add(mark, "BM", "");
  input.levels = {row("BM", 1.5, kNone, kNone), row("soffit", kNone, -2.1, kNone),
                  row("end", kNone, kNone, 1.9)};
  ResultHead head;
  const LevelResult r = reduce_levels(input, {m(6371000), {}}, head);
  for (const LevelledPoint& p : r.points)
    EXPECT_NEAR(p.height.in_metres(),
                p.point == "soffit" ? 53.6
                : p.point == "BM"   ? 50
                                    : 49.6,
                1e-9);
  EXPECT_EQ(r.points.size(), 3U);
}

TEST(LevelBook, ThePageClosesAlsoUnderABeam_level_book_1) {
  const auto runs = open_level_book(
      std::vector<LevelLine>{row("BM", 1.5, kNone, kNone), row("soffit", kNone, -2.1, kNone),
                             row("T", 1.2, kNone, 0.7), row("end", kNone, kNone, 1.9)});
  const LevelPage& page = runs.at(0).page;
  EXPECT_NEAR((page.sum_backsight - page.sum_foresight).in_metres(), 0.1, 1e-12);
  EXPECT_NEAR((page.sum_rise - page.sum_fall).in_metres(), 0.1, 1e-12);
  EXPECT_NEAR(page.last_less_first.in_metres(), 0.1, 1e-12);
}

TEST(LevelBook, WhatTheBookWorkedOutIsCompared_level_book_2) {
  auto lines = std::vector<LevelLine>{row("BM", 1.5, kNone, kNone), row("P", kNone, 1.1, kNone),
                                      row("T", kNone, kNone, 0.7)};
  lines[0].booked.reduced_level = Elevation::metres(50);
  lines[0].booked.height_of_collimation = Elevation::metres(51.5);
  lines[1].booked.rise = m(0.4);
  lines[2].booked.fall = m(0.4);  // a rise, booked as a fall
  lines[2].booked.reduced_level = Elevation::metres(50.8);
  const auto runs = open_level_book(lines);
  EXPECT_FALSE(runs[0].page.agrees);
  ASSERT_EQ(runs[0].findings.size(), 1U);
  EXPECT_EQ(runs[0].findings[0].text,
            "levels.csv:2: rise less fall of point \"T\" is booked as -0.4000; the readings give "
            "0.4000");
}

// A page whose last rise is left blank was told to disagree, and no line was named for it.
TEST(LevelBook, APageWorkedOutInPartIsComparedRowByRow) {
  auto lines = std::vector<LevelLine>{row("BM", 1.5, kNone, kNone), row("T", 1.2, kNone, 0.7),
                                      row("BM", kNone, kNone, 2.0)};
  lines[1].booked.rise = m(0.8);
  const auto in_part = open_level_book(lines);
  EXPECT_TRUE(in_part[0].page.agrees);
  EXPECT_FALSE(in_part[0].page.booked_rise_less_fall);
  lines[2].booked.fall = m(0.8);
  EXPECT_NEAR(open_level_book(lines)[0].page.booked_rise_less_fall->in_metres(), 0, 1e-12);
  lines[2].booked.fall = m(0.9);
  // the level of T carries its error to the end
  lines[0].booked.reduced_level = Elevation::metres(50);
  lines[1].booked.reduced_level = Elevation::metres(50.9);
  lines[2].booked.reduced_level = Elevation::metres(50.1);
  const auto wrong = open_level_book(lines);
  EXPECT_FALSE(wrong[0].page.agrees);
  ASSERT_EQ(wrong[0].findings.size(), 2U);
  EXPECT_NE(wrong[0].findings[0].text.find("reduced level of point \"T\" is booked as 50.9000"),
            std::string::npos);
  EXPECT_NE(wrong[0].findings[1].text.find("rise less fall of point \"BM\""), std::string::npos);
}

TEST(LevelBook, RowsThatStandWhereTheyCannotAreRefused) {
  EXPECT_EQ(
      testing::refusal_text([] {
        open_level_book(std::vector<LevelLine>{row("P", kNone, 1, kNone), row("Q", kNone, kNone, 1),
                                               row("R", 1, kNone, kNone)});
      }),
      "levels.csv:2:1: an intermediate sight on point \"P\"; a backsight before it; correct "
      "the order of the rows, or fill in the missing reading\n"
      "levels.csv:2:1: a foresight on point \"Q\"; a backsight before it; correct the order of "
      "the rows, or fill in the missing reading\n"
      "levels.csv:2:1: a backsight that no reading follows on point \"R\"; an intermediate "
      "sight or a foresight after it; fill it in, or take out the row\n");
}

TEST(TwoPeg, ALevelWithoutErrorHasSlopeZero_two_peg_1) {
  const std::vector<TwoPegReading> seen = {{"1", "A", m(30), m(1.2)},
                                           {"1", "B", m(30), m(1.5)},
                                           {"2", "A", m(5), m(1.4)},
                                           {"2", "B", m(65), m(1.7)}};
  const Collimation c = two_peg_test(seen, kNone);
  EXPECT_NEAR(c.slope.value(), 0, 1e-15);
  EXPECT_NEAR(c.true_difference.in_metres(), -0.3, 1e-12);
}

TEST(TwoPeg, CorrectReadingsAgree_two_peg_2) {
  std::vector<TwoPegReading> seen = {{"1", "A", m(20), m(1.31)},
                                     {"1", "B", m(45), m(1.52)},
                                     {"2", "A", m(60), m(1.44)},
                                     {"2", "B", m(10), m(1.63)}};
  const Earth earth{m(6371000), Ratio::of(0.13)};
  const Collimation c = two_peg_test(seen, earth);
  EXPECT_NEAR(((c.correct[0].reading - c.correct[1].reading) -
               (c.correct[2].reading - c.correct[3].reading))
                  .in_metres(),
              0, 1e-12);
  seen.pop_back();
  EXPECT_NE(testing::refusal_text([&] { two_peg_test(seen, earth); }), "");
}

FieldInput level_job(std::initializer_list<LevelLine> lines) {
  FieldInput input;
  SurveyPoint a, b;
  a.at = grid_position(0, 0, 60);
  b.at = grid_position(0, 0, 61);
  input.control.add(a, "BM1", "");
  input.control.add(b, "BM2", "");
  input.levels = lines;
  return input;
}

TEST(LevelNet, ARunBetweenKnownPointsClosesOnBoth_level_net_1) {
  FieldInput input = level_job({row("BM1", 1.5, kNone, kNone), row("T", 1.4, kNone, 0.9, 100),
                                row("P", kNone, 1.0, kNone), row("BM2", kNone, kNone, 0.994, 100)});
  input.level_misclosure = Length::millimetres(12);
  ResultHead head;
  const LevelResult r = reduce_levels(input, {m(6371000), Ratio::of(0.13)}, head);
  // measured +1.006, known +1.000, halves of it on two legs of equal length
  EXPECT_NEAR(r.runs[0].misclosure->in_millimetres(), 6, 1e-9);
  EXPECT_EQ(r.runs[0].verdict, Verdict::DoesNotConform);
  for (const LevelledPoint& p : r.points) {
    const double h = p.height.in_metres();
    const double truth = p.point == "T" ? 60.597 : p.point == "P" ? 60.9955 : h;
    EXPECT_NEAR(h, truth, p.point == "P" ? 0.0016 : 1e-9) << p.point;
  }
}

TEST(LevelNet, TheAllowedMisclosureIsKRootK_level_net_2) {
  FieldInput input = level_job({row("BM1", 1.5, kNone, kNone), row("T", 1.4, kNone, 0.9, 1250),
                                row("BM2", kNone, kNone, 1.0, 1000)});
  ResultHead head;
  EXPECT_FALSE(reduce_levels(input, {m(6371000), {}}, head).runs[0].allowed);
  input.level_misclosure = Length::millimetres(12);
  EXPECT_NEAR(reduce_levels(input, {m(6371000), {}}, head).runs[0].allowed->in_millimetres(), 18,
              1e-9);
}

TEST(LevelNet, AMisclosureThatCannotBeJudgedIsSaid) {
  FieldInput input = level_job({row("BM1", 1.5, kNone, kNone), row("T", 1.4, kNone, 0.9, 100),
                                row("BM2", kNone, kNone, 0.994)});
  input.level_misclosure = Length::millimetres(12);
  ResultHead head;
  EXPECT_EQ(reduce_levels(input, {m(6371000), {}}, head).runs[0].verdict, Verdict::NotAsked);
  ASSERT_EQ(head.cautions.size(), 1U);
  EXPECT_EQ(head.cautions[0],
            "levels.csv:2: the run from \"BM1\" to \"BM2\" has no levelled length at every "
            "foresight: its misclosure is not judged");
}

TEST(LevelNet, ARunThatMeetsNoKnownHeightIsRefused) {
  const FieldInput input =
      level_job({row("X", 1.5, kNone, kNone), row("Y", kNone, kNone, 1.0, 100)});
  ResultHead head;
  EXPECT_NE(testing::refusal_text([&] {
              reduce_levels(input, {m(6371000), {}}, head);
            }).find("a level run from \"X\" that meets no known height"),
            std::string::npos);
}

}  // namespace
}  // namespace squaredig::field
