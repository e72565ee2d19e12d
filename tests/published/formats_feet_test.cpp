// Two feet that differ by two parts in a million.
#include <gtest/gtest.h>

#include "formats/points_csv.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

// TRAP-1: the foot of the United States survey is 1200/3937 m = 0.304800609601219 m, 1.000002 of
// the international one: at 2 000 000 ft 4.000 ft = 1.219 m apart, 0.0106 ft to the mile; quoted.
TEST(PublishedFeet, AFileCountsInTheFootThatIsStated_trap_1) {
  const auto easting = [](LengthUnit unit, const char* feet) {
    SourceFile source = squaredig::testing::text_file(
        std::string("point,easting,northing,height\nP,") + feet + ",100,10\n");
    source.unit = unit;
    return read_points_csv(source).points.points.at(0).at.at.easting.in_metres();
  };
  EXPECT_NEAR(metres_per(LengthUnit::UsSurveyFoot), 0.304800609601219, 5e-16);
  EXPECT_NEAR(metres_per(LengthUnit::UsSurveyFoot) / metres_per(LengthUnit::Foot), 1.000002, 1e-11);
  EXPECT_NEAR(1 / metres_per(LengthUnit::UsSurveyFoot), 3.280833333333, 5e-13);
  const double survey = easting(LengthUnit::UsSurveyFoot, "2000000");
  const double international = easting(LengthUnit::Foot, "2000000");
  EXPECT_NEAR(survey - international, 1.219, 0.0005);
  EXPECT_NEAR((survey - international) / 0.3048, 4.000, 0.0005);
  EXPECT_NEAR(
      (easting(LengthUnit::UsSurveyFoot, "5280") - easting(LengthUnit::Foot, "5280")) / 0.3048,
      0.0106, 5e-5);
}

}  // namespace
}  // namespace squaredig::formats
