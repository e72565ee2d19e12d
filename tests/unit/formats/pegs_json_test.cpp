#include "formats/pegs_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "unit/formats/made_pegs.h"

namespace squaredig::formats {
namespace {

TEST(PegsJson, InTheOrderOfTheTankAndNullWhereNotAsked_pegs_json_1) {
  const auto j = nlohmann::json::parse(pegs_json(made_pegs(), "1.2.3"));
  EXPECT_EQ(j["tool"], "squaredig");
  ASSERT_EQ(j["corners"].size(), 4U);
  EXPECT_EQ(j["corners"][2]["name"], "C");
  EXPECT_EQ(j["corners"][2]["easting"], 715854.25);
  EXPECT_EQ(j["corners"][2]["height"], 62.35);
  ASSERT_EQ(j["reference"].size(), 8U);
  EXPECT_EQ(j["reference"][3]["name"], "B2");
  EXPECT_EQ(j["reference"][3]["string_line"], "A1-B2");
  EXPECT_EQ(j["reference"][3]["beyond_corner_m"], 3.1);
  EXPECT_EQ(j["reference"][3]["clear_of_crest_m"], 1.0);
  EXPECT_EQ(j["reference"][3]["ground_height"], 65.3);
  EXPECT_TRUE(j["reference"][7]["ground_height"].is_null());
  EXPECT_EQ(j["sides_m"], nlohmann::json({24.0, 24.0, 24.0, 24.0}));
  EXPECT_EQ(j["diagonals_m"], nlohmann::json({25.8, 25.8}));
  EXPECT_EQ(j["combined_scale_factor"], 0.99985);
  EXPECT_EQ(j["polar"], nlohmann::json::array());
  EXPECT_TRUE(j["as_set"].is_null());
  EXPECT_TRUE(j["tape"].is_null());
}

TEST(PegsJson, LabelsComeBackByteForByte) {
  const auto j = nlohmann::json::parse(pegs_json(made_pegs(), "1.2.3"));
  for (std::size_t i = 0; i < hard_labels().size(); ++i)
    EXPECT_EQ(j["pipes"][i]["name"], hard_labels()[i]);
}

TEST(PegsJson, AsSetAndTapeByTheirNames) {
  pegs::PegsResult r = made_pegs();
  r.as_set = pegs::AsSetResult{};
  r.as_set->points.push_back({"A1", grid_point(1, 2), Length::millimetres(3),
                              Length::millimetres(-4), Length::millimetres(5), Length{}});
  r.as_set->diagonal_difference = Length::millimetres(7.5);
  r.as_set->out_of_square = Angle::seconds(60);
  r.as_set->moves.push_back({"A1", Length::millimetres(-30), Length{}});
  r.as_set->verdict = Verdict::DoesNotConform;
  r.tape = pegs::TapeResult{};
  r.tape->sides = {Length::metres(24), std::nullopt};
  r.tape->likely_wrong = "AC";
  const auto j = nlohmann::json::parse(pegs_json(r, "1"));
  EXPECT_EQ(j["as_set"]["points"][0]["delta_n_mm"], -4.0);
  EXPECT_EQ(j["as_set"]["move"][0]["along_mm"], -30.0);
  EXPECT_EQ(j["as_set"]["verdict"], "does not conform");
  EXPECT_NEAR(j["as_set"]["out_of_square_sec"].get<double>(), 60, 1e-9);
  EXPECT_EQ(j["as_set"]["diagonal_difference_mm"], 7.5);
  EXPECT_EQ(j["tape"]["sides_m"][0], 24.0);
  EXPECT_TRUE(j["tape"]["sides_m"][1].is_null());
  EXPECT_EQ(j["tape"]["likely_wrong"], "AC");
  EXPECT_EQ(j["tape"]["verdict"], "not proven");
}

}  // namespace
}  // namespace squaredig::formats
