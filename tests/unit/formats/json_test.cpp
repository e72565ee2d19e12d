#include <gtest/gtest.h>

#include <limits>

#include "formats/json_internal.h"
#include "quantity/problem.h"

namespace squaredig::formats {
namespace {

TEST(Json, NumberReadsBackToTheLastBit_json_1) {
  for (const double value : {0.1, 1.0 / 3, 6100000.123456789, 5e-324, 1.7976931348623157e308,
                             -0.30000000000000004, 123456789012345680.0}) {
    const Json back = Json::parse(json_text(number(value, "value")));
    EXPECT_EQ(back.get<double>(), value);
  }
}

TEST(Json, NeverWritesNanOrInfinity_json_2) {
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    try {
      number(bad, "cut_bank_m3");
      FAIL() << "a number that is not finite was taken";
    } catch (const Refusal& refusal) {
      EXPECT_NE(refusal.problems().front().found.find("cut_bank_m3"), std::string::npos);
    }
  }
}

TEST(Json, ZeroHasNoSign) { EXPECT_EQ(json_text(number(-0.0, "value")), "0.0\n"); }

TEST(Json, HeadNamesTheFieldsOfEveryResult) {
  ResultHead head;
  head.job = "Alderbrook school";
  head.inputs.push_back({"ground.csv", "ab12", 10, 9, {{4, "code \"X\" is not asked for"}}});
  head.assumed = {"units of ground.csv: m"};
  head.findings.push_back({"spike", "point 7 stands 2.1 m above its neighbours"});
  EXPECT_EQ(json_text(head_json(head, "0.1.0")), R"({
  "tool": "squaredig",
  "version": "0.1.0",
  "job": "Alderbrook school",
  "inputs": [
    {
      "file": "ground.csv",
      "sha256": "ab12",
      "read": 10,
      "used": 9,
      "set_aside": [
        {
          "line": 4,
          "why": "code \"X\" is not asked for"
        }
      ]
    }
  ],
  "assumed": [
    "units of ground.csv: m"
  ],
  "cautions": [],
  "findings": [
    {
      "code": "spike",
      "text": "point 7 stands 2.1 m above its neighbours"
    }
  ]
}
)");
}

TEST(Json, BadBytesOfALabelAreReplaced) {
  const std::string text = json_text(Json{{"point",
                                           "S\xFC"
                                           "d"}});
  EXPECT_EQ(text,
            "{\n  \"point\": \"S\xEF\xBF\xBD"
            "d\"\n}\n");
}

TEST(Json, PlacesAndMissingValues) {
  Json object;
  put(object, grid_position(1.5, 2.5, 3.5));
  object["ring"] = Json::array({place_in_array(grid_position(1, 2, 3))});
  object["none"] = or_null(std::optional<Length>(), metres, "none");
  object["some"] = or_null(std::optional(Length::metres(0.25)), metres, "some");
  EXPECT_EQ(object.dump(), R"({"easting":1.5,"northing":2.5,"height":3.5,"ring":[[1.0,2.0,3.0]],)"
                           R"("none":null,"some":0.25})");
}

}  // namespace
}  // namespace squaredig::formats
