#include "quantity/angle.h"

#include <gtest/gtest.h>

#include <random>

#include "quantity/angle_text.h"

namespace squaredig {
namespace {

using enum AngleNotation;

TEST(AngleText, WhatWasWrittenReadsBack_angle_text_1) {
  constexpr unsigned kSeed = 20260302;
  std::mt19937 random(kSeed);
  std::uniform_real_distribution<double> turn(-720, 720);
  for (int i = 0; i < 2000; ++i) {
    const Angle angle = Angle::degrees(turn(random));
    for (int decimals : {0, 1, 2, 4}) {
      const auto back = parse_angle(dms_text(angle, decimals), DegreesMinutesSeconds);
      ASSERT_TRUE(back) << dms_text(angle, decimals) << " seed " << kSeed;
      const double half_digit = 0.5 * std::pow(10.0, -decimals);
      EXPECT_LE(std::abs((*back - angle).in_seconds()), half_digit + 1e-8) << "seed " << kSeed;
    }
  }
}

// Survey check TRAP-5 (derived): packed 305.170172 means 305 17 01.72 = 305.28381111.
TEST(AngleText, SexagesimalIsReadByItsParts_trap_5) {
  const auto angle = parse_angle("305 17 01.72", DegreesMinutesSeconds);
  ASSERT_TRUE(angle);
  EXPECT_NEAR(angle->in_degrees(), 305.28381111, 5e-9);
  for (const char* text : {"305-17-01.72", "305:17:01.72", " 305  17  01.72 ",
                           "305\xC2\xB0 17\xE2\x80\xB2 01.72\xE2\x80\xB3",
                           "305\xC2\xB0"
                           "17'01.72\""})
    EXPECT_EQ(parse_angle(text, DegreesMinutesSeconds), angle) << text;
  EXPECT_EQ(parse_angle("-0 00 30", DegreesMinutesSeconds), Angle::seconds(-30));
}

// Survey check TRAP-5 (derived): reject MM >= 60 or SS >= 60, and a packed value is not guessed at.
TEST(AngleText, RefusesWhatIsNotAnAngle_trap_5) {
  for (const char* text :
       {"305.170172", "305 60 00", "305 17 60", "305 17 60.0", "305 17", "305", "", "1 2 3 4",
        "a b c", "10 -5 00", "10 5 -1", "1.5 10 10", "10 1.5 10", "10 10 nan", "305 17 01.72x"})
    EXPECT_FALSE(parse_angle(text, DegreesMinutesSeconds)) << text;
  for (const char* text : {"305 17 01.72", "1,5", "inf", ""})
    EXPECT_FALSE(parse_angle(text, DecimalDegrees)) << text;
}

// Survey check TRAP-5 (derived): misread as decimal, the packed bearing is 0.11364 degrees off,
// 99.2 mm at 50 m.
TEST(AngleText, APackedValueReadAsDecimalDegreesIsTheKnownBlunder_trap_5) {
  const Angle right = *parse_angle("305 17 01.72", DegreesMinutesSeconds);
  const Angle wrong = *parse_angle("305.170172", DecimalDegrees);
  EXPECT_NEAR((right - wrong).in_degrees(), 0.11364, 5e-6);
  EXPECT_NEAR((right - wrong).in_radians() * 50, 0.0992, 5e-5);
}

// Survey check TRAP-5 (derived): 45.5960 packed must never be printed, it is 46 00 00.
TEST(AngleText, CarriesAreMadeBeforePrinting_trap_5) {
  EXPECT_EQ(dms_text(Angle::degrees(45) + Angle::seconds(3599.999), 0), "46 00 00");
  EXPECT_EQ(dms_text(Angle::degrees(45) + Angle::seconds(3599.96), 1), "46 00 00.0");
  EXPECT_EQ(dms_text(Angle::degrees(45) + Angle::seconds(3599.94), 1), "45 59 59.9");
  EXPECT_EQ(dms_text(Angle::seconds(59.99), 1), "0 01 00.0");
  EXPECT_EQ(dms_text(Angle::degrees(305) + Angle::seconds(1021.72), 2), "305 17 01.72");
  EXPECT_EQ(dms_text(Angle::seconds(-0.4), 0), "0 00 00");
  EXPECT_EQ(dms_text(Angle::seconds(-30), 0), "-0 00 30");
}

// Survey check TRAP-6 (derived): 400 gon = 360 degrees, 1 gon = 54' exactly.
TEST(AngleText, GonsAreNotDegrees_trap_6) {
  EXPECT_EQ(parse_angle("100.0000", Gon)->in_degrees(), 90);
  EXPECT_EQ(parse_angle("100.0000", DecimalDegrees)->in_degrees(), 100);
  EXPECT_EQ(dms_text(Angle::gons(1), 3), "0 54 00.000");
  EXPECT_NEAR(Angle::gons(400).in_degrees(), 360, 1e-12);
  EXPECT_EQ(gon_text(Angle::degrees(90), 4), "100.0000");
  EXPECT_EQ(gon_text(*parse_angle("339.1834", AngleNotation::Gon), 4), "339.1834");
}

// Survey check TRAP-7 (derived): zenith FL 85 00 10, FR 274 59 40 give 85 00 15, index error -5";
// horizontal 359 59 58 and 180 00 04 give 0 00 01.
TEST(Angle, BothFacesAreMeanedAcrossTheWrap_trap_7) {
  const auto dms = [](const char* text) { return *parse_angle(text, DegreesMinutesSeconds); };
  const Angle left = dms("85 00 10");
  const Angle right = dms("274 59 40");
  const Angle mean = (left + Angle::degrees(360) - right) / 2;
  EXPECT_EQ(dms_text(mean, 0), "85 00 15");
  EXPECT_EQ(dms_text(left - mean, 0), "-0 00 05");
  const Bearing face_left = Bearing::degrees(dms("359 59 58").in_degrees());
  const Bearing face_right = Bearing::degrees(dms("180 00 04").in_degrees() - 180);
  const Bearing middle = face_left + Bearing::clockwise(face_left, face_right) / 2;
  EXPECT_EQ(dms_text(middle.from_north(), 0), "0 00 01");
}

TEST(Angle, QuarterTurnsAreExact) {
  for (int quarter = -8; quarter <= 8; ++quarter) {
    const Angle a = Angle::degrees(90.0 * quarter);
    const int q = ((quarter % 4) + 4) % 4;
    EXPECT_EQ(sine(a), (std::array{0, 1, 0, -1})[static_cast<std::size_t>(q)]) << quarter;
    EXPECT_EQ(cosine(a), (std::array{1, 0, -1, 0})[static_cast<std::size_t>(q)]) << quarter;
  }
  EXPECT_NEAR(sine(Angle::degrees(37.5)), std::sin(37.5 * std::numbers::pi / 180), 1e-16);
}

TEST(Bearing, IsKeptInOneTurn) {
  EXPECT_EQ(Bearing::degrees(-90).in_degrees(), 270);
  EXPECT_EQ(Bearing::degrees(720).in_degrees(), 0);
  EXPECT_EQ(Bearing::degrees(-1e-300).in_degrees(), 0);
  EXPECT_EQ((Bearing::degrees(350) + Angle::degrees(20)).in_degrees(), 10);
}

// Survey check TRAP-2 (derived): swapped axes turn the bearing b into 90 - b.
TEST(Bearing, RunsClockwiseFromNorth_trap_2) {
  const GridPoint o = grid_point(1000, 2000);
  EXPECT_EQ(Bearing::of_line(o, grid_point(1010, 2000)).in_degrees(), 90);
  EXPECT_EQ(Bearing::of_line(o, grid_point(1000, 1990)).in_degrees(), 180);
  const double b = Bearing::of_line(o, grid_point(1003, 2004)).in_degrees();
  EXPECT_NEAR(Bearing::of_line(o, grid_point(1004, 2003)).in_degrees(), 90 - b, 1e-12);
}

TEST(Bearing, AheadThenRight) {
  const GridPoint p =
      ahead(grid_point(100, 200), Bearing::degrees(90), Length::metres(5), Length::metres(2));
  EXPECT_EQ(p, grid_point(105, 198));
  EXPECT_EQ(distance(grid_point(0, 0), grid_point(3, 4)).in_metres(), 5);
}

}  // namespace
}  // namespace squaredig
