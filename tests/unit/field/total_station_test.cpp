#include "field/total_station.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "refusal_text.h"
#include "unit/field/made_book.h"

namespace squaredig::field {
namespace {

using testing::MadeBook;

const GridPosition kA = grid_position(715800, 734600, 62);
const GridPosition kB = grid_position(715900, 734620, 64);
const GridPosition kC = grid_position(715840, 734700, 61);
const GridPosition kD = grid_position(715780, 734680, 63);
const GridPosition kStation = grid_position(715842.5, 734651.25, 62.5);
const GridPosition kPoint = grid_position(715861.3, 734633.8, 62.2);

MadeBook with_control(testing::Standard sigmas = {}, std::optional<unsigned> seed = std::nullopt) {
  MadeBook book(sigmas, seed);
  book.control("A", kA);
  book.control("B", kB);
  book.control("C", kC);
  book.control("D", kD);
  return book;
}

void expect_at(const ReducedPoint& p, GridPosition true_place, double metres = 1e-6) {
  EXPECT_NEAR((p.at.easting - true_place.at.easting).in_metres(), 0, metres) << p.point;
  EXPECT_NEAR((p.at.northing - true_place.at.northing).in_metres(), 0, metres) << p.point;
  ASSERT_TRUE(p.height) << p.point;
  EXPECT_NEAR((*p.height - true_place.height).in_metres(), 0, metres) << p.point;
}

bool has_finding(const FieldResult& r, const std::string& code) {
  return std::any_of(r.head.findings.begin(), r.head.findings.end(),
                     [&](const Finding& f) { return f.code == code; });
}

std::string all_findings(const FieldResult& r) {
  std::string text;
  for (const Finding& f : r.head.findings) text += f.code + ": " + f.text + "\n";
  return text;
}

TEST(TotalStation, PerfectReadingsGiveTheTruePlaces_total_station_1) {
  MadeBook known = with_control();
  known.stand("S1", "A", kA, 33.3);
  known.sight("B", kB);
  known.sight("C", kC);
  known.sight("P", kPoint, "GL");
  const FieldResult r = known.reduce();
  ASSERT_EQ(r.points.size(), 1U);
  expect_at(r.points[0], kPoint);
  EXPECT_EQ(r.points[0].code, "GL");
  EXPECT_EQ(r.setups[0].kind, SetupKind::KnownStation);
  EXPECT_NEAR(r.setups[0].orientation.in_degrees(), 33.3, 1e-9);
  EXPECT_TRUE(r.head.findings.empty()) << all_findings(r);

  MadeBook free = with_control();
  free.stand("S1", "", kStation, 250);
  for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}}) free.sight(name, at);
  free.sight("P", kPoint);
  const FieldResult f = free.reduce();
  EXPECT_EQ(f.setups[0].kind, SetupKind::FreeStation);
  EXPECT_NEAR(distance(f.setups[0].at, kStation.at).in_metres(), 0, 1e-6);
  EXPECT_NEAR((*f.setups[0].height - kStation.height).in_metres(), 0, 1e-6);
  expect_at(f.points.at(0), kPoint);
}

TEST(TotalStation, ThreeDirectionsFixAFreeStation) {
  MadeBook book = with_control();
  book.stand("S1", "F", kStation, 10);
  for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}})
    book.sight(name, at).slope_distance = std::nullopt;
  book.sight("P", kPoint);
  const FieldResult r = book.reduce();
  EXPECT_NEAR(distance(r.setups[0].at, kStation.at).in_metres(), 0, 1e-6);
}

TEST(TotalStation, OneDistanceAndADirectionFixItWhereOnlyOnePlaceDoes) {
  MadeBook book = with_control();
  book.stand("S1", "F", kStation, 10);
  book.sight("A", kA);
  book.sight("B", kB).slope_distance = std::nullopt;
  book.sight("C", kC).slope_distance = std::nullopt;
  const FieldResult r = book.reduce();
  EXPECT_NEAR(distance(r.setups[0].at, kStation.at).in_metres(), 0, 1e-6);
}

TEST(TotalStation, ATraverseIsAdjustedAsOneNet) {
  MadeBook book = with_control();
  const GridPosition t1 = grid_position(715850, 734640, 62.3),
                     t2 = grid_position(715880, 734690, 62);
  book.stand("S1", "A", kA, 5);
  book.sight("B", kB);
  book.sight("T1", t1);
  book.stand("S2", "T1", t1, 77);
  book.sight("A", kA);
  book.sight("T2", t2);
  book.sight("P", kPoint);
  book.stand("S3", "T2", t2, 200);
  book.sight("T1", t1);
  book.sight("C", kC);
  const FieldResult r = book.reduce();
  ASSERT_EQ(r.setups.size(), 3U);
  EXPECT_EQ(r.setups[1].kind, SetupKind::TraverseStation);
  for (const ReducedPoint& p : r.points)
    expect_at(p, p.point == "P" ? kPoint : p.point == "T1" ? t1 : t2);
  EXPECT_EQ(r.points.size(), 3U);
  EXPECT_GT(r.setups[2].redundancy, 0.5);
  EXPECT_TRUE(r.head.findings.empty()) << all_findings(r);
}

TEST(TotalStation, TheOrderOfTheLinesDoesNotMatter_total_station_2) {
  MadeBook book = with_control({}, 7);
  book.stand("S1", "", kStation, 250);
  for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}, {"P", kPoint}})
    book.sight(name, at);
  const FieldResult r = book.reduce();
  std::reverse(book.input.stations.begin(), book.input.stations.end());
  const FieldResult back = book.reduce();
  EXPECT_NEAR(distance(r.points.at(0).at, back.points.at(0).at).in_metres(), 0, 1e-9);
  EXPECT_NEAR((*r.points[0].height - *back.points[0].height).in_metres(), 0, 1e-9);
}

TEST(TotalStation, OneWrongReadingIsLeftOutAndNamed_total_station_3) {
  MadeBook book = with_control();
  book.stand("S1", "", kStation, 250);
  for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}, {"D", kD}})
    book.sight(name, at);
  book.sight("P", kPoint);
  *book.input.stations[2].slope_distance += Length::metres(0.05);
  const FieldResult r = book.reduce();
  ASSERT_EQ(r.head.findings.size(), 1U) << all_findings(r);
  EXPECT_EQ(r.head.findings[0].text,
            "setups.csv:4: the distance to \"C\" is wrong by 50.0 mm; it is left out");
  expect_at(r.points.at(0), kPoint);
  // with two backsights, which direction is wrong cannot be told
  MadeBook two = with_control();
  two.stand("S1", "A", kA, 33);
  two.sight("B", kB);
  two.sight("C", kC);
  two.sight("P", kPoint);
  two.input.stations[0].horizontal += Angle::seconds(120);
  const FieldResult doubt = two.reduce();
  ASSERT_EQ(doubt.head.findings.size(), 1U) << all_findings(doubt);
  EXPECT_NE(doubt.head.findings[0].text.find("cannot be told apart: setups.csv:2 (direction to "
                                             "\"B\"), setups.csv:3 (direction to \"C\")"),
            std::string::npos)
      << all_findings(doubt);
  EXPECT_TRUE(doubt.points.empty());
  EXPECT_EQ(doubt.withheld.at(0).point, "P");
}

TEST(TotalStation, AWrongBacksightIsNamed) {
  MadeBook book = with_control();
  book.stand("S1", "A", kA, 33);
  book.sight("B", kB);
  book.sight("P", kPoint);
  book.input.stations[0].target = "C";
  const FieldResult r = book.reduce();
  EXPECT_TRUE(has_finding(r, "wrong-backsight")) << all_findings(r);
  EXPECT_NE(all_findings(r).find("setups.csv:2: what is booked as \"C\" was \"B\""),
            std::string::npos)
      << all_findings(r);
  EXPECT_TRUE(r.points.empty());
}

TEST(TotalStation, AWrongBacksightAmongSeveralIsNamed) {
  MadeBook book = with_control();
  book.stand("S1", "", kStation, 33);
  book.sight("A", kA);
  book.sight("B", kB);
  book.sight("C", kC);
  book.sight("D", kD);
  book.input.stations[3].target = "B";
  const FieldResult r = book.reduce();
  EXPECT_EQ(r.head.findings.at(0).code, "wrong-backsight") << all_findings(r);
  EXPECT_NE(all_findings(r).find("setups.csv:5: what is booked as \"B\" was \"D\""),
            std::string::npos)
      << all_findings(r);
}

TEST(TotalStation, SwappedTargetsAreNamed) {
  MadeBook book = with_control();
  book.stand("S1", "", kStation, 33);
  for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}, {"D", kD}})
    book.sight(name, at);
  std::swap(book.input.stations[1].target, book.input.stations[3].target);
  const FieldResult r = book.reduce();
  EXPECT_EQ(r.head.findings.at(0).code, "swapped-targets") << all_findings(r);
  EXPECT_NE(all_findings(r).find("setups.csv:3 and setups.csv:5: \"D\" and \"B\" have changed "
                                 "places"),
            std::string::npos)
      << all_findings(r);
}

TEST(TotalStation, AKnockedInstrumentIsNamed) {
  MadeBook book = with_control();
  book.stand("S1", "A", kA, 33);
  book.sight("B", kB);
  book.sight("C", kC);
  book.sight("D", kD);
  book.sight("P", kPoint);
  book.stand("S1", "A", kA, 33.05);
  book.sight("B", kB);
  book.sight("C", kC);
  const FieldResult r = book.reduce();
  EXPECT_EQ(r.head.findings.at(0).code, "bumped-setup") << all_findings(r);
  EXPECT_NE(all_findings(r).find("turned by 180\""), std::string::npos) << all_findings(r);
  EXPECT_TRUE(r.points.empty());
}

TEST(TotalStation, AWrongStationAndAWrongInstrumentHeightAreNamed) {
  MadeBook book = with_control();
  book.stand("S1", "A", kD, 33);
  book.sight("B", kB);
  book.sight("C", kC);
  const FieldResult r = book.reduce();
  EXPECT_EQ(r.head.findings.at(0).code, "wrong-station") << all_findings(r);
  EXPECT_NE(all_findings(r).find("did not stand on \"A\" but on \"D\""), std::string::npos);
  MadeBook high = with_control();
  high.stand("S1", "A", kA, 33, 1.6);
  for (const auto& [name, at] : {std::pair{"B", kB}, {"C", kC}, {"D", kD}}) high.sight(name, at);
  for (auto& shot : high.input.stations) shot.instrument_height = Length::metres(1.5);
  const FieldResult h = high.reduce();
  EXPECT_EQ(h.head.findings.at(0).code, "instrument-height") << all_findings(h);
  EXPECT_NE(all_findings(h).find("0.100 m higher than booked"), std::string::npos)
      << all_findings(h);
}

// RES-2: the danger circle (teaching notes of Ferris State, quoted): indeterminate on the circle.
TEST(TotalStation, TheDangerCircleIsNamed) {
  const auto on_circle = [](double degrees, double radius) {
    const Angle a = Angle::degrees(degrees);
    return grid_position(715850 + radius * sine(a), 734650 + radius * cosine(a), 62);
  };
  const auto book_at = [&](double radius) {
    MadeBook book({}, 3);
    book.control("A", on_circle(10, 60));
    book.control("B", on_circle(70, 60));
    book.control("C", on_circle(120, 60));
    book.stand("S1", "", on_circle(250, radius), 33);
    book.sight("A", on_circle(10, 60)).slope_distance = std::nullopt;
    book.sight("B", on_circle(70, 60)).slope_distance = std::nullopt;
    book.sight("C", on_circle(120, 60)).slope_distance = std::nullopt;
    return book;
  };
  const MadeBook exactly = book_at(60);
  std::string said = testing::refusal_text([&] { exactly.reduce(); });
  if (said.empty()) said = all_findings(exactly.reduce());
  EXPECT_NE(said.find("danger circle"), std::string::npos) << said;
  EXPECT_TRUE(has_finding(book_at(60.5).reduce(), "danger-circle"));
  EXPECT_FALSE(has_finding(book_at(40).reduce(), "danger-circle"));
  MadeBook with_distance = book_at(60);
  with_distance.sight("A", on_circle(10, 60));
  EXPECT_FALSE(has_finding(with_distance.reduce(), "danger-circle"));
}

TEST(TotalStation, WhatCannotBePlacedIsRefusedWithTheReason) {
  MadeBook book = with_control();
  book.stand("S1", "A", kA, 33);
  book.sight("P", kPoint);
  book.stand("S2", "", kStation, 33);
  book.sight("B", kB).slope_distance = std::nullopt;
  book.sight("C", kC).slope_distance = std::nullopt;
  EXPECT_EQ(
      testing::refusal_text([&] { book.reduce(); }),
      "setups.csv:2:1: set-up \"S1\" sights no point of known place; a backsight to a control "
      "point, or to a point fixed from another set-up; correct the book, or the control file\n"
      "setups.csv:3:1: set-up \"S2\": station \"set-up S2\" is not known and 2 targets of "
      "known place do not fix it; two known targets with distance, or three with directions; "
      "correct the book, or the control file\n");
}

TEST(TotalStation, WhatNothingChecksIsSaid) {
  MadeBook book = with_control();
  book.stand("S1", "A", kA, 33);
  book.sight("B", kB).slope_distance = std::nullopt;
  book.sight("P", kPoint);
  const FieldResult r = book.reduce();
  ASSERT_EQ(r.head.cautions.size(), 2U);
  EXPECT_NE(r.head.cautions[0].find("read in one face"), std::string::npos);
  EXPECT_NE(r.head.cautions[1].find("nothing checks the direction"), std::string::npos);
}

// TRAP-12: squares of seven-digit coordinates lose millimetres; the work is done near its own
// origin.
TEST(TotalStation, SevenDigitCoordinatesLoseNothing_trap_12) {
  const auto moved = [](GridPosition p, double e, double n) {
    return GridPosition{{p.at.easting + Length::metres(e), p.at.northing + Length::metres(n)},
                        p.height};
  };
  const auto point_at = [&](double e, double n) {
    MadeBook book({}, 11);
    for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}})
      book.control(name, moved(at, e, n));
    book.stand("S1", "", moved(kStation, e, n), 250);
    for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}})
      book.sight(name, moved(at, e, n));
    book.sight("P", moved(kPoint, e, n));
    const GridPoint p = book.reduce().points.at(0).at;
    return GridPoint{p.easting - Length::metres(e), p.northing - Length::metres(n)};
  };
  EXPECT_NEAR(distance(point_at(0, 0), point_at(-715000, 6000000)).in_metres(), 0, 2e-8);
}

TEST(Reduce, TheSameBooksGiveTheSameBits_reduce_2) {
  const auto once = [] {
    MadeBook book = with_control({}, 5);
    book.stand("S1", "", kStation, 250);
    for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}, {"C", kC}, {"P", kPoint}})
      book.sight(name, at);
    return book.reduce().points.at(0);
  };
  const ReducedPoint a = once(), b = once();
  EXPECT_EQ(a.at, b.at);
  EXPECT_EQ(*a.height, *b.height);
  EXPECT_EQ(a.covariance->ee, b.covariance->ee);
}

TEST(TotalStation, HeightsThatHangOnNothingAreNotGiven) {
  MadeBook book;
  for (const auto& [name, at] : {std::pair{"A", kA}, {"B", kB}}) book.control(name, at);
  for (SurveyPoint& p : book.input.control.points) p.has_height = false;
  book.stand("S1", "A", kA, 33);
  book.sight("B", kB);
  book.sight("P", kPoint);
  const FieldResult r = book.reduce();
  ASSERT_EQ(r.points.size(), 1U);
  EXPECT_FALSE(r.points[0].height);
  // heights are wanted for the scale alone: 62 m are 10 ppm
  EXPECT_NEAR(distance(r.points[0].at, kPoint.at).in_metres(), 0, 1e-3);
}

}  // namespace
}  // namespace squaredig::field
