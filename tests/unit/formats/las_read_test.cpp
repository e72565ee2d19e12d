// LAS in: versions, point formats, classes, scale and offset, withheld points, extra bytes.
#include "formats/las_read.h"

#include <gtest/gtest.h>

#include "refusal_text.h"
#include "unit/formats/made_las.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::las_bytes;
using squaredig::testing::MadeLas;
using squaredig::testing::put;
using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

PointsFile read(const MadeLas& made, std::vector<std::string> codes = {}) {
  SourceFile source = text_file(las_bytes(made), "c.las");
  source.codes = std::move(codes);
  return read_las_points(source);
}

std::string faults(const std::string& bytes) {
  return refusal_text([&] { read_las_points(text_file(bytes, "c.las")); });
}

TEST(LasRead, ScaleTimesNumberPlusOffsetInEveryVersionAndFormat_las_1) {
  for (const unsigned minor : {0U, 1U, 2U, 3U, 4U})
    for (unsigned format = 0; format <= (minor == 4 ? 10U : 5U); ++format)
      for (const std::size_t extra : {0U, 27U}) {
        SCOPED_TRACE("1." + std::to_string(minor) + " format " + std::to_string(format));
        MadeLas made;
        made.minor = minor;
        made.format = format;
        made.extra_bytes = extra;
        const auto file = read(made);
        ASSERT_EQ(file.points.size(), 3U);
        EXPECT_EQ(file.points.points[0].at,
                  grid_position(100250 * 0.001 + 715000, 200500 * 0.001 + 734000, 62000 * 0.001));
        EXPECT_EQ(file.points.code(0), "2");
        EXPECT_EQ(file.points.code(1), "1");
        EXPECT_EQ(file.points.label(1), "");
        EXPECT_EQ(file.points.points[2].line, 3U);
      }
}

TEST(LasRead, ClassesAreCodes) {
  const auto ground = read({}, {"2"});
  EXPECT_EQ(ground.points.size(), 2U);
  EXPECT_EQ(ground.record.read, 3U);
  EXPECT_EQ(ground.record.used, 2U);
  EXPECT_EQ(ground.record.set_aside, (std::vector<SetAside>{{2, "code \"1\" is not asked for"}}));
  EXPECT_TRUE(ground.cautions.empty());
  const auto all = read({});
  EXPECT_EQ(all.cautions, (std::vector<std::string>{
                              "c.las: points of every class are taken, 1 (1), 2 (2); codes = "
                              "[\"2\"] takes those classified as ground alone"}));
  EXPECT_EQ(read({}, {"9"}).cautions,
            (std::vector<std::string>{"c.las: no point has a code that is asked for"}));
}

TEST(LasRead, AClassOfAWholeByteFromFormatSixOn) {
  MadeLas made;
  made.minor = 4;
  made.format = 6;
  made.points[0].point_class = 64 + 2;
  EXPECT_EQ(read(made).points.code(0), "66");
}

TEST(LasRead, WithheldPointsAreSetAside) {
  for (const unsigned format : {1U, 7U}) {
    MadeLas made;
    made.minor = 4;
    made.format = format;
    made.points[2].withheld = true;
    const auto file = read(made);
    EXPECT_EQ(file.points.size(), 2U);
    EXPECT_EQ(file.points.code(0), "2");
    EXPECT_EQ(file.record.set_aside, (std::vector<SetAside>{{3, "the point is marked withheld"}}));
  }
}

TEST(LasRead, PointsAboveAnotherReturnAreTold) {
  for (const unsigned format : {1U, 7U}) {
    MadeLas made;
    made.minor = 4;
    made.format = format;
    for (auto& point : made.points) point.point_class = 2;
    made.points[0].returns = made.points[1].returns = 5;
    made.points[1].number = 5;
    EXPECT_EQ(read(made).cautions,
              (std::vector<std::string>{"c.las: of the points that are taken 1 lie above a later "
                                        "return of their pulse"}));
    EXPECT_TRUE(read(made, {"2"}).cautions.empty());
  }
}

TEST(LasRead, PointsOutsideTheWindowAreCountedAndNotKept_point_intake_1) {
  const SourceFile source = text_file(las_bytes({}), "c.las");
  PointsWanted wanted;
  wanted.keep = [](const GridPosition& p) { return p.at.easting > Easting::metres(715101); };
  const auto file = read_las_points(source, wanted);
  EXPECT_EQ(file.points.size(), 1U);
  EXPECT_EQ(file.record.used, 3U);
  EXPECT_EQ(file.extent.low(), grid_point(100250 * 0.001 + 715000, 200500 * 0.001 + 734000));
}

TEST(LasRead, ManyPointsComeInOrderAcrossChunks_las_2) {
  MadeLas made;
  made.points.clear();
  for (std::int32_t i = 0; i < 120000; ++i) made.points.push_back({i, -i, 2 * i});
  const auto file = read(made);
  ASSERT_EQ(file.points.size(), 120000U);
  for (const std::int32_t i : {0, 52427, 52428, 52429, 119999}) {
    const auto& point = file.points.points[static_cast<std::size_t>(i)];
    EXPECT_EQ(point.at.height.in_metres(), 2 * i * 0.001);
    EXPECT_EQ(point.line, static_cast<unsigned>(i) + 1);
  }
}

TEST(LasRead, WhatTheHeaderSaysOfItsPointsIsHeldAgainstThem) {
  std::string bytes = las_bytes({});
  put(bytes, 211, 60.0);  // greatest height, below the points
  put(bytes, 219, 50.0);
  SourceFile source = text_file(bytes + std::string(20, 'x'), "c.las");
  source.codes = {"1", "2"};
  EXPECT_EQ(read_las_points(source).cautions,
            (std::vector<std::string>{
                "c.las: points lie outside the box that the header states",
                "c.las: 20 bytes behind the points that the header counts are not read"}));
}

TEST(LasRead, HeadersThatCannotBe) {
  EXPECT_EQ(faults(""), "c.las:1:1: an empty file; a LAS file; export the file again\n");
  EXPECT_EQ(faults("PK\x03\x04"),
            "c.las:1:1: a file that does not begin with LASF; a LAS file; export the file again\n");
  const std::string good = las_bytes({});
  EXPECT_EQ(faults(good.substr(0, 226)),
            "c.las:1:1: a header of 226 bytes; the 227 bytes of LAS 1.0; export the file again\n");
  const auto with = [&](std::size_t at, auto value) {
    std::string bytes = good;
    put(bytes, at, value);
    return faults(bytes);
  };
  EXPECT_EQ(with(25, std::uint8_t{5}),
            "c.las:1:1: LAS version 1.5; LAS 1.0 to 1.4; export the file again\n");
  EXPECT_EQ(with(24, std::uint8_t{2}),
            "c.las:1:1: LAS version 2.2; LAS 1.0 to 1.4; export the file again\n");
  EXPECT_EQ(with(94, std::uint16_t{200}),
            "c.las:1:1: a header of 200 bytes; a header of 227 bytes or more, as LAS 1.2 has; "
            "export the file again\n");
  EXPECT_EQ(with(104, std::uint8_t{11}),
            "c.las:1:1: point format 11; formats 0 to 10; export the file again\n");
  EXPECT_EQ(with(105, std::uint16_t{19}),
            "c.las:1:1: points of 19 bytes; 20 bytes or more, as format 0 has; export the file "
            "again\n");
  EXPECT_EQ(with(96, std::uint32_t{5000}),
            "c.las:1:1: points that begin at byte 5000; a place behind the header and inside the "
            "file's 287 bytes; export the file again\n");
  EXPECT_EQ(with(100, std::uint32_t{1069128089}),
            "c.las:1:1: 1069128089 variable length records in 0 bytes; at most 0 there; export "
            "the file again\n");
  EXPECT_EQ(with(107, std::uint32_t{1065}),
            "c.las:1:1: 1065 points counted, 3 present; every point that the header counts; "
            "export the file again\n");
  EXPECT_EQ(with(131, 0.0),
            "c.las:1:1: a scale of easting that is no number above 0; a number above 0; "
            "export the file again\n");
  EXPECT_EQ(with(139, std::numeric_limits<double>::quiet_NaN()),
            "c.las:1:1: a scale of northing that is no number above 0; a number above 0; "
            "export the file again\n");
  EXPECT_EQ(with(171, std::numeric_limits<double>::infinity()),
            "c.las:1:1: an offset of height that is not finite; a number; export the file "
            "again\n");
  EXPECT_EQ(with(107, std::uint32_t{0}),
            "c.las:1:1: no points; a file with points; export the points\n");
}

TEST(LasRead, CountsOfVersionFour) {
  MadeLas made;
  made.minor = 4;
  const std::string good = las_bytes(made);
  std::string bytes = good;
  put(bytes, 107, std::uint32_t{0});  // the older count may be left out
  EXPECT_EQ(faults(bytes), "");
  put(bytes, 107, std::uint32_t{2});
  EXPECT_EQ(faults(bytes),
            "c.las:1:1: two numbers of points, 2 and 3; one number, or 0 as the older one; export "
            "the file again\n");
  put(bytes, 107, std::uint32_t{0});
  put(bytes, 247, ~std::uint64_t{0});
  EXPECT_EQ(faults(bytes),
            "c.las:1:1: 18446744073709551615 points counted, 3 present; every point that the "
            "header counts; export the file again\n");
  bytes = good;
  put(bytes, 243, std::uint32_t{7});
  EXPECT_EQ(faults(bytes),
            "c.las:1:1: 7 extended records at byte 435; records behind the points and inside the "
            "file; export the file again\n");
}

TEST(LasRead, CompressedPointsAreRefusedWithWhatToDo) {
  std::string bytes = las_bytes({});
  put(bytes, 104, std::uint8_t{0x80});
  EXPECT_EQ(faults(bytes),
            "c.las:1:1: compressed points (LAZ); a LAS file, which is not compressed; convert "
            "it with the program that made it, and name the .las file\n");
}

TEST(LasRead, AFileOverTheRangeOfNumbersIsRefused) {
  MadeLas made;
  made.scale = 1e303;
  EXPECT_NE(faults(las_bytes(made)).find("c.las:1:1: a coordinate that is not finite;"),
            std::string::npos);
}

}  // namespace
}  // namespace squaredig::formats
