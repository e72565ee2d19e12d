#include <gtest/gtest.h>

#include "formats/points_csv.h"
#include "refusal_text.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::text_file;

std::string faults(const std::string& bytes) {
  return squaredig::testing::refusal_text([&] { read_points_csv(text_file(bytes)); });
}

constexpr const char* kHead = "point,easting,northing,height,code\n";

TEST(PointsCsvFaults, EmptyFiles) {
  const std::string line =
      "g.csv:1:1: no content; a points file with a header and rows; export it again\n";
  for (const char* bytes : {"", "\n\n", "# nothing\n", "\xEF\xBB\xBF", ",,,\n"})
    EXPECT_EQ(faults(bytes), line) << bytes;
  EXPECT_EQ(faults(kHead), "g.csv:1:1: a header without rows; points; export the file again\n");
  EXPECT_EQ(faults("\"\"\n"),
            "g.csv:1:1: no header row; a header with point, easting, northing, height; export the "
            "file again\n");
}

TEST(PointsCsvFaults, AmbiguousColumnsAreRefusedWithTheReason) {
  EXPECT_EQ(faults("point,X,y,height\n1,2,3,4\n"),
            "g.csv:1:7: column \"x\": the order of x, y and z is ambiguous; easting, northing and "
            "height by name; rename the column after what it holds\n"
            "g.csv:1:9: column \"y\": the order of x, y and z is ambiguous; easting, northing and "
            "height by name; rename the column after what it holds\n");
  EXPECT_EQ(faults("point;e;n;z\n1;2;3;4\n"),
            "g.csv:1:11: column \"z\": the order of x, y and z is ambiguous; easting, northing and "
            "height by name; rename the column after what it holds\n");
}

TEST(PointsCsvFaults, MissingAndDoubledColumnsAllAtOnce) {
  EXPECT_EQ(
      faults("name,east,north,rl\n1,2,3,4\n"),
      "g.csv:1:1: no column point; a points file with point, easting, northing, height; add the "
      "column, or name it so in the header\n"
      "g.csv:1:1: no column easting; a points file with point, easting, northing, height; add "
      "the column, or name it so in the header\n"
      "g.csv:1:1: no column northing; a points file with point, easting, northing, height; add "
      "the column, or name it so in the header\n"
      "g.csv:1:1: no column height; a points file with point, easting, northing, height; add "
      "the column, or name it so in the header\n");
  EXPECT_EQ(
      faults("point,easting,e,height\n1,2,3,4\n"),
      "g.csv:1:15: a second column for easting; one column for it; take out or rename one of "
      "the two\n"
      "g.csv:1:1: no column northing; a points file with point, easting, northing, height; add "
      "the column, or name it so in the header\n");
}

TEST(PointsCsvFaults, EveryBadNumberWithItsPlace) {
  EXPECT_EQ(
      faults(std::string(kHead) + "FL12,715830.25,734697.6,1O2.35,GL\n"
                                  "S\xC3\xBC"
                                  "d,nan,inf,,GL\n"
                                  "A3,1e400,0x10,--5,GL\n"
                                  "\"A\n4\",\"1,5\",1 2,5,GL\n"),
      "g.csv:2:25: height \"1O2.35\" of point \"FL12\" is not a number; a number such "
      "as 102.350; correct it or take out the row\n"
      "g.csv:3:5: easting \"nan\" of point \"S\xC3\xBC"
      "d\" is not a number; a number "
      "such as 102.350; correct it or take out the row\n"
      "g.csv:3:9: northing \"inf\" of point \"S\xC3\xBC"
      "d\" is not a number; a number "
      "such as 102.350; correct it or take out the row\n"
      "g.csv:3:13: no height of point \"S\xC3\xBC"
      "d\"; a number; fill it in or take out the "
      "row\n"
      "g.csv:4:4: easting \"1e400\" of point \"A3\" is not a number; a number such as "
      "102.350; correct it or take out the row\n"
      "g.csv:4:10: northing \"0x10\" of point \"A3\" is not a number; a number such as "
      "102.350; correct it or take out the row\n"
      "g.csv:4:15: height \"--5\" of point \"A3\" is not a number; a number such as "
      "102.350; correct it or take out the row\n"
      "g.csv:6:4: easting \"1,5\" of point \"A?4\" has a comma; a number with a decimal point; "
      "write a point, or separate the cells by semicolons or tabs\n"
      "g.csv:6:10: northing \"1 2\" of point \"A?4\" is not a number; a number such as "
      "102.350; correct it or take out the row\n");
}

TEST(PointsCsvFaults, ShortAndLongRows) {
  EXPECT_EQ(
      faults(std::string(kHead) + "1,2,3,4\n2,2,3,4,GL,more\n3,2,3,4,GL\n4\n"),
      "g.csv:2:8: a short row of 4 cells; 5 cells as the header has; fill in what is missing\n"
      "g.csv:3:12: a long row of 6 cells; 5 cells as the header has; quote the cell that holds "
      "a separator\n"
      "g.csv:5:2: a short row of 1 cell; 5 cells as the header has; fill in what is missing\n");
  // a decimal comma in a file cut at commas makes long rows, never other numbers
  EXPECT_NE(faults(std::string(kHead) + "1,2,5,3,5,4,GL\n"), "");
}

TEST(PointsCsvFaults, Quotes) {
  EXPECT_EQ(
      faults(std::string(kHead) + "\"A,1,2,3,GL\nB,1,2,3,GL\nC,1,2,x,GL\n"),
      "g.csv:2:1: a quote that is not closed; a cell wholly inside its quotes, quotes inside it "
      "doubled; close the quote or double it\n"
      "g.csv:4:7: height \"x\" of point \"C\" is not a number; a number such as "
      "102.350; correct it or take out the row\n");
  EXPECT_EQ(
      faults(std::string(kHead) + "\"A\"1,1,2,3,GL\n\"B,1,2,3,GL\n\"C\",1,2,3,GL\r\nD,x,2,3,G\n"),
      "g.csv:2:1: text beside a quoted cell; a cell wholly inside its quotes, quotes inside it "
      "doubled; close the quote or double it\n"
      "g.csv:3:1: text beside a quoted cell; a cell wholly inside its quotes, quotes inside it "
      "doubled; close the quote or double it\n"
      "g.csv:5:3: easting \"x\" of point \"D\" is not a number; a number such as "
      "102.350; correct it or take out the row\n");
  EXPECT_EQ(
      faults(std::string(kHead) + "MH 24\",1,2,3,GL\nE,1,2,3,4\"\r\nF,,2,3,G\n"),
      "g.csv:2:1: a quote inside an unquoted cell; the whole cell in quotes, quotes inside it "
      "doubled; put the cell in quotes\n"
      "g.csv:3:9: a quote inside an unquoted cell; the whole cell in quotes, quotes inside it "
      "doubled; put the cell in quotes\n"
      "g.csv:4:3: no easting of point \"F\"; a number; fill it in or take out the row\n");
}

TEST(PointsCsvFaults, BytesThatAreNoText) {
  const std::string nul("A\0,1,2,3,GL\n", 12);
  EXPECT_EQ(
      faults(kHead + nul + "B,1,2,3,\xFC\nC,1,2,3,\xC0\x80\n\xED\xA0\x80,1,2,3,G\n"),
      "g.csv:2:1: a byte of value zero; text in UTF-8; save the file again as CSV in UTF-8\n"
      "g.csv:3:9: bytes that are not UTF-8; text in UTF-8; save the file again as CSV in UTF-8\n"
      "g.csv:4:9: bytes that are not UTF-8; text in UTF-8; save the file again as CSV in UTF-8\n"
      "g.csv:5:1: bytes that are not UTF-8; text in UTF-8; save the file again as CSV in "
      "UTF-8\n");
  EXPECT_EQ(faults(std::string("\xFF\xFEp\0o\0", 6)),
            "g.csv:1:1: text in UTF-16; text in UTF-8; save the file again as CSV in UTF-8\n");
  EXPECT_EQ(
      faults("point,e,n,h\r1,2,3,4\r"),
      "g.csv:1:1: a carriage return alone as line break; LF or CRLF; save the file again with "
      "line breaks of this kind\n");
  EXPECT_EQ(
      faults(kHead + std::string(3000000, 'x')),
      "g.csv:2:1: a line of more than 1 MiB; rows of a CSV file; check that this is a text file "
      "with line breaks\n");
}

TEST(PointsCsvFaults, HeaderAgain) {
  EXPECT_EQ(faults("Point,E,N,H\n1,2,3,4\nPoint,E,N,H\n5,6,7,8\n"),
            "g.csv:3:1: the header again; one header, at the top; take this line out, or split the "
            "file\n");
  SourceFile stated = text_file("point,easting,northing,height\n1,2,3,4\n");
  stated.columns = {"point", "e", "n", "h"};
  EXPECT_EQ(
      squaredig::testing::refusal_text([&] { read_points_csv(stated); }),
      "g.csv:1:1: a header row; rows alone, as the job states the columns; take this line out, "
      "or take columns out of the job\n");
}

TEST(PointsCsvFaults, OneFileOneDecimalMark) {
  EXPECT_EQ(
      faults("point;e;n;h\n1;2,5;3;4\n2;2,5;3.5;4\n3;1.234,5;1;1\n"),
      "g.csv:3:7: a decimal point in \"3.5\"; a decimal comma as in line 2; write all numbers "
      "of the file alike\n"
      "g.csv:4:3: easting \"1.234,5\" of point \"3\" is not a number; a number such as "
      "102.350; correct it or take out the row\n");
}

TEST(PointsCsvFaults, NegativeStandardDeviation) {
  EXPECT_EQ(
      faults("point,e,n,h,sigma_plan_mm\n1,2,3,4,-1\n"),
      "g.csv:2:9: a standard deviation below zero; zero or more, in millimetres; correct it or "
      "leave it blank\n");
}

TEST(PointsCsvFaults, TheListEndsWithACount_fault_list_1) {
  std::string bytes = kHead;
  for (int i = 0; i < 200; ++i) bytes += "p,1,2,?,GL\n";
  try {
    read_points_csv(text_file(bytes));
    FAIL() << "taken";
  } catch (const Refusal& refusal) {
    ASSERT_EQ(refusal.problems().size(), 51U);
    EXPECT_EQ(
        refusal.problems().back().text(),
        "g.csv:52:7: 150 more faults from here on, not listed; a file without faults; correct "
        "those listed and run again");
  }
}

TEST(PointsCsvFaults, EastingAndNorthingChangedOver_swapped_1) {
  PointTable control;
  control.add({grid_position(715830, 5734697, 62)}, "CP1", "");
  control.add({grid_position(715990, 5734800, 62)}, "CP2", "");
  const auto check = [&](const std::string& bytes) {
    return squaredig::testing::refusal_text([&] {
      PointsWanted none;
      none.keep = [](const GridPosition&) { return false; };
      const PointsFile file = read_points_csv(text_file(bytes), none);
      check_swapped(file.extent, control, file.columns);
    });
  };
  EXPECT_EQ(check("point,easting,northing,height\n1,5734700,715850,3\n2,5734710,715860,3\n"),
            "g.csv:1:7: easting and northing are changed over: the points lie 7097.7 km from the "
            "control, changed over 0.1 km; what the columns easting (1:7) and northing (1:15) are "
            "called; change the two names over in the header, or correct the control\n");
  EXPECT_EQ(check("point,easting,northing,height\n1,715850,5734700,3\n"), "");
  // far away either way: not for this check to say
  EXPECT_EQ(check("point,easting,northing,height\n1,10,20,3\n"), "");
  // a local grid near its diagonal cannot tell
  control = PointTable();
  control.add({grid_position(100, 130, 62)}, "CP1", "");
  EXPECT_EQ(check("point,easting,northing,height\n1,130,100,3\n"), "");
}

}  // namespace
}  // namespace squaredig::formats
