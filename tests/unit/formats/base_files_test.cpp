#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "formats/base_csv.h"
#include "formats/base_json.h"
#include "formats/repair_files.h"

namespace squaredig::formats {
namespace {

base::BaseResult sample() {
  base::BaseResult r;
  r.head.job = "Alderbrook school";
  r.verdict = Verdict::NotProven;
  base::Check high;
  high.name = "level high";
  high.verdict = Verdict::NotProven;
  high.value = Length::metres(0.0041);
  high.limit = Length::metres(0.005);
  high.uncertainty = Length::metres(0.00465);
  high.at = grid_point(715830.25, 734697.6);
  base::Check fall;
  fall.name = "fall";
  fall.value = Fall::percent(0.03);
  r.checks = {high, fall};
  base::JudgedPoint p;
  p.point = "=F1";
  p.code = "BASE";
  p.place = {"as-dug.csv", 7, 1};
  p.at = grid_position(715831.123, 734698.456, 62.3341);
  p.dig_level = Elevation::metres(62.33);
  p.deviation = Length::millimetres(4.1);
  p.uncertainty = Length::millimetres(4.65);
  p.verdict = Verdict::NotProven;
  p.finding = "high, not proven";
  r.points.push_back(p);
  r.aside.push_back(
      {"B4", {"as-dug.csv", 9, 1}, grid_position(1, 2, 3), "0.212 m outside the toe"});
  r.trim = BankVolume::cubic_metres(0.1 + 0.2);
  return r;
}

TEST(BaseJson, NumbersReadBackAndNullsAreNull_base_json_1) {
  const auto json = nlohmann::json::parse(base_json(sample(), "1.2.3"));
  EXPECT_EQ(json["version"], "1.2.3");
  EXPECT_EQ(json["verdict"], "not proven");
  EXPECT_EQ(json["checks"][0]["name"], "level high");
  EXPECT_EQ(json["checks"][0]["value"].get<double>(), 0.0041);
  EXPECT_EQ(json["checks"][0]["unit"], "m");
  EXPECT_EQ(json["checks"][1]["unit"], "percent");
  EXPECT_TRUE(json["checks"][1]["limit"].is_null());
  EXPECT_EQ(json["not_asked"], nlohmann::json::array({"fall"}));
  EXPECT_EQ(json["trim_m3"].get<double>(), 0.1 + 0.2);
  EXPECT_TRUE(json["make_up_m3"].is_null());
  EXPECT_TRUE(json["stack_gap_mm"].is_null());
  EXPECT_TRUE(json["bedding"]["thinnest_mm"].is_null());
  EXPECT_TRUE(json["bedding"]["shift_that_fits_mm"].is_null());
}

TEST(BaseJson, ShiftIsAPair) {
  base::BaseResult r = sample();
  r.skin.emplace();
  r.skin->shift_that_fits = std::pair(Length::millimetres(-5), Length::millimetres(10));
  const auto json = nlohmann::json::parse(base_json(r, "1"));
  EXPECT_DOUBLE_EQ(json["bedding"]["shift_that_fits_mm"][0].get<double>(), -5);
  EXPECT_DOUBLE_EQ(json["bedding"]["shift_that_fits_mm"][1].get<double>(), 10);
}

TEST(BaseCsv, JudgedThenSetAside_base_csv_1) {
  EXPECT_EQ(base_csv(sample()),
            "point,easting,northing,height,code,dig_level,deviation_mm,uncertainty_mm,verdict,"
            "finding,along_ab,across_ab,file,line\n"
            "'=F1,715831.123,734698.456,62.3341,BASE,62.33,4.1,4.65,not proven,"
            "\"high, not proven\",0,0,as-dug.csv,7\n"
            "B4,1,2,3,,,,,set aside,0.212 m outside the toe,,,as-dug.csv,9\n");
}

base::BaseResult with_repair() {
  base::BaseResult r = sample();
  base::RepairSpot spot{"F7", grid_point(10, 20), Length::metres(4.2), Length::metres(1.754),
                        Length::millimetres(-14)};
  base::RepairPatch patch;
  patch.number = 1;
  patch.area = Area::square_metres(1.5);
  patch.volume = Volume::cubic_metres(0.0125);
  patch.along_ab = {Length::metres(3.5), Length::metres(5)};
  patch.across_ab = {Length::metres(1.25), Length::metres(2.75)};
  patch.deepest = spot;
  patch.spots = {spot};
  patch.rings = {{grid_point(9, 19), grid_point(11, 19), grid_point(10, 21)}};
  r.repair = {patch};
  return r;
}

TEST(RepairFiles, PatchThenItsPoints_repair_files_1) {
  EXPECT_EQ(repair_csv(with_repair()),
            "patch,work,row,by,area_m2,volume_m3,along_ab_from,along_ab_to,across_ab_from,"
            "across_ab_to,point,easting,northing,along_ab,across_ab,move_mm,where,note\n"
            "1,trim,patch,machine,1.5,0.0125,3.5,5,1.25,2.75,F7,10,20,4.2,1.754,-14,"
            "\"4.20 along A-B, 1.75 in\",\n"
            "1,trim,point,,,,,,,,F7,10,20,4.2,1.754,-14,\"4.20 along A-B, 1.75 in\",\n");
}

TEST(RepairFiles, DrawingHasOutlineAndMoves) {
  const std::string dxf = repair_dxf(with_repair());
  std::size_t lines = 0;
  for (std::size_t at = dxf.find("\nLINE\n"); at != std::string::npos;
       at = dxf.find("\nLINE\n", at + 1))
    ++lines;
  EXPECT_EQ(lines, 3u);
  EXPECT_NE(dxf.find("1: trim"), std::string::npos);
  EXPECT_NE(dxf.find("-14"), std::string::npos);
}

TEST(RepairFiles, DrawingShowsWhereTheBeddingLeavesItsLimits) {
  base::BaseResult r = with_repair();
  EXPECT_EQ(repair_dxf(r).find("bedding 2 mm"), std::string::npos);
  base::SkinPatch thin;
  thin.worst = Length::millimetres(1.7);
  thin.at = grid_point(10, 20);
  thin.rings = {{grid_point(9, 19), grid_point(11, 19), grid_point(10, 21), grid_point(9, 20)}};
  r.skin.emplace();
  r.skin->too_thin = {thin};
  r.skin->too_thick.emplace();
  const std::string dxf = repair_dxf(r);
  EXPECT_NE(dxf.find("bedding 2 mm"), std::string::npos);
  const auto lines_on = [&](const std::string& layer) {
    const std::string tags = "\nLINE\n  8\n" + layer + "\n";
    int lines = 0;
    for (std::size_t at = dxf.find(tags); at != std::string::npos; at = dxf.find(tags, at + 1))
      ++lines;
    return lines;
  };
  EXPECT_EQ(lines_on("BEDDING-TOO-THIN"), 4);
  EXPECT_EQ(lines_on("BEDDING-TOO-THICK"), 0);
}

TEST(BaseJson, WhatTheSurveySaw) {
  base::BaseResult r = sample();
  EXPECT_TRUE(nlohmann::json::parse(base_json(r, "1"))["coverage"].is_null());
  r.reach.emplace();
  r.reach->limit = Length::metres(1.0617);
  r.reach->corners = {{"A", grid_point(1, 2), Length::metres(0.2), true},
                      {"B", grid_point(3, 4), Length::metres(2.2), false}};
  r.reach->sides = {
      {"AB", Length::metres(24.4), Length::metres(3.5), Length::metres(20.9), Length::metres(24.4)},
      {"BC", Length::metres(10), {}, {}, {}}};
  r.reach->far_parts = {{Area::square_metres(5.5), grid_point(5, 6), Length::metres(21),
                         Length::metres(1), Length::metres(2.9)}};
  const auto coverage = nlohmann::json::parse(base_json(r, "1"))["coverage"];
  EXPECT_EQ(coverage["limit_m"].get<double>(), 1.0617);
  EXPECT_EQ(coverage["corners"][1]["name"], "B");
  EXPECT_EQ(coverage["corners"][1]["nearest_m"].get<double>(), 2.2);
  EXPECT_EQ(coverage["corners"][1]["seen"], false);
  EXPECT_EQ(coverage["sides"][0]["unseen_m"].get<double>(), 3.5);
  EXPECT_EQ(coverage["sides"][0]["unseen_from"].get<double>(), 20.9);
  EXPECT_EQ(coverage["sides"][0]["seen"], false);
  EXPECT_EQ(coverage["sides"][1]["seen"], true);
  EXPECT_EQ(coverage["beyond_spacing"][0]["distance_m"].get<double>(), 2.9);
  EXPECT_EQ(coverage["beyond_spacing"][0]["area_m2"].get<double>(), 5.5);
}

TEST(BaseJson, RepairAndBefore) {
  base::BaseResult r = with_repair();
  r.before.emplace();
  r.before->verdict = Verdict::DoesNotConform;
  r.before->fixed = {"flatness"};
  r.before->spoiled = {"level low"};
  r.before->patches = {{r.repair[0], Verdict::NotProven, "G9", Length::millimetres(4)},
                       {r.repair[0], std::nullopt, "", {}}};
  const auto json = nlohmann::json::parse(base_json(r, "1"));
  EXPECT_EQ(json["repair"][0]["move_mm"].get<double>(), -14);
  EXPECT_EQ(json["before"]["verdict"], "does not conform");
  EXPECT_EQ(json["before"]["fixed"], nlohmann::json::array({"flatness"}));
  EXPECT_EQ(json["before"]["spoiled"], nlohmann::json::array({"level low"}));
  EXPECT_EQ(json["before"]["repair"][0]["along_ab_to"].get<double>(), 5);
  EXPECT_EQ(json["before"]["repair"][0]["after"]["verdict"], "not proven");
  EXPECT_EQ(json["before"]["repair"][0]["after"]["point"], "G9");
  EXPECT_TRUE(json["before"]["repair"][1]["after"].is_null());
  EXPECT_TRUE(nlohmann::json::parse(base_json(sample(), "1"))["before"].is_null());
}

}  // namespace
}  // namespace squaredig::formats
