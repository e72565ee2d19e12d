#include "job/check_lines.h"

#include <gtest/gtest.h>

#include "unit/job/alderbrook.h"

namespace squaredig::job {
namespace {

using testing::alderbrook;
using testing::with;

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const auto& line : lines) text += line + "\n";
  return text;
}

InputRecord record(std::size_t aside) {
  InputRecord r{"ground.csv", "", 1234, 1234 - aside, {}};
  for (std::size_t i = 0; i < aside; ++i)
    r.set_aside.push_back({static_cast<int>(i) + 7, "code TREE is not asked for"});
  return r;
}

TEST(CheckLines, TellsTheWholeJob) {
  const FilesFound found{{{"geoid.tif", "", 0, 0, {}}, record(7)},
                         {"ground.csv: a column is not used: remark"}};
  EXPECT_EQ(joined(check_lines(read_job(alderbrook(), "job.toml"), found)),
            R"(Alderbrook school, tank under the car park
Found in job.toml
  grid: EPSG:2157, heights EPSG:5731; lengths here are ground lengths, combined factor 0.99985
  tank: 24 m by 9.6 m, 1.32 m high, corner A given, A-B 37.5 degrees; underside 62.350 m at A, falling 0.5 percent toward side CD; pipes: 2; shafts: 1
  bedding: 20 mm, accepted from 15 mm to 30 mm
  pegs: 3 m beyond the corner, 1 m clear of the crest
  gap: AB 0.2 m, BC 0.3 m, CD 0.7 m, DA 0.2 m
  batter: AB 1 across for each 1 up (45.0 degrees), BC vertical (90 degrees), CD 1.5 across for each 1 up (33.7 degrees), DA 1.5 across for each 1 up (33.7 degrees)
  dig: benches: 2, ramps: 1, sumps: 1, trenches: 1
Files
  geoid.tif
  ground.csv: 1234 rows read, 1227 used, 7 set aside
    line 7: code TREE is not asked for
    line 8: code TREE is not asked for
    line 9: code TREE is not asked for
    line 10: code TREE is not asked for
    line 11: code TREE is not asked for
    and 2 more
Cautions
  ground.csv: a column is not used: remark
Stages
  field: its tables are there
  ground: its tables are there
  pegs: its tables are there
  dig: its tables are there
  base: its tables are there
  fill: its tables are there
  record: its tables are there
)");
}

TEST(CheckLines, NamesEveryMissingTable_check_lines_1) {
  const Job job =
      read_job("[job]\nname='a'\nout='o'\n[grid]\ncrs='local'\nheights='local'\n", "j.toml");
  const std::string text = joined(check_lines(job, {}));
  EXPECT_NE(text.find("Assumed\n  date: 1970-01-01"), std::string::npos) << text;
  EXPECT_NE(text.find("Cautions\n  crs = \"local\""), std::string::npos) << text;
  EXPECT_NE(text.find("  field: cannot be run: no table [field]\n"), std::string::npos) << text;
  EXPECT_NE(text.find("  base: cannot be run: no table [ground], no table [tank], no table "
                      "[bedding], no table [pegs], no table [dig], no table [base]\n"),
            std::string::npos)
      << text;
  for (const Stage stage : kStages)
    EXPECT_NE(text.find("  " + std::string(words(stage)) + ": "), std::string::npos);
}

TEST(CheckLines, TellsWhatAStageLeavesOut) {
  auto text = with(alderbrook(),
                   "bulking = 1.25\ntruck_m3 = 12.0\ntruck_t = 20.0\nloose_t_per_m3 = 1.5\n", "");
  text = with(text, "batter_given_by = \"geotechnical report 12, 2026-03-02\"\n", "");
  text = with(text, "toe_codes = [\"TOE\"]\n", "");
  text = with(text, "module = [1.2, 0.6]\n", "");
  text = with(text, "as_set = \"as-set.csv\"\n", "");
  const std::string told = joined(check_lines(read_job(text, "job.toml"), {}));
  for (const char* phrase :
       {"    pegs as set are not checked (as_set)\n", "    no loose volume (bulking)\n",
        "    no truckloads (truck_m3, truck_t)\n",
        "    nobody is named for the batter (batter_given_by)\n",
        "    stack gap is not asked ([tank] module)\n", "    extent is not asked (toe_codes)\n"})
    EXPECT_NE(told.find(phrase), std::string::npos) << phrase << told;
}

}  // namespace
}  // namespace squaredig::job
