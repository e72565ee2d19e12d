// Field books in: total station, levels, GNSS, pairs; and the geoid file.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <filesystem>

#include "formats/field_json.h"
#include "formats/field_points_csv.h"
#include "formats/geoid_file.h"
#include "formats/gnss_csv.h"
#include "formats/levels_csv.h"
#include "formats/pairs_csv.h"
#include "formats/points_csv.h"
#include "formats/stations_csv.h"
#include "other_program.h"
#include "refusal_text.h"
#include "shared_data.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::refusal_text;
using squaredig::testing::text_file;
constexpr auto kDms = AngleNotation::DegreesMinutesSeconds;

const std::string kHeader =
    "setup,station,instrument_height,target,target_height,horizontal,zenith,slope_distance,face,"
    "code\n";

std::string stations_fault(const std::string& rows, AngleNotation notation = kDms) {
  return refusal_text([&] { read_stations_csv(text_file(kHeader + rows), notation); });
}

TEST(StationsCsv, RowsAreReadAndSetUpsCarried) {
  const auto file =
      read_stations_csv(text_file(kHeader + "S1,CP1,1.55,CP2,1.5,10 00 30,89 30 00,50.123,L,CP\n"
                                            "S1,,,P1,1.6,305 17 01.72,270 45 00,20.5,,GL\n"),
                        kDms);
  ASSERT_EQ(file.shots.size(), 2U);
  EXPECT_EQ(file.shots[1].station, "CP1");
  EXPECT_EQ(file.shots[1].instrument_height, Length::metres(1.55));
  EXPECT_EQ(file.shots[1].face, field::Face::Right);
  EXPECT_EQ(file.shots[0].face, field::Face::Left);
  EXPECT_NEAR(file.shots[1].horizontal.in_degrees(), 305.28381111, 1e-8);
  EXPECT_EQ(file.shots[1].code, "GL");
  EXPECT_EQ(file.shots[1].place, (Place{"g.csv", 3, 6}));
  EXPECT_EQ(file.record.read, 2U);
}

// TRAP-5: 305.170172 packed means 305 17 01.72 = 305.28381111 degrees; read as decimal it is
// 0.11364 degrees off, 99.2 mm at 50 m; derived.
TEST(StationsCsv, PackedAnglesAreRefusedWhereTheyAreAmbiguous_trap_5) {
  EXPECT_EQ(
      stations_fault("S1,CP1,1.55,CP2,1.5,305.170172,89 30 00,50.1,L,\n"),
      "g.csv:2:21: horizontal \"305.170172\" could be packed or decimal degrees; degrees "
      "minutes seconds such as 305 17 01.7; write degrees, minutes and seconds apart, or state "
      "angles in [field]\n");
  EXPECT_NEAR(Angle::degrees(305.28381111 - 305.170172).in_radians() * 50, 0.0992, 5e-5);
  EXPECT_NE(stations_fault("S1,CP1,1.55,CP2,1.5,305 60 01,89 30 00,50.1,L,\n"), "");
}

// TRAP-6: 400 gon = 360 degrees; 100.0000 is a right angle only in gon; derived.
TEST(StationsCsv, ItsOwnFacesProveAWrongNotation_stations_csv_1) {
  const std::string gon =
      "S1,CP1,1.55,CP2,1.5,10.0,99.5,50.1,L,\nS1,CP1,1.55,CP2,1.5,210.0,300.5,50.1,R,\n";
  EXPECT_NE(stations_fault(gon, AngleNotation::DecimalDegrees)
                .find("g.csv:3:27: both faces sum to a whole circle only when read as gon"),
            std::string::npos)
      << stations_fault(gon, AngleNotation::DecimalDegrees);
  const std::string packed =
      "S1,CP1,1.55,CP2,1.5,10.0010,85.0010,50.1,L,\nS1,CP1,1.55,CP2,1.5,190.0010,274.5940,50.1,R,"
      "\n";
  EXPECT_NE(stations_fault(packed, AngleNotation::DecimalDegrees)
                .find("only when read as packed degrees minutes seconds"),
            std::string::npos);
  EXPECT_NE(
      stations_fault("S1,CP1,1.55,CP2,1.5,380.0,89.5,50.1,L,\n", AngleNotation::DecimalDegrees)
          .find("angles = \"gon\""),
      std::string::npos);
  const auto right = read_stations_csv(text_file(kHeader + gon), AngleNotation::Gon);
  EXPECT_NEAR(right.shots[0].zenith->in_degrees(), 89.55, 1e-12);
}

TEST(StationsCsv, EveryFaultHasItsPlace) {
  EXPECT_EQ(
      stations_fault("S1,CP1,1.55,CP2,1.5,10 00 00,274 30 00,50.1,L,\n"
                     "S1,CP9,1.60,CP2,1.5,10 00 00,89 30 00,-3,X,\n"
                     "S2,CP1,,CP2,1.5,10 00 00,89 30 00,5,L,\n"
                     "S3,CP1,1.5,CP2,,10 00 00,89 30 00,5,L,\n"
                     "S3,CP1,1.5,CP3,1.5,10 00 00,,5,L,\n"),
      "g.csv:2:45: face left with a zenith angle of face right: \"274 30 00\"; zenith angles "
      "below half the circle in face left, above it in face right; correct the face or the "
      "angle\n"
      "g.csv:3:4: station \"CP9\" in set-up \"S1\"; one station for a set-up, here \"CP1\"; give "
      "the set-up another name where the instrument was moved\n"
      "g.csv:3:8: a second instrument height in set-up \"S1\"; one instrument height for a "
      "set-up; correct it, or give the set-up another name where the instrument was moved\n"
      "g.csv:3:39: slope distance \"-3\"; a length above zero; correct it, or leave it blank\n"
      "g.csv:3:42: face \"X\"; L or R, or nothing; correct the cell\n"
      "g.csv:4:8: no instrument height in set-up \"S2\"; the height of the instrument above its "
      "mark; fill it in\n"
      "g.csv:5:16: no target_height of setup \"S3\"; a number; fill it in or take out the row\n"
      "g.csv:6:29: a slope distance without a zenith angle; both, or neither; fill in the "
      "zenith angle\n");
}

TEST(StationsCsv, AirNeedsItsReference) {
  const std::string header =
      "setup,station,instrument_height,target,target_height,horizontal,zenith,slope_distance,"
      "temperature_c,pressure_hpa,reference_temperature_c,reference_pressure_hpa,prism_constant_"
      "mm\n";
  const auto file = read_stations_csv(
      text_file(header + "S1,A,1.5,B,1.5,0 00 00,90 00 00,50,21,1008,12,1013.25,-30\n"
                         "S1,,,C,1.5,9 00 00,90 00 00,60,,,,,\n"),
      kDms);
  ASSERT_TRUE(file.shots[1].air);
  EXPECT_EQ(file.shots[1].air->met.temperature_c, 21);
  EXPECT_EQ(file.shots[0].prism_constant, Length::millimetres(-30));
  EXPECT_EQ(
      refusal_text([&] {
        read_stations_csv(text_file(header + "S1,A,1.5,B,1.5,0 00 00,90 00 00,50,21,1008,,,\n"),
                          kDms);
      }),
      "g.csv:2:44: no reference_temperature_c; the air for which the instrument shows distances "
      "uncorrected; fill it in, or leave the air out where the instrument has corrected for "
      "it\n");
}

TEST(LevelsCsv, RowsHoldOneReadingOrAChangePoint_levels_csv_1) {
  const auto file = read_levels_csv(text_file(
      "point,backsight,intermediate,foresight,distance,rise,reduced_level\nBM,1.5,,,,,50\n"
      "P,,-2.1,,,,\nT,1.2,,0.7,60,0.8,50.8\n"));
  ASSERT_EQ(file.lines.size(), 3U);
  EXPECT_EQ(*file.lines[1].intermediate, Length::metres(-2.1));
  EXPECT_EQ(*file.lines[2].booked.rise, Length::metres(0.8));
  EXPECT_EQ(
      refusal_text([] {
        read_levels_csv(
            text_file("point,backsight,intermediate,foresight,distance\nA,,,,\n"
                      "B,1,2,,\nC,,,1,-5\n"));
      }),
      "g.csv:2:3: no reading on point \"A\"; a backsight, an intermediate sight or a foresight; "
      "fill it in or take out the row\n"
      "g.csv:3:5: an intermediate sight beside another reading; one reading in a row, or "
      "foresight and backsight of a change point; give the readings rows of their own\n"
      "g.csv:4:7: distance \"-5\"; zero or more; correct the cell\n");
  EXPECT_EQ(
      read_two_peg_csv(text_file("setup,staff,distance,reading\n1,A,40,1.32\n")).readings.size(),
      1U);
}

TEST(GnssCsv, AnglesOutsideTheirRangeNeverComeThrough_gnss_csv_1) {
  const auto file = read_gnss_csv(text_file(
      "point,latitude,longitude,ellipsoid_height,fix,antenna_height\nP,-23 40 12.3965,133.885522,"
      "603.2489,4,2.0\n"));
  EXPECT_NEAR(file.points.at(0).latitude.in_degrees(), -23.670110138889, 1e-12);
  EXPECT_EQ(file.points[0].fix, "4");
  EXPECT_EQ(file.points[0].antenna_height, Length::metres(2));
  EXPECT_EQ(refusal_text([] {
              read_gnss_csv(text_file(
                  "point,latitude,longitude,ellipsoid_height\nP,133.8,-23.6,603\nQ,53,400,1\n"));
            }),
            "g.csv:2:3: latitude \"133.8\"; degrees from -90 to 90; correct the cell\n"
            "g.csv:3:6: longitude \"400\"; degrees from -360 to 360; correct the cell\n");
}

TEST(PairsCsv, MeasuredCoordinatesComeTogetherOrNotAtAll_pairs_csv_1) {
  const auto file = read_pairs_csv(text_file(
      "point,easting,northing,height,measured_easting,measured_northing\nA,1,2,3,4,5\nB,6,7,,,\n"));
  EXPECT_TRUE(file.pairs.at(0).measured);
  EXPECT_FALSE(file.pairs.at(1).measured);
  EXPECT_EQ(
      refusal_text([] {
        read_pairs_csv(text_file(
            "point,easting,northing,measured_easting,measured_northing\nA,1,2,4,\nA,1,2,,\n"));
      }),
      "g.csv:2:9: one measured coordinate of point \"A\"; measured easting and northing, or "
      "neither; fill in the other\n"
      "g.csv:3:1: point \"A\" again, first in line 2; one pair for a point; take out or rename "
      "one of the two\n");
}

field::FieldResult made_result() {
  field::FieldResult r;
  r.head.job = "Alderbrook";
  r.points = {
      {"P1",
       "GL",
       grid_point(715830.1234567, 734697.7654321),
       Elevation::metres(62.1),
       field::Covariance{4e-6, 1e-6, 9e-6, 0, 0, 1e-6},
       "set-up S1",
       1,
       {"setups.csv", 4, 1}},
      {"P2", "", grid_point(1, 2), std::nullopt, std::nullopt, "GNSS", 2, {"gnss.csv", 2, 1}}};
  return r;
}

TEST(FieldPointsCsv, ReadsBackAsAPointsFile_field_points_csv_1) {
  PointsWanted wanted;
  wanted.heights = Heights::Optional;
  const auto back = read_points_csv(text_file(field_points_csv(made_result())), wanted);
  ASSERT_EQ(back.points.size(), 2U);
  EXPECT_EQ(back.points.label(0), "P1");
  EXPECT_EQ(back.points.code(0), "GL");
  EXPECT_EQ(back.points.points[0].at, grid_position(715830.1234567, 734697.7654321, 62.1));
  EXPECT_NEAR(back.points.points[0].sigma_plan()->in_millimetres(), 3, 1e-6);
  EXPECT_FALSE(back.points.points[1].has_height);
}

TEST(FieldJson, WhatWasNotComputedIsNull_field_json_1) {
  const std::string text = field_json(made_result(), "1.0");
  EXPECT_NE(text.find("\"easting\": 715830.1234567,"), std::string::npos);
  EXPECT_NE(text.find("\"sigma_n_mm\": 3.0"), std::string::npos);
  EXPECT_NE(text.find("\"height\": null"), std::string::npos);
  EXPECT_NE(text.find("\"levels\": null"), std::string::npos);
  EXPECT_NE(text.find("\"fit\": null"), std::string::npos);
}

GeoidFile geoid(const std::filesystem::path& path) {
  SourceFile source;
  source.path = path.string();
  source.name = path.filename().string();
  return read_geoid_file(source, {"job.toml", 6, 9});
}

TEST(GeoidFile, NodesAreReadWithTheirPlaces) {
  SQUAREDIG_NEEDS_SHARED_DATA("geoid/egm96_15_downsampled.gtx");
  const GeoidFile file = geoid(squaredig::testing::shared_data("geoid/egm96_15_downsampled.gtx"));
  EXPECT_EQ(file.grid.rows, 180U);
  EXPECT_EQ(file.grid.columns, 360U);
  EXPECT_EQ(file.record.read, 64800U);
  const GeoidFile tiff =
      geoid(squaredig::testing::shared_data("geoid/test_vgrid_pixelispoint.tif"));
  EXPECT_NEAR(tiff.grid.west.in_degrees(), 4, 1e-12);
  EXPECT_NEAR(tiff.grid.north.in_degrees(), 55, 1e-12);
}

// A GTX by its layout: latitude and longitude of the first node, their steps, rows and columns, and
// the nodes, all with the most significant byte first. From memory; GDAL's driver reads it.
template <class Number>
void put(std::string& bytes, Number number) {
  std::array<char, sizeof number> raw{};
  std::memcpy(raw.data(), &number, sizeof number);
  bytes.append(raw.rbegin(), raw.rend());
}
std::string gtx(std::int32_t rows, std::int32_t columns, std::size_t nodes) {
  std::string bytes;
  for (const double value : {53.0, -8.0, 0.25, 0.5}) put(bytes, value);
  put(bytes, rows);
  put(bytes, columns);
  for (std::size_t i = 0; i < nodes; ++i) put(bytes, 57.0F + static_cast<float>(i));
  return bytes;
}

TEST(GeoidFile, NothingBesideItIsLookedAt_geoid_file_2) {
  const auto beside = squaredig::testing::text_file(
      "<PAMDataset><GeoTransform>0, 1, 0, 10, 0, -1</GeoTransform><PAMRasterBand band=\"1\">"
      "<NoDataValue>57</NoDataValue></PAMRasterBand></PAMDataset>",
      "g.gtx.aux.xml");
  const GeoidFile file = geoid(squaredig::testing::text_file(gtx(2, 3, 6), "g.gtx").path);
  EXPECT_EQ(file.grid.west.in_degrees(), -8);
  EXPECT_EQ(file.grid.north.in_degrees(), 53.25);
  EXPECT_EQ(file.grid.step_longitude.in_degrees(), 0.5);
  EXPECT_EQ(file.grid.separation_m, (std::vector<float>{60, 61, 62, 57, 58, 59}));
  std::filesystem::remove(beside.path);
}

TEST(GeoidFile, SizesThatAreOnlyClaimedTakeNoMemory) {
  for (const std::int32_t side : {1000, 7000, 40000, 2000000000}) {
    const auto source = squaredig::testing::text_file(gtx(side, side, 6), "g.gtx");
    EXPECT_NE(refusal_text([&] { geoid(source.path); }), "") << side;
  }
  // fifty thousand bands, each row of them a block (found by a fuzzer)
  if (!squaredig::testing::has_program("gdal_create")) GTEST_SKIP() << "no gdal_create";
  const auto bands = squaredig::testing::text_file("", "bands.tif");
  squaredig::testing::output_of(
      "gdal_create -q -of GTiff -ot Float32 -outsize 1440 2 -bands 50000 -co INTERLEAVE=PIXEL -co "
      "SPARSE_OK=TRUE -a_srs EPSG:4937 -a_ullr -180 90 180 -90 " +
      bands.path);
  EXPECT_EQ(refusal_text([&] { geoid(bands.path); }),
            "job.toml:6:9: the geoid file \"bands.tif\" has 50000 bands in rows of blocks of 288 "
            "MB; 256 MB at most; write its separations alone, in strips or tiles\n");
}

TEST(GeoidFile, DamagedFilesAreRefusedWhole_geoid_file_1) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/geoid/hand_truncated.gtx");
  for (const char* name :
       {"hand_truncated.gtx", "egm96_15_uncompressed_truncated.tif",
        "test_vgrid_single_strip_truncated.tif", "test_vgrid_unsupported_byte.tif",
        "test_vgrid_invalid_channel_type.tif"}) {
    const auto path = squaredig::testing::shared_data(std::string("malformed/geoid/") + name);
    EXPECT_NE(refusal_text([&] { geoid(path); }).find("job.toml:6:9: the geoid file"),
              std::string::npos)
        << name;
  }
  EXPECT_NE(refusal_text([] { geoid("@missing.gtx"); }), "");
  EXPECT_NE(refusal_text([] { geoid("/nowhere/geoid.gtx"); }), "");
}

}  // namespace
}  // namespace squaredig::formats
