// Jobs from files to results, without the command line: how inputs are read and what results say of
// where they came from.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "app/stages.h"
#include "refusal_text.h"
#include "temporary_folder.h"

namespace squaredig::app {
namespace {

using namespace testing;
using job::Stage;
using squaredig::testing::refusal_text;

const fs::path kDemo = fs::path(SQUAREDIG_SOURCE) / "demo" / "alderbrook";

// The demo job in a folder of its own, to be changed.
class DemoJob {
 public:
  DemoJob() {
    for (const auto& entry : fs::directory_iterator(kDemo))
      if (entry.is_regular_file()) fs::copy(entry.path(), folder_.path());
  }
  void replace(const std::string& file, const std::string& old_text, const std::string& new_text) {
    std::string text = content(folder_.path() / file);
    const auto at = text.find(old_text);
    ASSERT_NE(at, std::string::npos) << old_text;
    write(folder_.path() / file, text.replace(at, old_text.size(), new_text));
  }
  void add(const std::string& file, const std::string& text) {
    write(folder_.path() / file, content(folder_.path() / file) + text);
  }
  Inputs inputs(const std::set<Stage>& stages = {Stage::Ground, Stage::Pegs, Stage::Dig,
                                                 Stage::Base}) const {
    return read_inputs(open_job(folder_.path()), stages);
  }
  StageOutput run(Stage stage) const {
    const Inputs read = inputs({stage});
    Progress progress(ProgressMode::Never, Speech::Quiet);
    Stages stages(read, progress, 1);
    stages.run_all({stage});
    return stages.take(stage);
  }

 private:
  TemporaryFolder folder_;
};

const InputRecord& record(const ResultHead& head, const std::string& file) {
  for (const auto& input : head.inputs)
    if (input.file == file) return input;
  ADD_FAILURE() << file << " is not among the inputs";
  return head.inputs.front();
}

TEST(Inputs, EachStageNamesTheFilesItCameFrom) {
  const Inputs inputs = DemoJob().inputs();
  const auto names = [&](Stage stage) {
    std::vector<std::string> files;
    for (const auto& input : inputs.head(stage).inputs) {
      files.push_back(input.file);
      EXPECT_EQ(input.sha256.size(), 64U) << input.file;
    }
    return files;
  };
  const std::vector<std::string> ground = {"job.toml", "control.csv", "ground.csv", "kerb.csv",
                                           "outline.csv"};
  EXPECT_EQ(names(Stage::Ground), ground);
  auto dig = ground;
  dig.insert(dig.end(), {"boundary.csv", "services.csv"});
  EXPECT_EQ(names(Stage::Dig), dig);
  auto base = ground;
  base.push_back("as-dug.csv");
  EXPECT_EQ(names(Stage::Base), base);
  // the record comes from all of them, each named once
  const auto record = names(Stage::Record);
  EXPECT_EQ(std::set<std::string>(record.begin(), record.end()).size(), record.size());
  for (const char* file : {"job.toml", "kerb.csv", "services.csv", "as-set.csv", "as-dug.csv"})
    EXPECT_EQ(std::count(record.begin(), record.end(), file), 1) << file;
}

TEST(Inputs, RowsOfOtherCodesAreSetAsideByLine) {
  const Inputs inputs = DemoJob().inputs();
  const ResultHead head = inputs.head(Stage::Ground);
  const InputRecord& ground = record(head, "ground.csv");
  EXPECT_EQ(ground.read, 458U);
  EXPECT_EQ(ground.used, 456U);
  ASSERT_EQ(ground.set_aside.size(), 2U);
  EXPECT_EQ(ground.set_aside[0].line, 459);
}

TEST(Inputs, FaultsOfAllFilesAreToldTogether) {
  DemoJob job;
  job.add("ground.csv", "X,1,2,abc,GL\n");
  job.add("as-dug.csv", "Y,1,abc,3,BASE\n");
  const std::string text = refusal_text([&] { job.inputs(); });
  EXPECT_NE(text.find("ground.csv:461:7: "), std::string::npos) << text;
  EXPECT_NE(text.find("as-dug.csv:179:5: "), std::string::npos) << text;
}

TEST(Inputs, FilesOfUnknownKindAreRefusedAtTheJobsLine) {
  DemoJob job;
  job.replace("job.toml", "\"ground.csv\"", "\"ground.ply\"");
  const std::string text = refusal_text([&] { job.inputs(); });
  EXPECT_TRUE(text.starts_with(
      "job.toml:16:15: \"ground.ply\" as points; a file whose name ends in "
      ".csv, .txt, .xml, .las, .laz, .dxf, .geojson, .json, .gpkg, .tif, .tiff, .asc; "))
      << text;
}

TEST(Inputs, ATableThatIsMissingIsNamed) {
  DemoJob job;
  job.replace("job.toml", "[bedding]\nthickness_mm = 20.0\nleast_mm = 15.0\nmost_mm  = 30.0\n", "");
  const std::string text = refusal_text([&] { job.inputs(); });
  EXPECT_NE(text.find("no table [bedding]"), std::string::npos) << text;
}

TEST(Inputs, ChangedOverEastingAndNorthingAreCaughtInEveryFile) {
  for (const char* file : {"ground.csv", "as-dug.csv"}) {
    DemoJob job;
    job.replace(file, "point,easting,northing", "point,northing,easting");
    const std::string text = refusal_text([&] { job.inputs(); });
    EXPECT_TRUE(text.starts_with(file)) << text;
    EXPECT_NE(text.find("changed over"), std::string::npos) << text;
  }
}

TEST(Stages, TheJobFileIsTakenBesideItsFolder) {
  EXPECT_EQ(open_job(kDemo).job.job.name, open_job(kDemo / "job.toml").job.job.name);
  EXPECT_EQ(open_job(kDemo).record().file, "job.toml");
}

TEST(Stages, AStageComputesWhatItNeedsAndGivesItsOwnFilesAlone) {
  DemoJob job;
  const StageOutput dig = job.run(Stage::Dig);
  std::vector<std::string> names;
  for (const auto& [name, bytes] : dig.files) {
    names.push_back(name);
    EXPECT_FALSE(bytes.empty()) << name;
  }
  EXPECT_EQ(names, file_names(Stage::Dig));
  EXPECT_EQ(dig.json, dig.files.at("dig.json"));
  EXPECT_EQ(dig.status, ExitStatus::Done);
}

TEST(Stages, AVerdictThatDoesNotConformNeedsAPerson) {
  EXPECT_EQ(DemoJob().run(Stage::Base).status, ExitStatus::NeedsAPerson);
}

TEST(Stages, AFindingNeedsAPerson) {
  DemoJob job;
  job.replace("job.toml", "plane_level = 65.605", "plane_level = 62.0");  // below every level
  EXPECT_EQ(job.run(Stage::Dig).status, ExitStatus::NeedsAPerson);
}

// Ground lengths: 24 m on the ground are 24 m times the factor on the grid. Derived.
TEST(Stages, GroundLengthsAreScaledByTheStatedFactor) {
  DemoJob job;
  job.replace("job.toml", "heights = \"EPSG:5731\"",
              "heights = \"EPSG:5731\"\nplan_lengths = \"ground\"\nscale_factor = 0.9996");
  const Inputs inputs = job.inputs({Stage::Dig});
  const design::Tank tank = design::place_tank(inputs.design->value);
  EXPECT_NEAR(tank.side_length(0).in_metres(), 24 * 0.9996, 1e-9);
}

// Without a stated factor it is computed from the grid; what was taken for the height is told.
TEST(Stages, GroundLengthsAreScaledByTheGridsFactor) {
  DemoJob job;
  job.replace("job.toml", "heights = \"EPSG:5731\"",
              "heights = \"EPSG:5731\"\nplan_lengths = \"ground\"");
  const Inputs inputs = job.inputs({Stage::Dig});
  const double factor = inputs.design->value.combined_factor.value();
  EXPECT_GT(factor, 0.9998);  // EPSG:2157 has 0.99982 on its meridian, 8 degrees west
  EXPECT_LT(factor, 1.0);
  ASSERT_FALSE(inputs.head(Stage::Dig).assumed.empty());
  EXPECT_NE(inputs.head(Stage::Dig).assumed.back().find("EPSG:2157"), std::string::npos);
}

TEST(Stages, PointsOutsideTheToeAreSetAsideByName) {
  DemoJob job;
  job.add("as-dug.csv", "FAR,715900.0,734700.0,62.3,BASE\n");
  const StageOutput base = job.run(Stage::Base);
  EXPECT_NE(base.json.find("\"why\": \"FAR: "), std::string::npos);
}

TEST(Summary, NamesWhatIsOutsideAndWhere) {
  const Lines lines = DemoJob().run(Stage::Base).summary;
  ASSERT_EQ(lines.size(), 2U);
  EXPECT_TRUE(lines[0].starts_with("base    does not conform: 144 points judged")) << lines[0];
  EXPECT_NE(lines[1].find("level high +18.3 mm (limit +5.0 mm)"), std::string::npos) << lines[1];
  EXPECT_NE(lines[0].find("at B43, 7.02 along A-B and 2.70 in"), std::string::npos) << lines[0];
}

// Ten lines for the whole job: its name, a line or two for each stage, and how it ended.
TEST(Summary, OfTheWholeDemoIsTenLinesAtMost) {
  const DemoJob job;
  std::size_t lines = 2;
  for (const Stage stage :
       {Stage::Ground, Stage::Pegs, Stage::Dig, Stage::Base, Stage::Fill, Stage::Record})
    lines += job.run(stage).summary.size();
  EXPECT_LE(lines, 10U);
}

}  // namespace
}  // namespace squaredig::app
