#include "formats/points_csv.h"

#include <gtest/gtest.h>

#include "formats/input_file.h"
#include "quantity/number_text.h"
#include "refusal_text.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::text_file;

std::string row_text(const PointTable& table, std::size_t i) {
  const SurveyPoint& p = table.points[i];
  return std::string(table.label(i)) + "|" + shortest(p.at.at.easting.in_metres()) + "|" +
         shortest(p.at.at.northing.in_metres()) + "|" +
         (p.has_height ? shortest(p.at.height.in_metres()) : "none") + "|" +
         std::string(table.code(i)) + "|" + std::to_string(p.line);
}

std::string rows(const PointTable& table) {
  std::string all;
  for (std::size_t i = 0; i < table.size(); ++i) all += row_text(table, i) + "\n";
  return all;
}

std::string read(const std::string& bytes) {
  return rows(read_points_csv(text_file(bytes)).points);
}

constexpr const char* kOne = "A1|715830.25|734697.6|62.35|GL|2\n";

TEST(PointsCsv, HeaderInAnyOrderAndAnyCase) {
  EXPECT_EQ(read("point,easting,northing,height,code\nA1,715830.25,734697.6,62.35,GL\n"), kOne);
  EXPECT_EQ(read("Code,HEIGHT,Northing,Easting,Point\nGL,62.35,734697.6,715830.25,A1\n"), kOne);
  EXPECT_EQ(read(" point , N,e, H ,code\nA1, 734697.600,+715830.25, 62.35 ,GL"), kOne);
  EXPECT_EQ(read("\"point\",\"e\",\"n\",\"h\",\"code\"\nA1,715830.25,734697.6,62.35,GL"), kOne);
}

TEST(PointsCsv, SeparatorsAndDecimalComma) {
  EXPECT_EQ(read("point;easting;northing;height;code\nA1;715830.25;734697.6;62.35;GL\n"), kOne);
  EXPECT_EQ(read("point;easting;northing;height;code\nA1;715830,25;734697,6;62,35;GL\n"), kOne);
  EXPECT_EQ(read("point\teasting\tnorthing\theight\tcode\nA1\t715830,25\t734697,6\t62,35\tGL\n"),
            kOne);
  // whole numbers tell nothing about the mark
  EXPECT_EQ(read("point;e;n;h\nA1;7;8;9\nA2;7,5;8;9,25\n"), "A1|7|8|9||2\nA2|7.5|8|9.25||3\n");
}

TEST(PointsCsv, ByteOrderMarkLineBreaksCommentsAndBlankRows) {
  EXPECT_EQ(read("\xEF\xBB\xBFpoint,easting,northing,height,code\r\n"
                 "A1,715830.25,734697.6,62.35,GL\r\n"),
            kOne);
  EXPECT_EQ(read("# set out 2 March\n\npoint,e,n,h\n# a comment, with, commas \"\n1,2,3,4\n"
                 "\n , ,,\n   # again\n5,6,7,8"),
            "1|2|3|4||5\n5|6|7|8||9\n");
}

TEST(PointsCsv, LabelsAreKeptAsSpelled_points_csv_1) {
  EXPECT_EQ(
      read("point,e,n,h\n\"A, 1\",1,2,3\n\"say \"\"B\"\"\",1,2,3\n\" C \",1,2,3\n  D  ,1,2,3\n"
           "\"two\nlines\",1,2,3\n\"#7\",1,2,3\n007,1,2,3\n=1+1,1,2,3\n"
           "S\xC3\xBC"
           "d,1,2,3\n\"\"\"\",1,2,3\n"),
      "A, 1|1|2|3||2\nsay \"B\"|1|2|3||3\n C |1|2|3||4\nD|1|2|3||5\ntwo\nlines|1|2|3||6\n"
      "#7|1|2|3||8\n007|1|2|3||9\n=1+1|1|2|3||10\nS\xC3\xBC"
      "d|1|2|3||11\n\"|1|2|3||12\n");
}

TEST(PointsCsv, FeetBecomeMetres) {
  SourceFile source = text_file("point,e,n,h\n1,2000000,10,-1.5\n");
  source.unit = LengthUnit::Foot;
  EXPECT_EQ(rows(read_points_csv(source).points),
            "1|609600|" + shortest(10 * 0.3048) + "|" + shortest(-1.5 * 0.3048) + "||2\n");
  source.unit = LengthUnit::UsSurveyFoot;
  const auto point = read_points_csv(source).points.points.front();
  // 2 000 000 ft: the two feet differ by 4.000 ft = 1.219 m (derived from 0.3048 and 1200/3937)
  EXPECT_NEAR(point.at.at.easting.in_metres(), 609600 + 1.2192, 1e-4);
}

TEST(PointsCsv, WithoutHeaderOnlyInAStatedOrder) {
  SourceFile source = text_file("7,734697.6,715830.25,62.35,GL,note\n", "p.csv");
  EXPECT_EQ(squaredig::testing::refusal_text([&] { read_points_csv(source); }),
            "p.csv:1:1: no header row; a header with point, easting, northing, height; add the "
            "header, or state the order in the job: columns = \"...\"\n");
  source.columns = {"Point", "northing", "easting", "height", "code", "-"};
  EXPECT_EQ(rows(read_points_csv(source).points), "7|715830.25|734697.6|62.35|GL|1\n");
  SourceFile semicolons = text_file("7;734697,6;715830,25\n8;1,5;2,5", "s.csv");
  semicolons.columns = {"point", "n", "e"};
  PointsWanted plan;
  plan.heights = Heights::Optional;
  EXPECT_EQ(rows(read_points_csv(semicolons, plan).points),
            "7|715830.25|734697.6|none||1\n8|2.5|1.5|none||2\n");
}

TEST(PointsCsv, SigmasAreKeptWhereGiven) {
  const auto table = read_points_csv(text_file("point,e,n,h,sigma_plan_mm,SIGMA_HEIGHT_MM\n"
                                               "1,2,3,4,10,5.5\n2,2,3,4,,\n"))
                         .points;
  EXPECT_EQ(table.points[0].sigma_plan()->in_millimetres(), 10);
  EXPECT_EQ(table.points[0].sigma_height()->in_millimetres(), 5.5);
  EXPECT_FALSE(table.points[1].sigma_plan());
  EXPECT_FALSE(table.points[1].sigma_height());
}

TEST(PointsCsv, CodesNotAskedForAreSetAsideUnread) {
  SourceFile source = text_file("point,e,n,h,code\n1,2,3,4,GL\n2,lost,,,NOTE\n3,2,3,4, TOB \n");
  source.codes = {"GL", "TOB"};
  const PointsFile file = read_points_csv(source);
  EXPECT_EQ(rows(file.points), "1|2|3|4|GL|2\n3|2|3|4|TOB|4\n");
  EXPECT_EQ(file.record.read, 3U);
  EXPECT_EQ(file.record.used, 2U);
  EXPECT_EQ(file.record.set_aside, (std::vector<SetAside>{{3, "code \"NOTE\" is not asked for"}}));
}

TEST(PointsCsv, RowsOutsideAWindowStillCount_points_csv_2) {
  std::string bytes = "point,e,n,h\n";
  for (int i = 1; i <= 5000; ++i) bytes += std::to_string(i) + "," + std::to_string(i) + ".5,0,1\n";
  PointsWanted window;
  window.keep = [](const GridPosition& p) { return p.at.easting < Easting::metres(10); };
  const PointsFile file = read_points_csv(text_file(bytes), window);
  EXPECT_EQ(file.points.size(), 9U);
  EXPECT_EQ(file.record.read, 5000U);
  EXPECT_EQ(file.record.used, 5000U);
  EXPECT_EQ(file.record.sha256, sha256_of(bytes));
  EXPECT_EQ(file.extent.middle(), grid_point(2501, 0));
}

TEST(PointsCsv, NumbersAreTheNearestDouble_points_csv_3) {
  const auto table = read_points_csv(text_file("point,e,n,h\n1,715830.1234567891234,1e-3,-0.1\n"
                                               "2,9007199254740993,0.1,123456789.123456789\n"))
                         .points;
  EXPECT_EQ(table.points[0].at, grid_position(715830.1234567891234, 1e-3, -0.1));
  EXPECT_EQ(table.points[1].at, grid_position(9007199254740992.0, 0.1, 123456789.123456789));
}

TEST(PointsCsv, AFileInManyChunksReadsAsOneInOne) {
  // rows that straddle every chunk's edge, some with quotes and letters beyond ASCII
  std::string bytes = "point,e,n,h,code\n";
  for (int i = 1; i <= 40000; ++i) {
    const std::string n = std::to_string(i);
    bytes += (i % 1000 == 0  ? "\"p\n" + n + "\""
              : i % 777 == 0 ? "\xC3\xBC" + n
                             : "p" + n) +
             "," + n + ".125," + n + ".25,-" + n + ".5,GL\n";
  }
  const auto file = read_points_csv(text_file(bytes));
  ASSERT_EQ(file.points.size(), 40000U);
  for (std::size_t i = 0; i < file.points.size(); ++i) {
    const auto x = static_cast<double>(i + 1);
    ASSERT_EQ(file.points.points[i].at, grid_position(x + 0.125, x + 0.25, -x - 0.5)) << i;
    ASSERT_TRUE(file.points.label(i).ends_with(std::to_string(i + 1))) << i;
  }
  EXPECT_EQ(file.points.points.back().line, 40000U + 1 + 39);
}

TEST(PointsCsv, RepeatedNamesAreToldOrRefused) {
  const std::string bytes =
      "point,e,n,h\nB,1,2,3\n7,1,2,3\nB,4,5,6\n,1,1,1\n,2,2,2\n7,9,9,9\nB,0,0,0\n";
  const PointsFile told = read_points_csv(text_file(bytes));
  EXPECT_EQ(told.points.size(), 7U);
  EXPECT_EQ(told.cautions,
            (std::vector<std::string>{"g.csv: 3 points have names used before in the file, first "
                                      "\"B\" in lines 2 and 4"}));
  PointsWanted unique;
  unique.names = Names::Unique;
  EXPECT_EQ(
      squaredig::testing::refusal_text([&] { read_points_csv(text_file(bytes), unique); }),
      "g.csv:5:1: no name in column point; a name; fill it in or take out the row\n"
      "g.csv:6:1: no name in column point; a name; fill it in or take out the row\n"
      "g.csv:4:1: the point name \"B\" again; each name once, and it stands in line 2; rename or "
      "take out one of the two\n"
      "g.csv:7:1: the point name \"7\" again; each name once, and it stands in line 3; rename or "
      "take out one of the two\n"
      "g.csv:8:1: the point name \"B\" again; each name once, and it stands in line 2; rename or "
      "take out one of the two\n");
}

TEST(PointsCsv, ColumnsNobodyAskedForAreTold) {
  const PointsFile file = read_points_csv(text_file("point,e,n,h,Quality,,date\n1,2,3,4,3D,,x\n"));
  EXPECT_EQ(file.cautions,
            (std::vector<std::string>{"g.csv: not used: columns \"quality\", \"date\""}));
}

TEST(PointsCsv, TablesGrowFileByFile) {
  PointsFile one = read_points_csv(text_file("point,e,n,h\n1,2,3,4\n", "one.csv"));
  const PointsFile two =
      read_points_csv(text_file("point,e,n,h\n1,6,7,8\n", "two.csv"), {}, std::move(one.points));
  EXPECT_EQ(rows(two.points), "1|2|3|4||2\n1|6|7|8||2\n");
  EXPECT_EQ(two.points.place(0).file, "one.csv");
  EXPECT_EQ(two.points.place(1).file, "two.csv");
  EXPECT_TRUE(two.cautions.empty());
}

TEST(PointsCsv, GeodeticFilesAreToldWhereTheyBelong) {
  EXPECT_EQ(squaredig::testing::refusal_text([] {
              read_points_csv(
                  text_file("point,Latitude,longitude,ellipsoid_height,code\n"
                            "ALIC,-23.670134,133.885519,603.2489,GNSS\n"));
            }),
            "g.csv:1:1: a column latitude and no easting; a points file with point, easting, "
            "northing, height; convert it to the grid: name it under [field] gnss and run field\n");
  // both kinds of coordinates: the grid's are taken, the others told
  EXPECT_EQ(read_points_csv(text_file("point,e,n,h,latitude\n1,2,3,4,5\n", "b.csv")).cautions,
            (std::vector<std::string>{"b.csv: not used: column \"latitude\""}));
}

}  // namespace
}  // namespace squaredig::formats
