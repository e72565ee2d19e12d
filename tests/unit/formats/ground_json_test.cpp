#include "formats/ground_json.h"

#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "refusal_text.h"

namespace squaredig::formats {
namespace {

ground::GroundResult small_result() {
  ground::GroundResult r;
  r.head.job = "Alderbrook school, car park tank";
  r.head.inputs = {{"ground.csv", "00ff", 12, 11, {{7, "at the position of point \"P3\""}}}};
  r.head.findings = {{"spike", "point \"P9\" stands 4 m above"}};
  r.points = 11;
  r.triangles = 15;
  r.plan_area = Area::square_metres(100.0 / 3);
  r.surface_area = Area::square_metres(0.1 + 0.2 + 34);
  r.lowest = Elevation::metres(61.7);
  r.highest = Elevation::metres(64.05);
  r.suspects = {
      {"P9",
       "stands 4 m above",
       Length::metres(4.0 / 3),
       grid_position(715831.5, 734699.25, 66.3),
       {"ground.csv", 10, 1}},
      {"P\xC3\xA9 \"2\"", "stands 1 m below", Length::metres(-1), {}, {"ground.csv", 3, 1}}};
  r.crossings = {{"top", "drain", grid_point(715835.5, 734705.1), Length::metres(0.7 - 0.2)}};
  return r;
}

TEST(GroundJson, EveryNumberAndNameReadsBack_ground_json_1) {
  const ground::GroundResult r = small_result();
  const auto json = nlohmann::json::parse(ground_json(r, "1.2.3"));
  EXPECT_EQ(json["version"], "1.2.3");
  EXPECT_EQ(json["job"], r.head.job);
  EXPECT_EQ(json["inputs"][0]["set_aside"][0]["line"], 7);
  EXPECT_EQ(json["findings"].size(), 1U);
  EXPECT_EQ(json["points"], 11);
  EXPECT_EQ(json["triangles"], 15);
  EXPECT_EQ(json["plan_area_m2"].get<double>(), 100.0 / 3);
  EXPECT_EQ(json["surface_area_m2"].get<double>(), 0.1 + 0.2 + 34);
  EXPECT_EQ(json["lowest"].get<double>(), 61.7);
  EXPECT_EQ(json["highest"].get<double>(), 64.05);
  ASSERT_EQ(json["suspects"].size(), 2U);
  EXPECT_EQ(json["suspects"][0]["point"], "P9");
  EXPECT_EQ(json["suspects"][0]["why"], "stands 4 m above");
  EXPECT_EQ(json["suspects"][0]["by_m"].get<double>(), 4.0 / 3);
  EXPECT_EQ(json["suspects"][0]["easting"], 715831.5);
  EXPECT_EQ(json["suspects"][0]["northing"], 734699.25);
  EXPECT_EQ(json["suspects"][0]["height"], 66.3);
  EXPECT_TRUE(json["contour_interval_m"].is_null());
  EXPECT_EQ(json["suspects"][1]["point"], r.suspects[1].point);
  EXPECT_EQ(json["suspects"][1]["by_m"], -1);
  ASSERT_EQ(json["crossings"].size(), 1U);
  EXPECT_EQ(json["crossings"][0]["strings"], (std::vector<std::string>{"top", "drain"}));
  EXPECT_EQ(json["crossings"][0]["easting"], 715835.5);
  EXPECT_EQ(json["crossings"][0]["northing"].get<double>(), 734705.1);
  EXPECT_EQ(json["crossings"][0]["height_difference_m"].get<double>(), 0.7 - 0.2);
}

TEST(GroundJson, EmptyListsStay) {
  ground::GroundResult r = small_result();
  r.suspects.clear();
  r.crossings.clear();
  const auto json = nlohmann::json::parse(ground_json(r, "1"));
  EXPECT_TRUE(json["suspects"].is_array() && json["suspects"].empty());
  EXPECT_TRUE(json["crossings"].is_array() && json["crossings"].empty());
}

TEST(GroundJson, NoNumberIsRefusedByName) {
  ground::GroundResult r = small_result();
  r.plan_area = Area::square_metres(std::numeric_limits<double>::quiet_NaN());
  EXPECT_NE(squaredig::testing::refusal_text([&] { ground_json(r, "1"); }).find("plan_area_m2"),
            std::string::npos);
}

}  // namespace
}  // namespace squaredig::formats
