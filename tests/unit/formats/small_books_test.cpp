// The small field books: taped lengths and compaction tests.
#include <gtest/gtest.h>

#include "formats/compaction_csv.h"
#include "formats/tape_csv.h"
#include "refusal_text.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

TEST(TapeCsv, HorizontalAndSlopeLengths) {
  const TapeFile file = read_tape_csv(
      text_file("from,to,length,height_difference\nA,B,24.003,\nA,C,25.860,-0.120\n"));
  ASSERT_EQ(file.lengths.size(), 2U);
  EXPECT_EQ(file.lengths[0].from, "A");
  EXPECT_EQ(file.lengths[0].to, "B");
  EXPECT_EQ(file.lengths[0].length, Length::metres(24.003));
  EXPECT_FALSE(file.lengths[0].height_difference);
  EXPECT_EQ(file.lengths[1].height_difference, Length::metres(-0.120));
  EXPECT_EQ(file.lengths[1].place, (Place{"g.csv", 3, 1}));
  EXPECT_EQ(file.record.used, 2U);
}

TEST(TapeCsv, TheHeightColumnMayBeMissing) {
  EXPECT_EQ(read_tape_csv(text_file("length,from,to\n9.6,B,C\n")).lengths[0].length,
            Length::metres(9.6));
}

TEST(TapeCsv, FaultsAreToldTogether) {
  EXPECT_EQ(refusal_text([] {
              read_tape_csv(
                  text_file("from,to,length,height_difference\nA,A,1,\nA,B,0,\n"
                            "A,C,2,2.5\nA,D,x,\n,E,1,\n"));
            }),
            "g.csv:2:3: a length from \"A\" to itself; two different pegs; correct one of the "
            "names\n"
            "g.csv:3:5: a length that is not above zero; the length as taped; correct it or take "
            "out the row\n"
            "g.csv:4:7: a height difference as long as the tape; the height of the second peg "
            "above the first; correct it or leave it blank\n"
            "g.csv:5:5: length \"x\" of from \"A\" is not a number; a number such as "
            "102.350; correct it or take out the row\n"
            "g.csv:6:1: no name in column from; a name; fill it in or take out the row\n");
}

TEST(CompactionCsv, ReadsATest) {
  const CompactionFile file = read_compaction_csv(
      text_file("layer,easting,northing,dry_density,maximum_dry_density\nbase,1,2,1.81,1.89\n"));
  ASSERT_EQ(file.tests.size(), 1U);
  EXPECT_EQ(file.tests[0].layer, "base");
  EXPECT_EQ(file.tests[0].at, grid_point(1, 2));
  EXPECT_EQ(file.tests[0].dry, Density::tonnes_per_cubic_metre(1.81));
  EXPECT_EQ(file.tests[0].maximum_dry, Density::tonnes_per_cubic_metre(1.89));
}

TEST(CompactionCsv, WetDensityAndWaterContentWillDo) {
  const CompactionFile file = read_compaction_csv(
      text_file("layer,e,n,wet_density,water_content_percent,maximum_dry_density\n"
                "base,1,2,2.07,15,1.89\n"));
  ASSERT_EQ(file.tests.size(), 1U);
  EXPECT_NEAR(file.tests[0].dry.in_tonnes_per_cubic_metre(), 1.8, 1e-12);
  const CompactionFile both = read_compaction_csv(
      text_file("layer,e,n,wet_density,water_content_percent,dry_density,maximum_dry_density\n"
                "base,1,2,2.07,15,1.79,1.89\n"));
  EXPECT_EQ(both.tests.at(0).dry, Density::tonnes_per_cubic_metre(1.79));
  EXPECT_EQ(both.cautions.size(), 1U);
}

TEST(CompactionCsv, HalfOfAWetDensityIsNone) {
  EXPECT_EQ(
      refusal_text(
          [] { read_compaction_csv(text_file("layer,e,n,wet_density,maximum_dry_density\n")); }),
      "g.csv:1:1: wet_density and water_content_percent not both there; a column dry_density, "
      "or both wet_density and water_content_percent; add what is missing\n");
  EXPECT_EQ(
      refusal_text([] {
        read_compaction_csv(
            text_file("layer,e,n,wet_density,water_content_percent,maximum_dry_density\n"
                      "base,1,2,2.07,-1,1.89\n"));
      }),
      "g.csv:2:15: a water content of -1; percent of the dry mass, from 0 to 300; correct it\n");
}

TEST(CompactionCsv, KilogramsAreNotTakenForTonnes) {
  EXPECT_EQ(refusal_text([] {
              read_compaction_csv(
                  text_file("layer,e,n,dry_density,maximum_dry_density\nbase,1,2,1810,1.89\n"));
            }),
            "g.csv:2:10: a density of 1810; tonnes per cubic metre, above 0 and at most 4; correct "
            "it, or change the unit to t/m3\n");
}

}  // namespace
}  // namespace squaredig::formats
